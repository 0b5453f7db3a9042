using Spectre.Console;
using Tagend.Output;

namespace Tagend.Commands;

/// <summary>What became of a run: what was printed, what was not, and which files there are now.</summary>
/// <param name="withheld">Orders with a problem.</param>
/// <param name="volumes">How many volumes the run has; of several, only what was not printed is listed order by order.</param>
internal sealed class PrintSummary(IEnumerable<string> withheld, int volumes)
{
    private readonly List<PrintedVolume> _printed = [];
    private readonly List<string> _notes = [];

    public List<string> Withheld { get; } = [.. withheld];

    /// <param name="note">What else was done with it; null for nothing.</param>
    public void Add(PrintedVolume volume, string? note)
    {
        _printed.Add(volume with { Printed = volume.Printed with { Problems = [] } });
        Withheld.AddRange(volume.Printed.Withheld);
        ShopOptions.Report(volume.Printed.Problems);
        if (note is not null)
        {
            _notes.Add(note);
        }
    }

    /// <summary>One document after the other; the first that is not taken ends it.</summary>
    /// <exception cref="Problems.TagendException">There is no queue, or it refused.</exception>
    public void Send(string printer)
    {
        foreach (var paper in _printed.SelectMany(v => v.Printed.Papers))
        {
            var job = PrintQueue.Send(printer, paper.Path, paper.Title, paper.Paper);
            Console.WriteLine($"{paper.Path}: sent to {printer}, job {job}");
        }
    }

    public void Write()
    {
        var table = new Table().Border(TableBorder.Simple).AddColumns("order", "pieces", "result");
        foreach (var set in _printed.Where(_ => volumes == 1).SelectMany(v => v.Printed.Sets))
        {
            table.AddRow(Cell(set.Order), Cell(string.Join(", ", set.Builds.Select(b => b.Spec.Piece))), new Text("printed"));
        }

        foreach (var order in Withheld)
        {
            table.AddRow(Cell(order), Cell(""), new Text("not printed: see the problems above"));
        }

        if (table.Rows.Count > 0)
        {
            AnsiConsole.Write(table);
        }

        foreach (var file in _printed.SelectMany(v => v.Printed.Papers))
        {
            Console.WriteLine($"{file.Path}: {Counted.Of(file.Pages, "page")}");
        }

        Console.WriteLine($"{Counted.Of(_printed.Sum(v => v.Printed.Sets.Count), "set")} printed, {Withheld.Count} not printed");
        _notes.ForEach(Console.WriteLine);

        static Text Cell(string text) => new(text.ReplaceLineEndings(" "));
    }

    /// <summary>Where a run that was stopped got to.</summary>
    public void SayStopped()
    {
        _notes.ForEach(Console.WriteLine);
        Console.Error.WriteLine(_printed.SelectMany(v => v.Printed.Sets).LastOrDefault() is { } last
            ? $"tagend: stopped; volumes 1 to {_printed.Count} of {volumes} are whole, up to order {last.Order}; later ones may be there, whole too"
            : "tagend: stopped before the first volume was whole");
    }
}
