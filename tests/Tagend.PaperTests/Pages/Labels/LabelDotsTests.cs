using SkiaSharp;
using Tagend.Output;
using Tagend.Qr.Encode;
using Xunit;

namespace Tagend.PaperTests.Pages;

/// <summary>Labels on the dots of a label printer, as pictures and as PDFs that others turn into dots without smoothing.</summary>
public sealed class LabelDotsTests
{
    private static readonly int[] Printers = [203, 300, 600];

    /// <summary>
    /// pdftoppm fills every dot that a shape touches, as ISO 32000-1, 10.6.5 says; mutool, with the rule it calls 9, every
    /// dot whose center is in it.
    /// </summary>
    private static readonly string[] Makers = ["PngFile", "pdftoppm", "mutool"];

    public static TheoryData<string, int> Renderings => new(
        from maker in Makers
        from dotsPerInch in Printers
        select (maker, dotsPerInch));

    [Theory]
    [MemberData(nameof(Renderings))]
    public void Modules_OfALabel_AreWholeDotsAndThreeDecodersReadThem(string maker, int dotsPerInch)
    {
        using var sample = new Sample();
        var tags = PrintedTags.Of("roll-100x50mm", "roll-3x1.25", dotsPerInch, "1001");
        var pictures = Draw(tags.Pages, maker, dotsPerInch, sample);
        foreach (var (page, picture) in tags.Pages.Zip(pictures))
        {
            AssertWholeDots(page, picture, dotsPerInch);
        }

        Decoders.AssertAllRead(tags.Texts, pictures);
    }

    /// <summary>
    /// The code stands at the left: its finder patterns, 7 modules a side (ISO/IEC 18004:2015, 5.3.3), begin and end the
    /// first column with a dark dot. Each module is a square of so many dots alike.
    /// </summary>
    private static void AssertWholeDots(Page page, string picture, int dotsPerInch)
    {
        using var dots = SKBitmap.Decode(picture);
        var dark = dots.Pixels.Select(p => p.Red < 128).ToArray();
        Assert.Equal(Whole(page.Width * dotsPerInch / Points.PerInch), dots.Width);
        Assert.Equal(Whole(page.Height * dotsPerInch / Points.PerInch), dots.Height);

        var left = Enumerable.Range(0, dots.Width).First(x => Enumerable.Range(0, dots.Height).Any(y => Dark(x, y)));
        var column = Enumerable.Range(0, dots.Height).Where(y => Dark(left, y)).ToList();
        var top = column[0];
        var finder = Enumerable.Range(left, dots.Width - left).TakeWhile(x => Dark(x, top)).Count();
        var (module, rest) = Math.DivRem(finder, 7);
        Assert.Equal(0, rest);
        var finest = Math.Max(1, dotsPerInch / 300); // a finer printer makes no smaller modules
        Assert.InRange(module, 3 * finest, 6 * finest);

        var (modules, part) = Math.DivRem(column[^1] + 1 - top, module);
        Assert.Equal((0, 1), (part, modules % 4)); // a version of 17 + 4v modules
        var quiet = QrSymbol.QuietModules;
        var squares = from row in Enumerable.Range(-quiet, modules + (2 * quiet))
                      from place in Enumerable.Range(-quiet, modules + (2 * quiet))
                      select (X: left + (place * module), Y: top + (row * module), IsQuiet: IsOutside(row) || IsOutside(place));
        Assert.All(squares, square =>
        {
            var expected = !square.IsQuiet && Dark(square.X, square.Y);
            for (var i = 0; i < module * module; i++)
            {
                Assert.True(Dark(square.X + (i % module), square.Y + (i / module)) == expected, $"dots at {square} are not as one");
            }
        });

        bool Dark(int x, int y) => dark[(y * dots.Width) + x];

        bool IsOutside(int place) => place < 0 || place >= modules;
    }

    private static int Whole(double dots)
    {
        Assert.Equal(Math.Round(dots), dots, 0.09); // a page is measured in hundredths of a point
        return (int)Math.Round(dots);
    }

    private static List<string> Draw(IReadOnlyList<Page> pages, string maker, int dotsPerInch, Sample sample)
    {
        switch (maker)
        {
            case "PngFile":
                AtomicFiles.Write([.. pages.Select((page, i) => new NewFile(
                    sample.Place($"page-{i:00}.png"), s => PngFile.Write(page, Sample.Fonts, dotsPerInch, DotDepth.BlackOrWhite, s)))]);
                break;
            case "pdftoppm":
                OutsideTool.Run("pdftoppm", "-r", $"{dotsPerInch}", "-gray", "-aa", "no", "-aaVector", "no", "-png", sample.Pdf(pages), sample.Place("page"));
                break;
            default:
                OutsideTool.Run("mutool", "draw", "-q", "-A", "9", "-r", $"{dotsPerInch}", "-c", "gray", "-o", sample.Place("page-%02d.png"), sample.Pdf(pages));
                break;
        }

        List<string> pictures = [.. Directory.GetFiles(Path.GetDirectoryName(sample.Place("page"))!, "page*.png").Order(StringComparer.Ordinal)];
        Assert.Equal(pages.Count, pictures.Count);
        return pictures;
    }
}
