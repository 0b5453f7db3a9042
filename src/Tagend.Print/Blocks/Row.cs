using Tagend.Output;

namespace Tagend.Blocks;

/// <summary>How the blocks of a row stand to each other.</summary>
public enum Level
{
    Top,
    Middle,
    Bottom,

    /// <summary>First lines of text on one line.</summary>
    Baseline,

    /// <summary>All as high as the highest, if they can be.</summary>
    Equal,
}

/// <summary>A block of a row and its width.</summary>
public sealed record Column(Block Block, ColumnWidth Width);

/// <summary>Blocks side by side.</summary>
/// <param name="Gap">Between neighbors, in points.</param>
public sealed record Row(IReadOnlyList<Column> Columns, float Gap = 0, Level Level = Level.Top) : Block
{
    /// <summary>Columns of equal width.</summary>
    public static Row Equal(IEnumerable<Block> blocks, float gap, Level level = Level.Equal) =>
        new([.. blocks.Select(b => new Column(b, ColumnWidth.Shared()))], gap, level);

    public override Placement Place(Fonts fonts, Room room)
    {
        var widths = ColumnWidth.Divide(
            [.. Columns.Select(c => c.Width)], i => Columns[i].Block.NaturalWidth(fonts), room.Width, Gap);
        var total = widths.Sum() + (Gap * (Columns.Count - 1));
        if (!room.HoldsWidth(total))
        {
            return new Misfit($"columns take {total:0.#} pt of width and have {room.Width:0.#} pt");
        }

        var placements = Columns.Select((c, i) => c.Block.Place(fonts, new Room(widths[i], room.Height, room.Fill))).ToList();
        if (Reasons(placements) is { } misfit)
        {
            return misfit;
        }

        var height = placements.Max(p => ((Placed)p).Height);
        if (Level == Level.Equal)
        {
            placements = [.. placements.Select((p, i) => ((Placed)p).Height < height
                ? Columns[i].Block.Place(fonts, new Room(widths[i], height, Fill: true))
                : p)];
            if (Reasons(placements) is { } later)
            {
                return later;
            }
        }

        return Beside([.. placements.Cast<Placed>()], widths, height);
    }

    public override float NaturalWidth(Fonts fonts) =>
        Columns.Sum(c => c.Width.Points ?? c.Block.NaturalWidth(fonts)) + (Gap * (Columns.Count - 1));

    private static Misfit? Reasons(IEnumerable<Placement> placements) =>
        placements.OfType<Misfit>().SelectMany(m => m.Reasons).ToList() is { Count: > 0 } reasons ? new Misfit(reasons) : null;

    private Placed Beside(IReadOnlyList<Placed> blocks, float[] widths, float height)
    {
        var baseline = blocks.Max(b => b.Baseline);
        var children = new List<PlacedChild>();
        var x = 0f;
        for (var i = 0; i < blocks.Count; i++)
        {
            var y = Level switch
            {
                Level.Middle => (height - blocks[i].Height) / 2,
                Level.Bottom => height - blocks[i].Height,
                Level.Baseline => baseline - blocks[i].Baseline,
                _ => 0,
            };
            children.Add(new PlacedChild(x, y, blocks[i]));
            x += widths[i] + Gap;
        }

        var lowest = children.Max(c => c.Y + c.Placed.Height);
        return new Placed(x - Gap, Math.Max(height, lowest), [], children, baseline);
    }
}
