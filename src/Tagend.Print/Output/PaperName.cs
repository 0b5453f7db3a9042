using System.Globalization;
using Tagend.Catalog;
using Tagend.Measures;

namespace Tagend.Output;

/// <summary>What a print queue calls a paper.</summary>
/// <remarks>
/// Self-describing names of IPP, PWG 5101.1-2013: <c>na_letter_8.5x11in</c>, <c>custom_roll-4x2_4x2in</c>.
/// </remarks>
public static class PaperName
{
    public static string Of(Paper paper) => paper.MediaName ?? $"custom_{Word(paper.Title)}_{Size(paper)}";

    /// <summary>In inches where those come out even, else in millimeters, to the hundredth that IPP knows.</summary>
    private static string Size(Paper paper)
    {
        const long NanometersInATenThousandthInch = 2540;
        Length[] sides = [paper.Width, paper.Height];
        return Array.TrueForAll(sides, s => s.Nanometers % NanometersInATenThousandthInch == 0)
            ? $"{Number(paper.Width.Inches, "0.####")}x{Number(paper.Height.Inches, "0.####")}in"
            : $"{Number(paper.Width.Millimeters, "0.##")}x{Number(paper.Height.Millimeters, "0.##")}mm";
    }

    private static string Number(double number, string format) => number.ToString(format, CultureInfo.InvariantCulture);

    private static string Word(string title) =>
        string.Concat(title.ToLowerInvariant().Select(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c is '-' or '.' ? c : '-'));
}
