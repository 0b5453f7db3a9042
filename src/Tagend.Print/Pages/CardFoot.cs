using Tagend.Blocks;
using Tagend.Output;
using Tagend.Specs;

namespace Tagend.Pages;

/// <summary>Bottom of a card: what was measured, and the cautions of the bench.</summary>
internal static class CardFoot
{
    /// <summary>Less height than this is left empty, in points.</summary>
    private const float LeastNotes = 24;

    public static IReadOnlyList<Block> Of(BuildSpec spec, CardStyle style, CardWriter write) =>
    [
        new Stack(
        [
            CardStyle.Heading("AS BUILT"),
            new Spacer(3),
            Row.Equal(
                [
                    new FillIn("Post set", write.UnitSymbol, style.BoxHeight),
                    new FillIn("Turns", "", style.BoxHeight),
                    new FillIn("Load", write.Unit == Measures.LengthUnit.Inch ? "lbf" : "N", style.BoxHeight),
                    new FillIn("Time", "min", style.BoxHeight),
                    new FillIn("Length", write.UnitSymbol, style.BoxHeight),
                    new FillIn("Initials", "", style.BoxHeight),
                ],
                gap: 4),
        ]),
        new Grow(new Drawing(0, Notes)),
        Cautions(),
        new Paragraph(
            $"Places are on the finished piece, outside to outside over {write.Mark(spec.Posts.PinDiameter)} pins.", TypeScale.Caption),
    ];

    private static Placement Notes(Fonts fonts, Room room) => room.Height < LeastNotes
        ? new Placed(room.Width, 0)
        : new FillIn("Notes", "", room.Height).Place(fonts, room);

    private static Block Cautions() => new Box(
        new Paragraph(
        [
            new Span("⚠ WARNING  ", TypeScale.Heading),
            new Span(
                "A piece on the stretcher can break and strike: stand clear of its line and wear eye protection. Cut thread away "
                + "from your hands and from the strands. Use a bow press only as its manual says. The bow maker's manual overrides this card.",
                TypeScale.Caption),
        ]),
        Padding: 4,
        Border: 0.8f);
}
