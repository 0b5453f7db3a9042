using Tagend.Catalog;
using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>Strand material of one color, as it is mounted at the jig.</summary>
public sealed record Spool(string Material, string Color);

/// <summary>A build by its name, what it is laid up of, and what is changed at the jig before it.</summary>
/// <param name="Posts">On the tape, outside to outside.</param>
/// <param name="Colors">In the order they are laid.</param>
/// <param name="Mounted">Its spools that the build before it did not use.</param>
/// <param name="MovesPosts">The posts stand at another mark of the tape.</param>
public sealed record PullStep(
    string Order, string Piece, Length Posts, string Material, ValueList<ColorShare> Colors, ValueList<Spool> Mounted, bool MovesPosts)
{
    /// <summary>Spools that are mounted, and one for posts that move.</summary>
    public int Changes => Mounted.Count + (MovesPosts ? 1 : 0);
}

/// <summary>An order of a batch's builds with few changes of spools and posts, from a bench with nothing set up.</summary>
/// <param name="Steps">Each made as it comes.</param>
/// <param name="Changes">Never more than <paramref name="ChangesAsOrdered"/>; where nothing is gained the file's order stays.</param>
/// <param name="ChangesAsOrdered">What the same builds take in the order of the file.</param>
public sealed record PullOrder(IEnumerable<PullStep> Steps, int Changes, int ChangesAsOrdered);

/// <summary>What is taken from the shelf for a batch, and in which order it is built: what the pull sheet and the console show.</summary>
/// <param name="Unit">Of all pieces.</param>
/// <param name="Date">Of the first piece.</param>
/// <param name="Stock">Each spool once: strands before threads, in order of name and color.</param>
public sealed record BatchPull(LengthUnit Unit, DateOnly Date, int Sets, int Pieces, ValueList<StockNeed> Stock, PullOrder Order)
{
    /// <summary>Which of the shop's spools the stock is taken from; null where the shop keeps none.</summary>
    public SpoolPlan? Spools { get; init; }

    /// <summary>The stock and the order of builds of some pieces.</summary>
    /// <param name="specs">In the file's order; the pieces of a set may be scattered.</param>
    /// <param name="shop">Its waste, tails and dummy tags.</param>
    /// <param name="shelf">The shop's spools; null where it keeps none.</param>
    /// <returns>Null where there are no pieces.</returns>
    public static BatchPull? Of(IEnumerable<BuildSpec> specs, Shop shop, IReadOnlyList<ShelfSpool>? shelf = null)
    {
        var list = new PullList(shop, shelf);
        foreach (var spec in specs)
        {
            list.Add(spec);
        }

        return list.Finished();
    }
}

/// <summary>Gathers a batch piece by piece: of a spec it holds only what it needs.</summary>
/// <param name="shelf">The shop's spools; null where it keeps none.</param>
public sealed class PullList(Shop shop, IReadOnlyList<ShelfSpool>? shelf = null)
{
    private readonly IReadOnlyList<ShelfSpool> _shelf = shelf ?? [];
    private readonly Dictionary<(string Order, string Piece), ValueList<StockNeed>> _needs = [];
    private readonly Dictionary<(StockKind Kind, string Name, string Color), Length> _stock = [];
    private readonly Dictionary<SetUp, SetUp> _setUps = [];
    private readonly Dictionary<ValueList<ColorShare>, ValueList<ColorShare>> _colors = [];
    private readonly List<Piece> _pieces = [];
    private (LengthUnit Unit, DateOnly Date) _first;

    /// <summary>Adds a piece.</summary>
    /// <param name="spec">The next in the file's order; the pieces of its set may be scattered.</param>
    public void Add(BuildSpec spec)
    {
        if (_pieces.Count == 0)
        {
            _first = (spec.Unit, spec.Date);
        }

        var needs = Stock.Of(spec, shop);
        if (_shelf.Count > 0)
        {
            _needs[(spec.Order, spec.Piece)] = needs;
        }

        foreach (var need in needs)
        {
            var spool = (need.Kind, need.Name, need.Color);
            _stock[spool] = _stock.GetValueOrDefault(spool) + need.Length;
        }

        _pieces.Add(new Piece(spec.Order, spec.Piece, spec.Bundle.Material, Shared(_setUps, SetUp.Of(spec)), Shared(_colors, spec.Layup.Colors)));
    }

    /// <summary>The stock and the order of builds of all pieces so far.</summary>
    /// <returns>Null where there are none.</returns>
    public BatchPull? Finished()
    {
        if (_pieces.Count == 0)
        {
            return null;
        }

        // The pieces of a set together, where its first one is.
        var sets = new Dictionary<string, int>();
        foreach (var piece in _pieces)
        {
            sets.TryAdd(piece.Order, sets.Count);
        }

        var order = OrderOf([.. _pieces.OrderBy(piece => sets[piece.Order])]);
        return new BatchPull(
            _first.Unit,
            _first.Date,
            sets.Count,
            _pieces.Count,
            Stock.Sorted(_stock.Select(s => new StockNeed(s.Key.Kind, s.Key.Name, s.Key.Color, s.Value))),
            order)
        {
            Spools = _shelf.Count == 0 ? null : SpoolsOf(order),
        };
    }

    private SpoolPlan SpoolsOf(PullOrder order)
    {
        var plan = new SpoolPlan(_shelf);
        foreach (var step in order.Steps)
        {
            plan.Add(step.Order, step.Piece, _needs[(step.Order, step.Piece)]);
        }

        return plan;
    }

    private static PullOrder OrderOf(Piece[] pieces)
    {
        SetUp[] setUps = [.. pieces.Select(piece => piece.SetUp)];
        var order = SetUpOrder.Of(setUps);
        return new PullOrder(
            SetUpOrder.Steps(order.Taken, setUps).Select(step => StepOf(pieces[step.Index], step.Mounted, step.MovesPosts)),
            order.Changes,
            order.ChangesAsGiven);
    }

    private static PullStep StepOf(Piece piece, ValueList<Spool> mounted, bool movesPosts) =>
        new(piece.Order, piece.Name, piece.SetUp.Posts!.Value, piece.Material, piece.Colors, mounted, movesPosts);

    /// <summary>An equal one that is held already, else the one given.</summary>
    private static T Shared<T>(Dictionary<T, T> held, T item)
        where T : notnull
    {
        if (held.TryGetValue(item, out var same))
        {
            return same;
        }

        held.Add(item, item);
        return item;
    }

    private sealed record Piece(string Order, string Name, string Material, SetUp SetUp, ValueList<ColorShare> Colors);
}
