using Tagend.Measures;
using Tagend.Orders;

namespace Tagend.Imports;

/// <summary>A map that is being proposed, and what is not sure about it.</summary>
internal sealed class MapDraft
{
    /// <summary>Headers and what they stand for, in the file's order.</summary>
    public List<(string Header, List<MapTarget> Targets)> Columns { get; } = [];

    /// <summary>Texts of several cells.</summary>
    public Dictionary<MapTarget, string> Joins { get; } = [];

    /// <summary>Option columns and their labels.</summary>
    public Dictionary<string, List<(string Label, List<MapTarget> Targets)>> Options { get; } = [];

    public Dictionary<MapTarget, string> Constants { get; } = [];

    public Dictionary<string, Dictionary<string, string>> Values { get; } = [];

    public List<LeftOutRows> LeaveOut { get; } = [];

    public List<string> Carry { get; set; } = [];

    public List<string> Blank { get; set; } = [];

    public LengthUnit? Unit { get; set; }

    /// <summary>Headers that were not understood and are printed nowhere.</summary>
    public List<string> NotUnderstood { get; } = [];

    /// <summary>What whoever uses the map must look at, in sentences.</summary>
    public List<string> Doubts { get; } = [];

    public void Never(string header) => Columns.Add((header, [new MapTarget(null, MapTarget.Never)]));

    public bool Has(MapTarget target) => Joins.ContainsKey(target) || Columns.Exists(c => c.Targets.Contains(target))
        || Options.Values.SelectMany(o => o).Any(o => o.Targets.Contains(target));

    /// <summary>The pieces that have a length of their own.</summary>
    public List<string> Pieces() =>
    [
        .. Columns.SelectMany(c => c.Targets)
            .Concat(Options.Values.SelectMany(o => o).SelectMany(o => o.Targets))
            .Where(t => t.Piece is not null && t.Column is OrderColumn.FinishedLength or OrderColumn.BowLength)
            .Select(t => t.Piece!)
            .Distinct(),
    ];
}
