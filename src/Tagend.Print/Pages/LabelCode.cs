using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Output;

namespace Tagend.Pages;

/// <summary>A QR code for a label, its modules a whole number of the printer's dots.</summary>
/// <param name="Dots">Of a module's side.</param>
/// <param name="DotSize">Of the printer, in points.</param>
internal sealed record LabelCode(QrSymbol Symbol, QrRecovery Recovery, int Dots, float DotSize)
{
    /// <summary>The least dots a module may have, and what it has where the label allows: common practice.</summary>
    public const int LeastDots = 3;
    public const int WantedDots = 4;

    /// <summary>A larger module takes room from the text and reads no better: 0.75 mm on 8 dots a millimeter.</summary>
    private const int MostDots = 6;

    /// <summary>What sheets are taken to be printed at.</summary>
    private const int SheetDotsPerInch = 300;

    /// <summary>Share of the label's width the code may take.</summary>
    private const float MostOfWidth = 0.52f;

    public float Module => Dots * DotSize;

    /// <summary>With its quiet zone, in points.</summary>
    public float Side => (Symbol.Modules + (2 * QrSymbol.QuietModules)) * Module;

    /// <summary>
    /// The code with the largest modules that fit. Better recovery gives way to wanted dots, and those to a code at all:
    /// M at 4 dots or more, L at 4, M at 3, L at 3.
    /// </summary>
    /// <returns>Null where not even 3 dots fit: a smaller code would not scan.</returns>
    public static LabelCode? Of(string text, LabelStock stock)
    {
        var dot = Points.PerInch / (stock.DotsPerInch ?? SheetDotsPerInch);
        var room = MathF.Min(Points.Of(stock.LabelHeight), Points.Of(stock.LabelWidth) * MostOfWidth);
        foreach (var least in new[] { WantedDots, LeastDots })
        {
            foreach (var recovery in new[] { QrRecovery.M, QrRecovery.L })
            {
                if (QrSymbol.Of(text, recovery) is not { } symbol)
                {
                    continue;
                }

                var dots = (int)(room / dot / (symbol.Modules + (2 * QrSymbol.QuietModules)));
                if (dots >= least)
                {
                    return new LabelCode(symbol, recovery, Math.Min(dots, MostDots), dot);
                }
            }
        }

        return null;
    }

    /// <summary>The nearest whole dot at or before a place.</summary>
    public float OnDots(float points) => MathF.Floor(points / DotSize) * DotSize;
}
