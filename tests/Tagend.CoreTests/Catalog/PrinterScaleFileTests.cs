using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Problems;
using Xunit;

namespace Tagend.Tests.Catalog;

public sealed class PrinterScaleFileTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("tagend-printers-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Scales_OfSeveralPrinters_ComeBackAsTheyWereStored()
    {
        var office = Scale("office", 149.3, 149.8);
        var roll = Scale("Label roll #2 [bench].top", 150.000001, 153.1);
        Assert.Equal([roll, office], Store(office, roll));
    }

    [Fact]
    public void Scale_OfAPrinterMeasuredAgain_ReplacesTheFormerOne()
    {
        var again = Scale("office", 150.2, 150.1);
        Assert.Equal([again], Store(Scale("office", 149.3, 149.8), again));
    }

    [Fact]
    public void Scale_DrawsAsMuchLargerAsThePrinterIsSmaller()
    {
        var scale = Scale("office", 149.3, 151.2);
        Assert.Equal(150, 149.3 * scale.Across, 1e-9);
        Assert.Equal(150, 151.2 * scale.Along, 1e-9);
    }

    [Fact]
    public void Folder_WithoutTheFile_HasNoScales() => Assert.Empty(Read("").Scales);

    [Theory]
    [InlineData("[\"a\"]\nacross = \"140 mm\"\nalong = \"150 mm\"", "printers.toml:2: [a] across \"140 mm\": is 7.1 % off the bar's 150 mm, and no printer is off by more than 3 % by itself: the page was scaled. Print it again at 100 % (\"actual size\", no fit to page) and measure that one")]
    [InlineData("[\"a\"]\nacross = \"150 mm\"", "printers.toml:1: [a] along: along is missing: expected a length in quotes with its unit, such as \"1 1/8 in\" or \"28.6 mm\"")]
    [InlineData("[\"a\"]\nacross = 150\nalong = \"150 mm\"", "printers.toml:2: [a] across \"150\": expected a length in quotes with its unit, such as \"1 1/8 in\" or \"28.6 mm\"")]
    [InlineData("[\"a\"]\nacross = \"150 mm\"\nalong = \"150 mm\"\nwide = 1", "printers.toml:4: [a] wide: unknown entry; the entries here are across, along")]
    public void File_EditedWrongly_IsAProblemWithItsLine(string text, string expected) =>
        Assert.Equal(expected, Assert.Single(Read(text).Problems).ToString());

    [Theory]
    [InlineData(145.7, false)]
    [InlineData(145.6, true)]
    [InlineData(154.6, false)]
    [InlineData(154.7, true)]
    [InlineData(15, true)]
    public void Measure_BeyondThreePercent_IsRefused(double millimeters, bool isRefused) =>
        Assert.Equal(isRefused, PrinterScale.Refusal(Length.FromMillimeters(millimeters)) is not null);

    [Theory]
    [InlineData("office-laser", true)]
    [InlineData("Büro Laser (2)", true)]
    [InlineData("", false)]
    [InlineData(" office", false)]
    [InlineData("of\"fice", false)]
    [InlineData("of\nfice", false)]
    [InlineData("of\\fice", false)]
    public void Name_TheFileCannotHold_IsKnown(string printer, bool canName) => Assert.Equal(canName, PrinterScaleFile.CanName(printer));

    private IReadOnlyList<PrinterScale> Store(params IReadOnlyList<PrinterScale> scales)
    {
        return scales.Aggregate((IReadOnlyList<PrinterScale>)[], (all, scale) => Read(PrinterScaleFile.With(all, scale)).Scales);
    }

    private (IReadOnlyList<PrinterScale> Scales, List<Problem> Problems) Read(string text)
    {
        if (text.Length > 0)
        {
            File.WriteAllText(Path.Combine(_folder, PrinterScaleFile.Name), text);
        }

        var problems = new List<Problem>();
        return (PrinterScaleFile.Read(_folder, problems), problems);
    }

    private static PrinterScale Scale(string printer, double across, double along) =>
        new(printer, Length.FromMillimeters(across), Length.FromMillimeters(along));
}
