using Tagend.Tags;
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
    public void Read_APictureThatIsNotThere_SaysSo() =>
        Assert.Throws<Tagend.Problems.TagendException>(() => TagScan.Read("none.png", TextReader.Null).ToList());
}
