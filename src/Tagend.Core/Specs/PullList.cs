using Tagend.Catalog;
using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>A build by its name, where the posts stand for it, and what is changed at the jig before it.</summary>
/// <param name="Mounted">Its spools that the build before it did not use.</param>
public sealed record PullStep(string Order, string Piece, Length Posts, ValueList<Spool> Mounted, bool MovesPosts);

/// <summary>The order of builds of a batch.</summary>
/// <param name="Steps">Each made as it comes.</param>
/// <param name="ChangesAsOrdered">What the same builds take in the order of the file.</param>
public sealed record PullOrder(IEnumerable<PullStep> Steps, int Changes, int ChangesAsOrdered);

/// <summary>What a batch takes and the order of its builds, gathered piece by piece: of a spec it holds only what it needs.</summary>
public sealed class PullList(Shop shop)
{
    private readonly Dictionary<(StockKind Kind, string Name, string Color), Length> _stock = [];
    private readonly Dictionary<SetUp, SetUp> _setUps = [];
    private readonly List<(string Order, string Piece, SetUp SetUp)> _builds = [];

    /// <summary>The unit of all pieces; null while there are none.</summary>
    public LengthUnit? Unit { get; private set; }

    /// <param name="piece">With a spec, in the file's order; its set may be scattered.</param>
    public void Add(PieceReport piece)
    {
        var spec = piece.Spec!;
        Unit = spec.Unit;
        foreach (var need in Specs.Stock.Of(spec, shop))
        {
            var spool = (need.Kind, need.Name, need.Color);
            _stock[spool] = _stock.GetValueOrDefault(spool) + need.Length;
        }

        var setUp = SetUp.Of(spec);
        _setUps.TryAdd(setUp, setUp);
        _builds.Add((piece.Order, piece.Piece, _setUps[setUp]));
    }

    /// <summary>Each spool once: strands before threads, in order of name and color.</summary>
    public ValueList<StockNeed> Stock() =>
        Specs.Stock.Sorted(_stock.Select(s => new StockNeed(s.Key.Kind, s.Key.Name, s.Key.Color, s.Value)));

    /// <summary>As <see cref="BuildOrder"/> has it for the same sets.</summary>
    public PullOrder Order()
    {
        // The pieces of a set together, where its first one is.
        var sets = new Dictionary<string, int>();
        foreach (var build in _builds)
        {
            sets.TryAdd(build.Order, sets.Count);
        }

        int[] asOrdered = [.. Enumerable.Range(0, _builds.Count).OrderBy(i => sets[_builds[i].Order])];
        SetUp[] setUps = [.. asOrdered.Select(i => _builds[i].SetUp)];
        var order = SetUpOrder.Of(setUps);
        return new PullOrder(
            SetUpOrder.Steps(order.Taken, setUps).Select(step => new PullStep(
                _builds[asOrdered[step.Index]].Order,
                _builds[asOrdered[step.Index]].Piece,
                setUps[step.Index].Posts!.Value,
                step.Mounted,
                step.MovesPosts)),
            order.Changes,
            order.ChangesAsGiven);
    }
}
