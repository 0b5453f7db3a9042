using Tagend.Output;

namespace Tagend.Blocks;

/// <summary>A column of a table.</summary>
public sealed record TableColumn(string Title, ColumnWidth Width, Align Align = Align.Left);

/// <summary>Rows of cells under a header that is repeated on every page.</summary>
/// <param name="Rows">Each with a cell for every column.</param>
public sealed record Table(
    IReadOnlyList<TableColumn> Columns, IReadOnlyList<IReadOnlyList<Block>> Rows, TextStyle HeaderStyle) : Block
{
    /// <summary>Least room between columns, in points.</summary>
    public float Gap { get; init; } = 8;

    /// <summary>Room between columns where there is plenty, in points.</summary>
    public float WidestGap { get; init; } = 8;

    /// <summary>Over and under each row's text, in points.</summary>
    public float Padding { get; init; } = 1.5f;

    /// <summary>Thickness of the line under the header, in points.</summary>
    public float HeaderRule { get; init; } = 0.8f;

    /// <summary>Thickness of the lines between rows, in points.</summary>
    public float RowRule { get; init; } = 0.4f;

    public override Placement Place(Fonts fonts, Room room)
    {
        var (placed, count, misfit) = Fill(fonts, room);
        if (misfit is not null)
        {
            return misfit;
        }

        return count == Rows.Count
            ? placed!
            : new Misfit($"a table of {Rows.Count} rows: {count} fit into {room.Height:0.#} pt of height");
    }

    public override float NaturalWidth(Fonts fonts) =>
        NaturalWidths(fonts).Sum() + (Gap * (Columns.Count - 1));

    public override PageSplit Split(Fonts fonts, Room room)
    {
        var (placed, count, misfit) = Fill(fonts, room);
        return misfit is not null || (count == 0 && Rows.Count > 0)
            ? new PageSplit(null, this)
            : new PageSplit(placed, count == Rows.Count ? null : this with { Rows = [.. Rows.Skip(count)] });
    }

    private (Placed? Placed, int Count, Misfit? Misfit) Fill(Fonts fonts, Room room)
    {
        var natural = NaturalWidths(fonts);
        var gap = Math.Clamp((room.Width - natural.Sum()) / Math.Max(1, Columns.Count - 1), Gap, Math.Max(Gap, WidestGap));
        var widths = ColumnWidth.Divide([.. Columns.Select(c => c.Width)], i => natural[i], room.Width, gap);
        var header = PlaceRow(i => new Paragraph(Columns[i].Title, HeaderStyle), room, PartKind.HeaderCell);
        if (header is Misfit noHeader)
        {
            return (null, 0, noHeader);
        }

        var children = new List<PlacedChild> { new(0, 0, (Placed)header) };
        var inks = new List<Ink>();
        var y = ((Placed)header).Height + Padding;
        inks.Add(new LineInk(0, y, room.Width, y, HeaderRule));
        var count = 0;
        foreach (var cells in Rows)
        {
            var placement = PlaceRow(i => cells[i], room with { Height = Room.Endless }, PartKind.Cell);
            if (placement is Misfit misfit)
            {
                return (null, count, misfit);
            }

            var row = (Placed)placement;
            if (!room.HoldsHeight(y + row.Height + (2 * Padding)))
            {
                break;
            }

            if (count > 0)
            {
                inks.Add(new LineInk(0, y, room.Width, y, RowRule));
            }

            children.Add(new PlacedChild(0, y + Padding, row));
            y += row.Height + (2 * Padding);
            count++;
        }

        var table = new Placed(room.Width, y, inks, children, ((Placed)header).Baseline) { Part = PartStart.Of(PartKind.Table) };
        return (table, count, null);

        Placement PlaceRow(Func<int, Block> cell, Room space, PartKind kind)
        {
            var columns = new Column[widths.Length];
            for (var i = 0; i < columns.Length; i++)
            {
                columns[i] = new Column(Aligned(cell(i), Columns[i].Align), ColumnWidth.Of(widths[i]));
            }

            var placement = new Row(columns, gap, Level.Baseline).Place(fonts, space);
            return placement is Placed row ? row.With(PartKind.Row, kind) : placement;
        }
    }

    private static Block Aligned(Block cell, Align align) => cell is Paragraph text && text.Align != align ? text with { Align = align } : cell;

    private float[] NaturalWidths(Fonts fonts)
    {
        var widths = new float[Columns.Count];
        for (var i = 0; i < widths.Length; i++)
        {
            widths[i] = Columns[i].Width.Points ?? fonts.WidthOf(Columns[i].Title, HeaderStyle);
            for (var row = 0; Columns[i].Width.Points is null && row < Rows.Count; row++)
            {
                widths[i] = Math.Max(widths[i], Rows[row][i].NaturalWidth(fonts));
            }
        }

        return widths;
    }
}
