using System.Collections.Frozen;
using Tagend.Problems;

namespace Tagend.Orders;

/// <summary>Where a cell's text comes from, when that is not the column of its own name.</summary>
/// <param name="Column">As a message names the place: the header of the shop's own file, and the option of it.</param>
/// <param name="Text">As written there.</param>
public sealed record CellOrigin(string Column, string Text);

/// <summary>A row's cells by column name, with the line it starts on.</summary>
/// <param name="columns">Our name of each cell; null where it has none.</param>
/// <param name="cells">As many.</param>
/// <param name="origins">As many, null for a cell that stands under its own name; null where all do.</param>
public sealed class OrderRow(string file, int line, string?[] columns, string[] cells, CellOrigin?[]? origins = null)
{
    /// <summary>The file's name, for messages.</summary>
    public string File { get; } = file;

    /// <summary>The line the row starts on, from 1.</summary>
    public int Line { get; } = line;

    /// <summary>Columns with a text that cannot be used, which is told already: they are read as empty, and nothing is said of what they lack.</summary>
    public IReadOnlySet<string> Unusable { get; init; } = FrozenSet<string>.Empty;

    /// <summary>The cell's text; null where the column is absent or the cell empty.</summary>
    public string? this[string column]
    {
        get
        {
            var at = IndexOf(column);
            return at >= 0 && cells[at].Length > 0 ? cells[at] : null;
        }
    }

    /// <summary>The same row with only some of its cells, and with others from elsewhere.</summary>
    /// <param name="kept">Columns of this row.</param>
    /// <param name="added">Columns that are none of them, with their texts.</param>
    internal OrderRow With(IReadOnlyList<string> kept, IEnumerable<(string Column, string Text, CellOrigin Origin)> added)
    {
        var others = added.ToList();
        return new OrderRow(
            File,
            Line,
            [.. kept, .. others.Select(o => o.Column)],
            [.. kept.Select(c => this[c]!), .. others.Select(o => o.Text)],
            [.. kept.Select(c => origins?[IndexOf(c)]), .. others.Select(o => o.Origin)])
        {
            Unusable = Unusable,
        };
    }

    /// <summary>The same row without some of its cells, of which nothing more can be told.</summary>
    internal OrderRow Without(IEnumerable<string> unusable)
    {
        var lost = unusable.ToFrozenSet();
        return new OrderRow(File, Line, columns, [.. cells.Select((text, i) => columns[i] is { } c && lost.Contains(c) ? "" : text)], origins)
        {
            Unusable = lost.Union(Unusable).ToFrozenSet(),
        };
    }

    /// <summary>A problem with one cell of this row, named as its own file names it.</summary>
    public Problem Problem(string column, string message, Severity severity = Severity.Refusal)
    {
        var at = IndexOf(column);
        return at >= 0 && origins?[at] is { } origin
            ? new Problem(new Place(File, Line, origin.Column), origin.Text.Length > 0 ? origin.Text : null, message, severity)
            : new Problem(new Place(File, Line, column), this[column], message, severity);
    }

    // Some twenty cells of each row are asked for, several times: a search that calls each text's own comparison takes three times as long.
    private int IndexOf(string column)
    {
        for (var i = 0; i < columns.Length; i++)
        {
            if (columns[i] == column)
            {
                return i;
            }
        }

        return -1;
    }
}
