using Tagend.Catalog;
using Tagend.Specs;
using Tagend.Streams;
using Tagend.Workshop;
using Tagend.Workshop.Books;
using Tagend.Workshop.Printing;

namespace Tagend.Texts;

/// <summary>What became of a run: what was printed, what was not, and which files there are now.</summary>
/// <param name="withheld">Orders with a problem.</param>
/// <param name="volumes">How many volumes the run has; of several, only what was not printed is listed order by order.</param>
internal sealed class PrintSummary(IEnumerable<string> withheld, int volumes, ShopCatalog catalog)
{
    private readonly List<BuildSet> _listed = [];
    private readonly List<PrintedPaper> _papers = [];
    private readonly List<string> _notes = [];
    private readonly Dictionary<string, int> _nextLabels = [];
    private int _volumes;
    private int _sets;
    private string? _last;

    public List<string> Withheld { get; } = [.. withheld];

    /// <summary>A paper of the run was not printed, for something did not fit on it.</summary>
    public bool HasMisfits { get; private set; }

    /// <param name="entry">Of it in the job book; null for none.</param>
    public void Add(PrintedVolume volume, BookEntry? entry)
    {
        var sets = volume.Printed.Sets;
        _listed.AddRange(volumes == 1 ? sets : []);
        _papers.AddRange(volume.Printed.Papers);
        _volumes++;
        _sets += sets.Count;
        _last = sets.Count > 0 ? sets[^1].Order : _last;
        Withheld.AddRange(volume.Printed.Withheld);
        HasMisfits |= volume.Printed.Problems.Any(p => p.Severity == Problems.Severity.Refusal);
        Say.Problems(volume.Printed.Problems);
        foreach (var (stock, label) in volume.Printed.NextLabels)
        {
            _nextLabels[stock] = label;
        }

        if (entry is not null)
        {
            _notes.Add(Say.Of(entry));
        }
    }

    /// <summary>One document after the other; the first that is not taken ends it.</summary>
    /// <exception cref="Problems.TagendException">There is no queue, or it refused.</exception>
    public void Send(string printer)
    {
        foreach (var paper in _papers)
        {
            Say.Sent(paper, printer);
        }
    }

    public void Write()
    {
        var table = new TextTable(wraps: 1, "order", "pieces", "result");
        foreach (var set in _listed)
        {
            table.Add(set.Order, string.Join(", ", set.Builds.Select(b => b.Spec.Piece)), "printed");
        }

        foreach (var order in Withheld)
        {
            table.Add(order, "", "not printed: see the problems above");
        }

        table.Write();
        foreach (var file in _papers)
        {
            Console.WriteLine(Say.Of(file));
        }

        foreach (var note in TemplatesNote.Of(catalog))
        {
            Console.WriteLine(note);
        }

        Console.WriteLine($"{Counted.Of(_sets, "set")} printed, {Withheld.Count} not printed");
        _notes.ForEach(Console.WriteLine);
        foreach (var (stock, label) in _nextLabels)
        {
            Console.WriteLine($"{stock}: label {label} is the next free one, and --first-label next starts there");
        }
    }

    /// <summary>Says which files of an earlier run are gone.</summary>
    public void Removed(IReadOnlyList<string> files)
    {
        if (files.Count > 0)
        {
            _notes.Add($"removed files left by an earlier, larger run: {string.Join(", ", files)}");
        }
    }

    /// <summary>Where a run that was stopped got to.</summary>
    public void SayStopped()
    {
        _notes.ForEach(Console.WriteLine);
        Console.Error.WriteLine(_last is { } last
            ? $"tagend: stopped; volumes 1 to {_volumes} of {volumes} are whole, up to order {last}, and the others are not there"
            : "tagend: stopped before the first volume was whole");
    }
}
