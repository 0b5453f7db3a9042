using Tagend.Blocks;
using Tagend.Output;

namespace Tagend.Pages.Parts;

/// <summary>A block in the middle of a height that does not change with what is in it, in points; higher only where it must be.</summary>
internal sealed record AtHeight(Block Block, float Height) : Block
{
    public override Placement Place(Fonts fonts, Room room)
    {
        var placement = Block.Place(fonts, room with { Fill = false });
        if (placement is not Placed placed)
        {
            return placement;
        }

        var height = Math.Max(Height, placed.Height);
        return room.HoldsHeight(height)
            ? new Placed(placed.Width, height, [], [new PlacedChild(0, (height - placed.Height) / 2, placed)])
            : new Misfit($"a part of {height:0.#} pt height has {room.Height:0.#} pt");
    }

    public override float NaturalWidth(Fonts fonts) => Block.NaturalWidth(fonts);
}
