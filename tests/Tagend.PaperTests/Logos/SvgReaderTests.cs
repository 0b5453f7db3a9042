using System.Globalization;
using System.Runtime.CompilerServices;
using SkiaSharp;
using Tagend.Logos;
using Tagend.Output;
using Tagend.Problems;
using Xunit;

namespace Tagend.PaperTests.Logos;

/// <summary>Logos in a PDF, drawn by poppler, against librsvg's drawing of the same files.</summary>
public sealed class SvgReaderTests
{
    private const int Dots = 600;

    /// <summary>Of 255: edges are smoothed in two ways.</summary>
    private const double MostMeanDifference = 0.8;

    /// <summary>Of all dots; one dot along an edge may take the other side's color.</summary>
    private const double MostDotsFarOff = 0.002;

    private const int FarOff = 64;

    [Theory]
    [InlineData("loop.svg")]
    [InlineData("target.svg")]
    [InlineData("grammar.svg")]
    [InlineData("editor.svg")]
    public void Logo_InAPdf_IsWhatAnotherReaderDraws(string name)
    {
        using var sample = new Sample();
        using var theirs = Theirs(sample, name);
        using var ours = Ours(sample, name);

        Assert.Equal((theirs.Width, theirs.Height), (ours.Width, ours.Height));
        List<int> far = [.. theirs.Pixels.Zip(ours.Pixels, FarthestPart)];
        Assert.True(theirs.Pixels.Count(p => p != SKColors.White) > far.Count / 20, "the reference is all but empty");
        Assert.InRange(far.Average(), 0, MostMeanDifference);
        Assert.InRange(far.Count(f => f > FarOff), 0, far.Count * MostDotsFarOff);
    }

    [Fact]
    public void Logo_InAPdf_IsNoPictureOfDots()
    {
        using var sample = new Sample();
        Assert.Equal(2, OutsideTool.Run("pdfimages", "-list", Pdf(sample, "loop.svg")).Output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length); // the list's head
        Assert.Equal(0, OutsideTool.Run("qpdf", "--check", sample.Place("sample.pdf")).ExitCode);
    }

    private static int FarthestPart(SKColor a, SKColor b) =>
        Math.Max(Math.Abs(a.Red - b.Red), Math.Max(Math.Abs(a.Green - b.Green), Math.Abs(a.Blue - b.Blue)));

    private static SKBitmap Theirs(Sample sample, string name)
    {
        var picture = sample.Place("theirs.png");
        var said = OutsideTool.Run("rsvg-convert", "--background-color", "white", "--width", $"{Dots}", "--keep-aspect-ratio", "--output", picture, PathOf(name));
        Assert.Equal((0, ""), (said.ExitCode, said.Errors));
        return SKBitmap.Decode(picture);
    }

    private static SKBitmap Ours(Sample sample, string name)
    {
        var picture = sample.Place("ours");
        OutsideTool.Run("pdftoppm", "-png", "-singlefile", "-r", Points.PerInch.ToString(CultureInfo.InvariantCulture), Pdf(sample, name), picture);
        return SKBitmap.Decode(picture + ".png");
    }

    /// <summary>A page as wide as the reference has dots, so that a dot is a point.</summary>
    private static string Pdf(Sample sample, string name)
    {
        var problems = new List<Problem>();
        var logo = Logo.Read(PathOf(name), problems);
        Assert.Empty(problems);
        var height = MathF.Round(Dots * logo!.Height / logo.Width);
        return sample.Pdf(new Page(Dots, height, [new PictureInk(0, 0, Dots, height, logo)]));
    }

    private static string PathOf(string name, [CallerFilePath] string here = "") => Path.Combine(Path.GetDirectoryName(here)!, name);
}
