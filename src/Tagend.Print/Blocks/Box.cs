using Tagend.Catalog;
using Tagend.Output;

namespace Tagend.Blocks;

/// <summary>A block with room around it, and a border or shade if wanted. As wide as its room.</summary>
/// <param name="Padding">On all four sides, in points.</param>
/// <param name="Border">Thickness of the line, in points; 0 for none.</param>
/// <param name="Fill">Shade of gray behind it; 0 is black.</param>
public sealed record Box(Block Block, float Padding = 0, float Border = 0, byte? Fill = null, float Radius = 0) : Block
{
    public override Placement Place(Fonts fonts, Room room)
    {
        var inner = room with { Width = room.Width - (2 * Padding), Height = room.Height - (2 * Padding) };
        if (inner.Width <= 0 || inner.Height <= 0)
        {
            return new Misfit($"a box of {Padding:0.#} pt padding has {room.Width:0.#} × {room.Height:0.#} pt");
        }

        var placement = Block.Place(fonts, inner);
        if (placement is not Placed placed)
        {
            return placement;
        }

        var height = room.Fill ? room.Height : placed.Height + (2 * Padding);
        IReadOnlyList<Ink> edge = Border > 0 || Fill is not null
            ? [new BoxInk(0, 0, room.Width, height, Border, Fill, Radius)]
            : [];
        return new Placed(room.Width, height, edge, [new PlacedChild(Padding, Padding, placed)], Padding + placed.Baseline);
    }

    public override float NaturalWidth(Fonts fonts) => Block.NaturalWidth(fonts) + (2 * Padding);
}

/// <summary>A line across the room. All in points.</summary>
public sealed record Rule(float Thickness = 0.5f, float Dash = 0, InkColor? Color = null) : Block
{
    public override Placement Place(Fonts fonts, Room room) => room.HoldsHeight(Thickness)
        ? new Placed(room.Width, Thickness, new LineInk(0, Thickness / 2, room.Width, Thickness / 2, Thickness, Dash: Dash, Color: Color))
        : new Misfit($"a line of {Thickness:0.#} pt has {room.Height:0.#} pt of height");

    public override float NaturalWidth(Fonts fonts) => 0;
}

/// <summary>A picture of a fixed or given height, drawn for the room it gets. Its own texts say what it shows.</summary>
/// <param name="Height">In points; what the room gives if that is to be filled.</param>
/// <param name="Draw">Makes the inks for a room, or says why it cannot.</param>
public sealed record Drawing(float Height, Func<Fonts, Room, Placement> Draw) : Block
{
    public override Placement Place(Fonts fonts, Room room)
    {
        if (!room.HoldsHeight(Height))
        {
            return new Misfit($"a drawing of {Height:0.#} pt has {room.Height:0.#} pt of height");
        }

        var placement = Draw(fonts, room.Fill ? room : room with { Height = Height });
        return placement is Placed { Children.Count: 0 } drawn ? drawn with { Part = PartStart.Figure(drawn.Inks) } : placement;
    }
}
