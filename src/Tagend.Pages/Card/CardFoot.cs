using Tagend.Blocks;
using Tagend.Output;
using Tagend.Pages.Parts;

namespace Tagend.Pages.Card;

/// <summary>Bottom of a card: what was measured, and the cautions of the bench.</summary>
internal static class CardFoot
{
    /// <summary>Less height than this is left empty, in points.</summary>
    private const float LeastNotes = 13;

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
            Cautions(style),
        ];
    }

    private static Placement Notes(Fonts fonts, Room room) => room.Height < LeastNotes
        ? new Placed(room.Width, 0)
        : new FillIn("Notes", "", room.Height).Place(fonts, room);

    /// <summary>Hazard, what it could do, how to avoid it; shorter where the card is full.</summary>
    private static Box Cautions(CardStyle style) => new Box(
        new Paragraph(
        [
            new Span("⚠\u00A0WARNING  ", TypeScale.Heading),
            new Span(
                style.IsTight
                    ? "Pieces and limbs under load could let go and kill or maim: wear eye protection, stand out of line.  "
                    : "A piece on the stretcher or a limb in the press can let go and strike. This could cause death or serious injury: "
                        + "wear eye protection, stand out of line.  ",
                TypeScale.Caption),
            new Span("⚠\u00A0CAUTION  ", TypeScale.Heading),
            new Span(
                style.IsTight
                    ? "Cut thread away from hands. The makers' manuals overrule this card."
                    : "Blades could cut you: cut thread away from hands and strands. The manuals of bow, press and stretcher overrule this card.",
                TypeScale.Caption),
        ]),
        Padding: 3,
        Border: 0.8f);
}
