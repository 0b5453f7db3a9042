using System.IO.Enumeration;
using Tagend.Measures;
using Tagend.Orders;

namespace Tagend.Imports;

/// <summary>How the files of one source are read as orders. From imports/NAME.toml.</summary>
public sealed record SourceMap
{
    /// <summary>Of its file, without the ending.</summary>
    public required string Name { get; init; }

    /// <summary>In words, for the one who runs the program.</summary>
    public required string Title { get; init; }

    /// <summary>Of a length that names none; null for the shop's own.</summary>
    public LengthUnit? Unit { get; init; }

    /// <summary>Texts of an order made of cells of the row.</summary>
    public required IReadOnlyList<MappedCell> Cells { get; init; }

    /// <summary>Columns whose text holds several options.</summary>
    public required IReadOnlyList<OptionColumn> Options { get; init; }

    /// <summary>Texts that stand in no file of this source.</summary>
    public required IReadOnlyList<MapConstant> Constants { get; init; }

    /// <summary>Texts of the source and what is read instead, by target as written, such as <c>colors</c> or <c>buss.kind</c>.</summary>
    public required IReadOnlyDictionary<string, IReadOnlyDictionary<string, string>> Values { get; init; }

    /// <summary>Rows that are no pieces to build.</summary>
    public required IReadOnlyList<LeftOutRows> LeaveOut { get; init; }

    /// <summary>Headers of what reaches no paper.</summary>
    public required IReadOnlyList<string> Never { get; init; }

    /// <summary>Headers whose empty cell says the same as the row above it of the same order.</summary>
    public required IReadOnlyList<string> Carried { get; init; }

    /// <summary>Texts that mean an empty cell, such as a dash.</summary>
    public required IReadOnlyList<string> Blank { get; init; }

    /// <summary>The pieces that have columns of their own, in the map's order.</summary>
    public List<string> Pieces() =>
    [
        .. Cells.SelectMany(c => c.Targets)
            .Concat(Options.SelectMany(o => o.Labels.Values.SelectMany(t => t)))
            .Select(t => t.Piece)
            .OfType<string>()
            .Distinct(),
    ];

    /// <summary>Whether a cell of the row names its piece: rows are line items then, and two of one name are two pieces.</summary>
    public bool HasPieceCell() => Cells.SelectMany(c => c.Targets)
        .Concat(Options.SelectMany(o => o.Labels.Values.SelectMany(t => t)))
        .Contains(new MapTarget(null, OrderColumn.Piece));

    /// <summary>Headers that a file of this source must have.</summary>
    public IReadOnlyList<string> Needed() => [.. Named().DistinctBy(Headers.Plain)];

    /// <summary>The same headers, each as often as it is spelled otherwise.</summary>
    public IEnumerable<string> Named() => Cells.SelectMany(c => c.Template.Headers)
        .Concat(Options.Select(o => o.Header))
        .Concat(LeaveOut.Select(l => l.Header))
        .Concat(Carried)
        .Distinct();
}

/// <summary>A text of an order, and the cells of the row it is made of.</summary>
/// <param name="Template">Of the headers of the cells.</param>
/// <param name="Targets">One or more.</param>
public sealed record MappedCell(CellTemplate Template, IReadOnlyList<MapTarget> Targets)
{
    /// <summary>The headers, as a message names their cells.</summary>
    public string Title { get; } = string.Join(" + ", Template.Headers);
}

/// <summary>A column of option texts.</summary>
/// <param name="Labels">What stands behind each label.</param>
public sealed record OptionColumn(string Header, IReadOnlyDictionary<string, IReadOnlyList<MapTarget>> Labels);

/// <summary>A text that every row of a source has.</summary>
public sealed record MapConstant(MapTarget Target, string Text);

/// <summary>Rows that are left out by the text of one cell.</summary>
/// <param name="Is">Texts, with <c>*</c> for any characters; null where <paramref name="IsNot"/> is given.</param>
/// <param name="IsNot">Texts that are kept.</param>
/// <param name="Why">In a word or two, for the summary.</param>
public sealed record LeftOutRows(string Header, IReadOnlyList<string>? Is, IReadOnlyList<string>? IsNot, string Why)
{
    private readonly string[] _patterns = [.. (Is ?? IsNot ?? []).Select(Headers.Plain)];

    /// <summary>Whether a row with this cell is left out; letter case and spaces do not matter.</summary>
    public bool Has(string cell)
    {
        var plain = Headers.Plain(cell);
        return _patterns.Any(p => FileSystemName.MatchesSimpleExpression(p, plain, ignoreCase: true)) == (Is is not null);
    }

    /// <summary>A text that stands for itself alone, whatever signs it has.</summary>
    public static string Exactly(string text) =>
        string.Concat(text.Select(c => c is '*' or '?' or '\\' ? $"\\{c}" : c.ToString()));
}
