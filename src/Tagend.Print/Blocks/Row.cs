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
        var widths = ColumnWidth.Divide(WidthsOf(Columns), i => Columns[i].Block.NaturalWidth(fonts), room.Width, Gap);
        var total = widths.Sum() + (Gap * (Columns.Count - 1));
        if (!room.HoldsWidth(total))
        {
            return new Misfit($"columns take {total:0.#} pt of width and have {room.Width:0.#} pt");
        }

        var placements = new Placement[Columns.Count];
        for (var i = 0; i < placements.Length; i++)
        {
            placements[i] = Columns[i].Block.Place(fonts, new Room(widths[i], room.Height, room.Fill));
        }

        if (Misfit.Of(placements) is { } misfit)
        {
            return misfit;
        }

        var height = 0f;
        foreach (var placement in placements)
        {
            height = Math.Max(height, ((Placed)placement).Height);
        }

        for (var i = 0; Level == Level.Equal && i < placements.Length; i++)
        {
            if (((Placed)placements[i]).Height < height)
            {
                placements[i] = Columns[i].Block.Place(fonts, new Room(widths[i], height, Fill: true));
            }
        }

        return Misfit.Of(placements) is { } later ? later : Beside(placements, widths, height);
    }

    public override float NaturalWidth(Fonts fonts) =>
        Columns.Sum(c => c.Width.Points ?? c.Block.NaturalWidth(fonts)) + (Gap * (Columns.Count - 1));

    private static ColumnWidth[] WidthsOf(IReadOnlyList<Column> columns)
    {
        var widths = new ColumnWidth[columns.Count];
        for (var i = 0; i < widths.Length; i++)
        {
            widths[i] = columns[i].Width;
        }

        return widths;
    }

    private Placed Beside(Placement[] blocks, float[] widths, float height)
    {
        var baseline = 0f;
        foreach (var block in blocks)
        {
            baseline = Math.Max(baseline, ((Placed)block).Baseline);
        }

        var children = new PlacedChild[blocks.Length];
        var (x, lowest) = (0f, height);
        for (var i = 0; i < blocks.Length; i++)
        {
            var block = (Placed)blocks[i];
            var y = Level switch
            {
                Level.Middle => (height - block.Height) / 2,
                Level.Bottom => height - block.Height,
                Level.Baseline => baseline - block.Baseline,
                _ => 0,
            };
            children[i] = new PlacedChild(x, y, block);
            x += widths[i] + Gap;
            lowest = Math.Max(lowest, y + block.Height);
        }

        return new Placed(x - Gap, lowest, [], children, baseline);
    }
}
