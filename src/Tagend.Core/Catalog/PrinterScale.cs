using Tagend.Measures;

namespace Tagend.Catalog;

/// <summary>What a printer makes of a length, found by measuring the bars of its test page.</summary>
/// <param name="Printer">As its queue is called.</param>
/// <param name="MeasuredAcross">Of the bar across the feed, on paper.</param>
/// <param name="MeasuredAlong">Of the bar along the feed, on paper, above zero.</param>
public sealed record PrinterScale(string Printer, Length MeasuredAcross, Length MeasuredAlong)
{
    /// <summary>More than any printer is off by itself (an assumption): a page that is, was scaled to fit.</summary>
    public const double GreatestCorrection = 0.03;

    /// <summary>What both bars of the test page must measure.</summary>
    public static Length Bar { get; } = Length.FromMillimeters(150);

    /// <summary>What is drawn across the feed is drawn so many times as long.</summary>
    public double Across => Bar / MeasuredAcross;

    /// <summary>What is drawn along the feed is drawn so many times as long.</summary>
    public double Along => Bar / MeasuredAlong;

    /// <summary>Why a bar measured so long is not corrected, as a sentence behind the measure; null where it is.</summary>
    public static string? Refusal(Length measured)
    {
        var off = Math.Abs((Bar / measured) - 1);
        return off <= GreatestCorrection ? null : CatalogWording.BeyondCorrection(off);
    }
}
