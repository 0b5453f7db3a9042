using System.Globalization;
using Tagend.Measures;

namespace Tagend.Output;

/// <summary>What a print queue calls a paper.</summary>
/// <remarks>
/// Self-describing names of IPP, PWG 5101.1-2013: <c>na_letter_8.5x11in</c>, <c>custom_roll-4x2_4x2in</c>. Half letter is
/// its invoice.
/// </remarks>
public static class PaperName
{
    public static string Of(Paper paper) => paper switch
    {
        _ when paper == Paper.Letter => "na_letter_8.5x11in",
        _ when paper == Paper.HalfLetter => "na_invoice_5.5x8.5in",
        _ when paper == Paper.A4 => "iso_a4_210x297mm",
        _ when paper == Paper.A5 => "iso_a5_148x210mm",
        _ => $"custom_{Word(paper.Title)}_{Size(paper)}",
    };

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
