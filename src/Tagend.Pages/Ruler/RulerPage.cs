using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Problems;

namespace Tagend.Pages.Ruler;

/// <summary>The page to measure a printer by: a bar across the feed and one along it.</summary>
public static class RulerPage
{
    private const float Thickness = 10;
    private const float Gap = 16;

    private static float Margin => 2 * Points.Of(StripStock.Margin);

    /// <param name="printer">Whose scale the page is drawn through, to see that it is right; null for a page to measure by.</param>
    public static Composed Compose(Paper paper, string? printer, PaperLanguage words, Fonts fonts)
    {
        var (width, height) = (Points.Of(paper.Width), Points.Of(paper.Height));
        var room = new Room(width - (2 * Margin), height - (2 * Margin));
        var left = Margin + Thickness + Gap;
        if (Head(printer, words).Place(fonts, room) is not Placed head)
        {
            return Refused(Head(printer, words).Place(fonts, room));
        }

        var across = Margin + head.Height + Gap;
        var along = across + Thickness + Gap;
        if (Foot(printer is null, words).Place(fonts, new Room(width - Margin - left, height - Margin - along)) is not Placed foot)
        {
            return Refused(Foot(printer is null, words).Place(fonts, room));
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

    private static Stack Head(string? printer, PaperLanguage words) => new(
    [
        new Paragraph(
            printer is null ? words[PaperWord.RulerTitle] : words.Say(PaperWord.RulerFor, ("printer", printer)), TypeScale.SheetTitle),
        new Spacer(6),
        new Rule(1),
        new Spacer(10),
        .. (printer is null ? Measuring : Checking).SelectMany<PaperWord, Block>((step, i) =>
            [new ListItem(new Paragraph($"{i + 1}.", TypeScale.Sheet), new Paragraph(words[step], TypeScale.Sheet), 16), new Spacer(4)]),
    ]);

    private static Stack Foot(bool isToBeMeasured, PaperLanguage words) => new(
    [
        new Paragraph(words.Say(PaperWord.RulerAcross, ("length", Bar(words))), TypeScale.SheetBold),
        new Spacer(4),
        new Paragraph(words.Say(PaperWord.RulerAlong, ("length", Bar(words))), TypeScale.SheetBold),
        new Spacer(Gap),
        .. isToBeMeasured ? Boxes(words) : [],
        CheckBar.Block,
        new Spacer(4),
        new Paragraph($"{words[PaperWord.RulerEveryPage]} {words[PaperWord.CheckBars]}", TypeScale.Sheet),
    ]);

    private static IReadOnlyList<Block> Boxes(PaperLanguage words) =>
    [
        Row.Equal(
            [
                new FillIn(words[PaperWord.RulerAcrossBox], words.Millimeter, 40),
                new FillIn(words[PaperWord.RulerAlongBox], words.Millimeter, 40),
                new FillIn(words[PaperWord.RulerPrinterBox], "", 40),
            ],
            gap: 8),
        new Spacer(Gap),
    ];

    private static string Bar(PaperLanguage words) => new CardWriter(LengthUnit.Millimeter, words).Setting(PrinterScale.Bar)
        + $" ({new CardWriter(LengthUnit.Inch, words).Exact(PrinterScale.Bar)})";

    private static IReadOnlyList<PaperWord> Measuring { get; } =
        [PaperWord.RulerPrint, PaperWord.RulerMeasure, PaperWord.RulerSay, PaperWord.RulerThen];

    private static IReadOnlyList<PaperWord> Checking { get; } = [PaperWord.RulerCheck, PaperWord.RulerAgain];

    private static Composed Refused(Placement placement) =>
        new([], [.. ((Misfit)placement).Reasons.Select(r => new Problem(new Place("ruler"), null, r))]);
}
