using Tagend.Output;

namespace Tagend.Blocks;

/// <summary>Blocks one under the other, kept on one page.</summary>
/// <param name="Gap">Between neighbors, in points.</param>
public sealed record Stack(IReadOnlyList<Block> Blocks, float Gap = 0) : Block
{
    public override Placement Place(Fonts fonts, Room room)
    {
        var placements = new Placement[Blocks.Count];
        var (left, growing) = (room.Height - (Gap * Math.Max(0, Blocks.Count - 1)), 0f);
        for (var i = 0; i < placements.Length; i++)
        {
            if (Blocks[i] is Grow grow)
            {
                growing += grow.Share;
                continue;
            }

            placements[i] = Blocks[i].Place(fonts, new Room(room.Width, Math.Max(0, left)));
            left -= placements[i] is Placed placed ? placed.Height : 0;
        }

        for (var i = 0; i < placements.Length; i++)
        {
            if (Blocks[i] is Grow grow)
            {
                placements[i] = grow.Place(fonts, new Room(room.Width, Math.Max(0, left) * grow.Share / growing, Fill: true));
            }
        }

        if (Misfit.Of(placements) is { } misfit)
        {
            return misfit;
        }

        var children = new PlacedChild[placements.Length];
        var (y, width) = (0f, 0f);
        for (var i = 0; i < children.Length; i++)
        {
            var placed = (Placed)placements[i];
            children[i] = new PlacedChild(0, y, placed);
            y += placed.Height + Gap;
            width = Math.Max(width, placed.Width);
        }

        var height = Math.Max(0, y - Gap);
        var baseline = children.Length == 0 ? 0 : children[0].Placed.Baseline;
        return new Placed(width, room.Fill ? Math.Max(height, room.Height) : height, [], children, baseline);
    }

    public override float NaturalWidth(Fonts fonts) => Blocks.Count == 0 ? 0 : Blocks.Max(b => b.NaturalWidth(fonts));
}

/// <summary>Takes what height the others of a stack leave over, in proportion to its share.</summary>
public sealed record Grow(Block Block, float Share = 1) : Block
{
    /// <summary>Empty room that pushes what follows down.</summary>
    public static Grow Space { get; } = new(new Spacer(0));

    public override Placement Place(Fonts fonts, Room room)
    {
        var placement = Block.Place(fonts, room);
        return placement is Placed placed && room.Fill
            ? placed with { Height = Math.Max(placed.Height, room.Height) }
            : placement;
    }

    public override float NaturalWidth(Fonts fonts) => Block.NaturalWidth(fonts);
}

/// <summary>Empty room of a height, in points.</summary>
public sealed record Spacer(float Height) : Block
{
    public override Placement Place(Fonts fonts, Room room) => room.HoldsHeight(Height)
        ? new Placed(0, Height)
        : new Misfit($"a gap of {Height:0.#} pt has {room.Height:0.#} pt of room");
}
