using Tagend.Blocks;
using Tagend.Output;

namespace Tagend.Pages;

/// <summary>Bottom of a card: what was measured, and the cautions of the bench.</summary>
internal static class CardFoot
{
    /// <summary>Less height than this is left empty, in points.</summary>
    private const float LeastNotes = 15;

    public static IReadOnlyList<Block> Of(CardStyle style, CardWriter write)
    {
        var boxes = Row.Equal(
            [
                new FillIn("Posts set", write.UnitSymbol, style.BoxHeight),
                new FillIn("Turns put in", "", style.BoxHeight),
                new FillIn("Stretch load", write.LoadSymbol, style.BoxHeight),
                new FillIn("Stretch time", "min", style.BoxHeight),
                new FillIn("Length", write.UnitSymbol, style.BoxHeight),
                new FillIn("Initials", "", style.BoxHeight),
            ],
            gap: 4);
        return
        [
            style.IsClose ? boxes : CardStyle.Part("AS BUILT", "length over the pins after stretching", boxes),
            new Grow(new Drawing(0, Notes)),
            Cautions(),
        ];
    }

    private static Placement Notes(Fonts fonts, Room room) => room.Height < LeastNotes
        ? new Placed(room.Width, 0)
        : new FillIn("Notes", "", room.Height).Place(fonts, room);

    private static Box Cautions() => new Box(
        new Paragraph(
        [
            new Span("⚠ WARNING  ", TypeScale.Heading),
            new Span(
                "Under load a piece can break and strike: stand clear, wear eye protection. Cut thread away from hands and strands. "
                + "Follow the manuals of the bow and the press: they overrule this card.",
                TypeScale.Caption),
        ]),
        Padding: 3,
        Border: 0.8f);
}
