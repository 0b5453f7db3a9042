using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;

namespace Tagend.Imports;

/// <summary>One column of a source's file, as a proposal looks at it.</summary>
/// <param name="Cells">Those that are not empty, in the file's order.</param>
internal sealed record SampledColumn(string Header, IReadOnlyList<string> Cells)
{
    /// <summary>Texts that people write for an empty cell.</summary>
    public static readonly string[] MeansNothing = ["-", "--", "n/a", "none"];

    private static readonly Length Shortest = Length.FromInches(4);
    private static readonly Length Longest = Length.FromInches(140);

    /// <summary>Most cells are lengths that a piece may have, in inches or in millimeters.</summary>
    public bool AreLengths(LengthUnit unit) => Most(c =>
        LengthReader.TryRead(c, unit, out var length) && length >= Shortest && length <= Longest);

    /// <summary>Most cells are a number, perhaps behind a sign: an order's.</summary>
    public bool AreNumbers => Most(c => c.TrimStart('#').Any(char.IsDigit) && c.TrimStart('#').All(k => char.IsDigit(k) || k == '-'));

    public bool AreAddresses => Most(c => c.Contains('@', StringComparison.Ordinal));

    /// <summary>One of each text, as a map compares them.</summary>
    public IEnumerable<string> Distinct() => Cells.DistinctBy(Headers.Plain);

    /// <summary>Four of five cells that are no dash.</summary>
    private bool Most(Func<string, bool> has)
    {
        var cells = Cells.Where(c => !MeansNothing.Contains(c, StringComparer.OrdinalIgnoreCase)).ToList();
        return cells.Count > 0 && cells.Count(has) * 5 >= cells.Count * 4;
    }
}

/// <summary>The header and the first rows of a source's file.</summary>
/// <param name="Rows">Each with a cell for every column.</param>
internal sealed record SourceSample(IReadOnlyList<SampledColumn> Columns, IReadOnlyList<IReadOnlyList<string>> Rows)
{
    /// <summary>Enough to see what a column holds.</summary>
    private const int MostRows = 500;

    /// <returns>Null, with problems added, where the file is no table.</returns>
    public static SourceSample? Read(string file, byte[] bytes, List<Problem> problems)
    {
        if (OrderText.Read(file, bytes, problems) is not { } text)
        {
            return null;
        }

        var records = new OrderTable(text).Records().Where(r => !r.IsEmpty).Take(MostRows + 1).ToList();
        if (records.Count < 2)
        {
            problems.Add(new Problem(new Place(file), null, ImportWording.NothingToMap));
            return null;
        }

        if (OrderHeader.TooLarge(file, records[0]) is { } tooLarge)
        {
            problems.Add(tooLarge);
            return null;
        }

        var titles = records[0].Cells;
        if (titles.Where(t => t.Length > 0).GroupBy(Headers.Plain).FirstOrDefault(g => g.Skip(1).Any()) is { } twice)
        {
            problems.Add(new Problem(new Place(file, records[0].Line, twice.First()), null, OrderWording.ColumnTwice));
            return null;
        }

        // A cell that no page has room for is told of when the file is read.
        var rows = records.Skip(1).Where(r => r.Fault(file, titles.Count) is null)
            .Select(r => r.Cells.Select(c => c.Length <= OrderHeader.MostCharacters ? c : "").ToList()).ToList();
        var named = Enumerable.Range(0, titles.Count).Where(i => titles[i].Length > 0).ToList();
        return new SourceSample(
            [.. named.Select(i => new SampledColumn(titles[i], [.. rows.Select(r => r[i]).Where(c => c.Length > 0)]))],
            [.. rows.Select(r => named.ConvertAll(i => r[i]))]);
    }
}
