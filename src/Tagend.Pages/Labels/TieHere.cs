using Tagend.Blocks;
using Tagend.Output;

namespace Tagend.Pages.Labels;

/// <summary>The end a tag is tied to, behind a mark: a loop with the tag's string through it.</summary>
internal sealed record TieHere(Paragraph Words) : Block
{
    private const float Line = 0.8f;

    public override Placement Place(Fonts fonts, Room room)
    {
        var height = Words.Spans[0].Style.LineHeight;
        var (radius, indent) = (height * 0.3f, height * 1.5f);
        var placement = Words.Place(fonts, room with { Width = room.Width - indent });
        if (placement is not Placed placed)
        {
            return placement;
        }

        var middle = height / 2;
        return new Placed(
            indent + placed.Width,
            placed.Height,
            [
                new OvalInk(radius + Line, middle, radius, radius, Line * 1.6f),
                new LineInk(radius + Line, middle, indent - (height * 0.25f), middle, Line),
            ],
            [new PlacedChild(indent, 0, placed)],
            placed.Baseline);
    }
}
