using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Pages.Strip;
using Tagend.Problems;

namespace Tagend.Pages.Ruler;

/// <summary>The page to measure a printer by: a bar across the feed and one along it.</summary>
public static class RulerPage
{
    private const float Thickness = 10;
    private const float Gap = 16;

    private static float Margin => 2 * Points.Of(StripStock.Margin);

    /// <param name="printer">Whose scale the page is drawn through, to see that it is right; null for a page to measure by.</param>
    public static Composed Compose(Paper paper, string? printer, Fonts fonts)
    {
        var (width, height) = (Points.Of(paper.Width), Points.Of(paper.Height));
        var room = new Room(width - (2 * Margin), height - (2 * Margin));
        var left = Margin + Thickness + Gap;
        if (Head(printer).Place(fonts, room) is not Placed head)
        {
            return Refused(Head(printer).Place(fonts, room));
        }

        var across = Margin + head.Height + Gap;
        var along = across + Thickness + Gap;
        if (Foot(printer is null).Place(fonts, new Room(width - Margin - left, height - Margin - along)) is not Placed foot)
        {
            return Refused(Foot(printer is null).Place(fonts, room));
        }

        var bar = Points.Of(PrinterScale.Bar);
        return new Composed(
            [
                new Page(
                    width,
                    height,
                    [
                        .. head.InksAt(Margin, Margin),
                        new BoxInk(left, across, bar, Thickness, Fill: 0),
                        new BoxInk(Margin, along, Thickness, bar, Fill: 0),
                        .. foot.InksAt(left, along),
                    ]),
            ],
            []);
    }

    private static Stack Head(string? printer) => new(
    [
        new Paragraph(printer is null ? "Ruler for a printer" : $"Ruler drawn for {printer}", TypeScale.SheetTitle),
        new Spacer(6),
        new Rule(1),
        new Spacer(10),
        .. (printer is null ? Measuring : Checking).SelectMany<string, Block>((step, i) =>
            [new ListItem(new Paragraph($"{i + 1}.", TypeScale.Sheet), new Paragraph(step, TypeScale.Sheet), 16), new Spacer(4)]),
    ]);

    private static Stack Foot(bool isToBeMeasured) => new(
    [
        new Paragraph($"ACROSS the feed: the bar above. It must measure {Bar} from end to end.", TypeScale.SheetBold),
        new Spacer(4),
        new Paragraph($"ALONG the feed: the bar at the left. It must measure {Bar} from end to end.", TypeScale.SheetBold),
        new Spacer(Gap),
        .. isToBeMeasured ? Boxes : [],
        CheckBar.Block,
        new Spacer(4),
        new Paragraph($"Every page at true size has these bars. {CheckBar.Words}", TypeScale.Sheet),
    ]);

    private static IReadOnlyList<Block> Boxes { get; } =
    [
        Row.Equal([new FillIn("Across", "mm", 40), new FillIn("Along", "mm", 40), new FillIn("Printer", "", 40)], gap: 8),
        new Spacer(Gap),
    ];

    private static string Bar => LengthWriter.Setting(PrinterScale.Bar, LengthUnit.Millimeter)
        + $" ({LengthWriter.Exact(PrinterScale.Bar, LengthUnit.Inch)})";

    private static IReadOnlyList<string> Measuring { get; } =
    [
        "Print this page at 100 % (\"actual size\", no fit to page), on the paper and the tray you use.",
        "Let it cool for a minute. Measure both bars from end to end with a steel ruler, to 0.1 mm or 1/128 in if you can.",
        "Say what they measured: tagend ruler --printer NAME --across 149.3mm --along 149.8mm",
        "From then on print with --printer NAME. More than 3 % off is no printer's fault: the page was scaled on its way.",
    ];

    private static IReadOnlyList<string> Checking { get; } =
    [
        "Print this page at 100 % (\"actual size\", no fit to page). It is drawn through what was measured of this printer.",
        "Both bars must be right now. If they are not, run tagend ruler without --printer, and measure that page.",
    ];

    private static Composed Refused(Placement placement) =>
        new([], [.. ((Misfit)placement).Reasons.Select(r => new Problem(new Place("ruler"), null, r))]);
}
