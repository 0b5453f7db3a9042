using Tagend.Output;
using Tagend.Qr.Encode;
using Tagend.Tags;
using Tagend.Tests.Output;
using Tagend.Tests.Specs;
using Tagend.Workshop.Readings;
using Xunit;

namespace Tagend.Tests.Workshop;

public class TagScanTests
{
    [Fact]
    public void Read_ScannersLines_AreTagsAndWhatIsBetween()
    {
        var spec = SpecFixture.Good();
        var scans = TagScan.Read(TagScan.StandardInput, new StringReader($"\n{TagWriter.Write(spec)}\r\n\t  \nhello\u0007 there")).ToList();
        Assert.Equal([true, true], scans.Select(s => s.IsFromScanner));
        Assert.Equal([spec], scans[0].Specs);
        Assert.Null(scans[0].Message);
        Assert.Empty(scans[1].Specs);
        Assert.EndsWith("it says \"hello there\"", scans[1].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_ATagsText_IsNotFromAScanner()
    {
        var spec = SpecFixture.Good();
        var scan = Assert.Single(TagScan.Read(TagWriter.Write(spec), TextReader.Null));
        Assert.False(scan.IsFromScanner);
        Assert.Equal([spec], scan.Specs);
    }

    [Fact]
    public void Read_ThreeLabelsThatSayTheSame_AreOneScanWithTheirPlaces()
    {
        using var folder = new WorkshopFolder();
        var symbol = QrSymbol.Of(TagWriter.Write(SpecFixture.Good()))!;
        var page = new Page(600, 200, [.. Enumerable.Range(0, 3).Select(i => new BarsInk(30 + (200 * i), 30, 2, symbol.Bars))]);
        using (var file = File.Create(folder["three.png"]))
        {
            PngFile.Write(page, TestFonts.Shipped, 144, DotDepth.Gray, file);
        }

        var scan = Assert.Single(TagScan.Read(folder["three.png"], TextReader.Null));
        Assert.Equal(3, scan.Places.Count);
        Assert.All([60, 460, 860], x => Assert.Single(scan.Places, p => Math.Abs(p.TopLeft.X - x) < 3 && Math.Abs(p.TopLeft.Y - 60) < 3));
    }

    [Fact]
    public void Read_APictureThatIsNotThere_SaysSo() =>
        Assert.Throws<Tagend.Problems.TagendException>(() => TagScan.Read("none.png", TextReader.Null).ToList());
}
