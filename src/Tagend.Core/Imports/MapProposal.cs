using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;

namespace Tagend.Imports;

/// <summary>A map for a file of a source that the shop has none for.</summary>
/// <param name="Toml">To be written to imports/NAME.toml.</param>
/// <param name="Map">The same, read.</param>
/// <param name="NotUnderstood">Headers that are printed nowhere because nothing is known of them.</param>
/// <param name="Doubts">What was chosen on little evidence, or could not be chosen; in sentences.</param>
public sealed record MapProposal(string Toml, SourceMap Map, IReadOnlyList<string> NotUnderstood, IReadOnlyList<string> Doubts)
{
    /// <summary>The pieces whose plan neither a column nor a constant of the map says: their orders are refused.</summary>
    public IReadOnlyList<string> Unplanned
    {
        get
        {
            var said = Map.Cells.SelectMany(c => c.Targets).Concat(Map.Constants.Select(c => c.Target)).Where(t => t.Column == OrderColumn.Kind).ToList();
            return [.. Map.Pieces().Where(p => !said.Exists(t => t.Piece is null || t.Piece == p))];
        }
    }

    /// <summary>The same map, which says by which plans pieces are built.</summary>
    /// <param name="plans">The plan of each piece, by the piece's name.</param>
    public MapProposal WithPlans(IReadOnlyDictionary<string, string> plans)
    {
        var toml = MapText.WithConstants(Toml, plans.Select(p => (new MapTarget(p.Key, OrderColumn.Kind), p.Value)));
        return MapReader.Parse(toml, Map.Name, []) is { } map ? this with { Toml = toml, Map = map } : this;
    }

    /// <summary>Proposes a map from the header and the first rows of a file.</summary>
    /// <param name="unit">The shop's: of a length that names none, where the lengths do not show another.</param>
    /// <param name="name">Of the map to be.</param>
    /// <returns>Null, with problems added, where the file is no table or nothing in it is an order's number.</returns>
    public static MapProposal? Of(
        string file, byte[] bytes, string name, IReadOnlyDictionary<string, PiecePlan> plans, LengthUnit unit, List<Problem> problems)
    {
        if (SourceSample.Read(file, bytes, problems) is not { } sample)
        {
            return null;
        }

        var draft = new MapDraft();
        new ColumnGuess(sample, draft, unit).Fill();
        new KindGuess(sample, draft, plans).Fill();
        new RowGuess(sample, draft).Fill();
        if (!draft.Has(new MapTarget(null, OrderColumn.Order)))
        {
            problems.Add(new Problem(new Place(file, 1), null, ImportWording.NoOrderFound(sample.Columns.Select(c => c.Header))));
            return null;
        }

        var toml = MapText.Of(draft, ImportWording.TitleOf(Path.GetFileName(file)));
        return MapReader.Parse(toml, name, problems) is { } map
            ? new MapProposal(toml, map, draft.NotUnderstood, draft.Doubts)
            : null;
    }

    /// <summary>A name for a map, from its file's: without the digits and dates that change from one export to the next.</summary>
    public static string NameFor(string path)
    {
        var words = Path.GetFileNameWithoutExtension(path).ToLowerInvariant()
            .Split([' ', '_', '-', '.', '(', ')'], StringSplitOptions.RemoveEmptyEntries)
            .Where(w => w.All(char.IsAsciiLetter));
        return string.Join('-', words) is { Length: > 0 } name ? name : "orders";
    }
}
