using System.Globalization;
using Tagend.Catalog;
using Tagend.Measures;

namespace Tagend.Pages.Sheet;

/// <summary>Writes numbers, dates and the catalog's texts in the language of a sheet.</summary>
internal sealed class SheetWriter(PaperLanguage language)
{
    public string Term(string text) => language.Term(text);

    public PaperLanguage Language => language;

    /// <summary>The unit's symbol in this language.</summary>
    public string Unit(LengthUnit unit) => unit == LengthUnit.Inch ? language.Inch : language.Millimeter;

    /// <summary>A length that does not break over two lines, rounded as <see cref="LengthWriter.Mark"/> does.</summary>
    public string Length(Length length, LengthUnit unit) =>
        Decimal(LengthWriter.Bare(length, unit)).Replace(' ', '\u00A0') + '\u00A0' + Unit(unit);

    /// <summary>The same as <see cref="LengthWriter.Exact"/> does.</summary>
    public string ExactLength(Length length, LengthUnit unit) =>
        Decimal(LengthWriter.Exact(length, unit)[..^LengthWriter.Symbol(unit).Length].TrimEnd()) + '\u00A0' + Unit(unit);

    /// <summary>
    /// As small an amount as a customer can see on a tape, to 1/64 in or 0.1 mm; what is less than half of that as less
    /// than it: <c>1/64 in</c>, <c>&lt; 1/64 in</c>, <c>0.3 mm</c>.
    /// </summary>
    public string Seen(Length length, LengthUnit unit)
    {
        const int Parts = 64;
        var step = unit == LengthUnit.Inch ? Measures.Length.FromInches(1.0 / Parts) : Measures.Length.FromMillimeters(0.1);
        var steps = Math.Round(length / step, MidpointRounding.AwayFromZero);
        var seen = step * Math.Max(1, steps);
        return (steps < 1 ? "<\u00A0" : "") + (unit == LengthUnit.Inch ? $"{LengthWriter.Fraction(seen, Parts)}\u00A0{Unit(unit)}" : ExactLength(seen, unit));
    }

    /// <summary>In whole pounds, as every bow is marked; in newtons beside it for a shop that works in millimeters.</summary>
    public static string DrawWeight(Force weight, LengthUnit unit) => unit == LengthUnit.Inch
        ? string.Create(CultureInfo.InvariantCulture, $"{weight.Pounds:0}\u00A0lb")
        : string.Create(CultureInfo.InvariantCulture, $"{weight.Pounds:0}\u00A0lb ({weight.Newtons:0}\u00A0N)");

    public string Date(DateOnly date) => language.Date
        .Replace("{day}", date.Day == 1 ? language.FirstDay : $"{date.Day}", StringComparison.Ordinal)
        .Replace("{month}", language.Months[date.Month - 1], StringComparison.Ordinal)
        .Replace("{year}", $"{date.Year}", StringComparison.Ordinal);

    private string Decimal(string number) => number.Replace(".", language.DecimalSign, StringComparison.Ordinal);
}
