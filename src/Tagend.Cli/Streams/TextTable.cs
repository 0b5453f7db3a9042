using Spectre.Console;
using Tagend.Problems;

namespace Tagend.Streams;

/// <summary>Rows in columns, of which one is broken into lines where it must. On a terminal too narrow for the others each row is a line of cells with their names.</summary>
/// <param name="wraps">The column that is broken, from 0.</param>
/// <param name="columns">Their names; empty where the cells speak for themselves.</param>
internal sealed class TextTable(int wraps, params IReadOnlyList<string> columns)
{
    /// <summary>Around a cell.</summary>
    private const int Gap = 2;

    private const int NarrowestWrapped = 24;

    private readonly List<IReadOnlyList<string>> _rows = [];

    public void Add(params IEnumerable<string> cells) => _rows.Add([.. cells.Select(c => ShownText.Of(c.ReplaceLineEndings(" ")))]);

    /// <summary>Writes nothing where there are no rows.</summary>
    public void Write()
    {
        if (_rows.Count == 0)
        {
            return;
        }

        var needed = Enumerable.Range(0, columns.Count).Sum(i => Gap + 1 + (i == wraps ? NarrowestWrapped : WidthOf(i)));
        if (needed > Terminal.Width)
        {
            WriteLines();
            return;
        }

        var table = new Table().Border(TableBorder.Simple);
        for (var i = 0; i < columns.Count; i++)
        {
            table.AddColumn(new TableColumn(new Text(columns[i])) { NoWrap = i != wraps });
        }

        _rows.ForEach(r => table.AddRow(r.Select(c => new Text(c))));
        Terminal.Shapes.Write(table);
    }

    private int WidthOf(int column) => Math.Max(columns[column].Length, _rows.Max(r => r[column].Length));

    private void WriteLines()
    {
        foreach (var row in _rows)
        {
            Console.WriteLine(string.Join("  ", row.Zip(columns).Where(c => c.First.Length > 0).Select((c, i) => i == 0 ? c.First : $"{c.Second} {c.First}".TrimStart())));
        }
    }
}
