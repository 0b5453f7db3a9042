using Tagend.Catalog;
using Tagend.Output;
using Tagend.Qr.Encode;

namespace Tagend.Pages.Labels;

/// <summary>A QR code for a label, its modules a whole number of the printer's dots.</summary>
/// <param name="Dots">Of a module's side.</param>
internal sealed record LabelCode(QrSymbol Symbol, QrRecovery Recovery, int Dots, DotGrid Grid)
{
    /// <summary>What a module has where the label allows: common practice.</summary>
    private const int WantedDots = 4;

    /// <summary>The least on a sheet, 0.42 mm, so that coarser printers and scanners have 3 dots and more for it.</summary>
    private const int LeastDotsOnSheet = 5;

    /// <summary>The least dots of a module on a label printer: common practice.</summary>
    private const int LeastDots = 3;

    /// <summary>A larger module takes room from the text and reads no better: 0.75 mm on 8 dots a millimeter.</summary>
    private const int MostDots = 6;

    /// <summary>A finer printer puts more dots into a module, so that it is as large as on this one.</summary>
    private const int FinestDotsPerInch = 300;

    /// <summary>Share of the label's width the code may take.</summary>
    private const float MostOfWidth = 0.52f;

    /// <summary>The same for more than the wanted dots.</summary>
    private const float WantedOfWidth = 0.46f;

    /// <summary>Side of a module, in points.</summary>
    public float Module => Dots * Grid.Size;

    /// <summary>With its quiet zone, in points.</summary>
    public float Side => SideInModules(Symbol) * Module;

    /// <summary>
    /// The code with the largest modules that fit. Better recovery gives way to wanted dots, and those to a code at all:
    /// M at 4 dots or more, L at 4, and on label printers M at 3, L at 3.
    /// </summary>
    /// <returns>Null where not even the least dots fit: a smaller code would not scan.</returns>
    public static LabelCode? Of(string text, LabelStock stock)
    {
        var grid = DotGrid.Of(stock);
        var (width, height) = (Points.Of(stock.LabelWidth), Points.Of(stock.LabelHeight));
        foreach (var least in stock.DotsPerInch is null ? [LeastDotsOnSheet] : new[] { WantedDots, LeastDots })
        {
            foreach (var recovery in new[] { QrRecovery.M, QrRecovery.L })
            {
                if (QrSymbol.Of(text, recovery) is not { } symbol)
                {
                    continue;
                }

                var enough = AtLeastAsLarge(least, grid);
                if (DotsIn(MostOfWidth, symbol) >= enough)
                {
                    var dots = Math.Clamp(DotsIn(WantedOfWidth, symbol), enough, AtLeastAsLarge(MostDots, grid));
                    return new LabelCode(symbol, recovery, dots, grid);
                }
            }
        }

        return null;

        int DotsIn(float share, QrSymbol symbol) =>
            (int)((MathF.Min(height, width * share) / grid.Size / SideInModules(symbol)) + 0.001f);
    }

    private static int SideInModules(QrSymbol symbol) => symbol.Modules + (2 * QrSymbol.QuietModules);

    private static int AtLeastAsLarge(int dots, DotGrid grid) =>
        Math.Max(dots, (int)Math.Ceiling((double)dots * grid.DotsPerInch / FinestDotsPerInch));
}
