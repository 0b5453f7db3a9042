using System.Diagnostics;
using System.Globalization;
using Microsoft.Playwright;
using Xunit;

namespace Tagend.StationTests;

/// <summary>Papers as the PDF viewer of a browser shows them, held to the program's own picture of the same page.</summary>
public class PdfViewerTests(Browser browser, DemoStation demo) : IClassFixture<DemoStation>
{
    private const int ViewerDotsPerInch = 96;

    // Four by four of these dots are compared as one, so that edges differ by little.
    private const int Scale = 4;

    /// <param name="farOffTolerance">Share of the dots at 96 dpi that differ by a quarter of all shades. A line of text that is missing is more.</param>
    [Theory]
    [InlineData("cards", 0.0006)]
    [InlineData("sheets", 0.001)]
    public async Task Viewer_OfTheBrowser_ShowsThePageAsOurPicture(string paper, double farOffTolerance)
    {
        var folder = Directory.CreateTempSubdirectory("tagend-viewer-");
        string In(string name) => Path.Combine(folder.FullName, name);
        var printed = Station.Run([
            "print", Path.Combine(Station.Root, "demo-orders", "demo.csv"), "--order", "1001/string", "--only", paper, "--out", folder.FullName,
            "--templates", demo.Station.Templates, "--job-book", "none", "--preview", $"{ViewerDotsPerInch * Scale}"]);
        Assert.Equal((0, ""), (printed.ExitCode, printed.Errors));
        var ours = Directory.GetFiles(folder.FullName, "*.png").Order(StringComparer.Ordinal).First();
        Said("qpdf", In($"{paper}.pdf"), "--pages", ".", "1", "--", In("first.pdf"));

        var (width, height) = Size(ours);
        var page = await browser.OpenViewer(new ViewportSize { Width = width + 100, Height = height + 100 });
        await page.GotoAsync($"file://{In("first.pdf")}#toolbar=0&navpanes=0&zoom={100 * Scale}");
        var (theirs, place) = (In("viewer.png"), "");
        var wanted = FormattableString.Invariant($"{width}x{height}+");
        for (var since = Stopwatch.StartNew(); !place.StartsWith(wanted, StringComparison.Ordinal);)
        {
            Assert.True(since.ElapsedMilliseconds < Browser.MostWait, $"the viewer shows {place}, our picture is {wanted}"); // it has no event for it
            await page.ScreenshotAsync(new PageScreenshotOptions { Path = theirs });
            place = Said("convert", theirs, "-colorspace", "Gray", "-threshold", "99%", "-format", "%@", "info:"); // where the page is, which is white
        }

        var small = FormattableString.Invariant($"{width / Scale}x{height / Scale}!");
        Said("convert", ours, "-colorspace", "Gray", "-resize", small, In("ours.png"));
        Said("convert", theirs, "-crop", place, "+repage", "-colorspace", "Gray", "-resize", small, In("theirs.png"));
        var mean = Number(Said("compare", "-metric", "MAE", In("ours.png"), In("theirs.png"), "null:")) / 65535;
        var farOff = Number(Said("compare", "-fuzz", "25%", "-metric", "AE", In("ours.png"), In("theirs.png"), "null:")) / (width / Scale * (height / Scale));
        Assert.True(mean < 0.03 && farOff < farOffTolerance, $"mean {mean:0.0000} of the shades, {farOff:0.0000} of the dots far off");
        folder.Delete(recursive: true);
    }

    private static (int Width, int Height) Size(string picture)
    {
        var words = Said("identify", "-format", "%w %h", picture).Split(' ');
        return (int.Parse(words[0], CultureInfo.InvariantCulture), int.Parse(words[1], CultureInfo.InvariantCulture));
    }

    /// <summary>The first number that a tool says, such as 131.1 of "131.1 (0.002)".</summary>
    private static double Number(string said) => double.Parse(said.Split(' ')[0], CultureInfo.InvariantCulture);

    /// <summary>What a tool says of pictures; skips the test where it is not installed.</summary>
    private static string Said(string tool, params IReadOnlyList<string> arguments)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(tool, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
            var errors = process.StandardError.ReadToEndAsync();
            var output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return output + errors.Result;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            Assert.Skip($"{tool} is not installed");
            throw;
        }
    }
}
