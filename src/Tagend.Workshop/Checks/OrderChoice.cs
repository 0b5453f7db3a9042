using Tagend.Orders;
using Tagend.Specs;
using Tagend.Workshop.Readings;

namespace Tagend.Workshop.Checks;

/// <summary>What of the order files a run is for: some orders, pieces of orders, or all.</summary>
public sealed class OrderChoice
{
    // By order, its pieces; null for the whole order.
    private readonly Dictionary<string, HashSet<string>?> _orders = [];

    private OrderChoice()
    {
    }

    /// <summary>Whether the run is for everything in the files.</summary>
    public bool IsAll => _orders.Count == 0;

    /// <summary>The orders that are named, as they are in the book.</summary>
    public IEnumerable<string> Orders => _orders.Keys;

    /// <summary>The pieces that are named one by one.</summary>
    public IEnumerable<PieceName> Pieces => _orders.SelectMany(o => o.Value ?? [], (o, piece) => new PieceName(o.Key, piece));

    /// <summary>Reads <c>701</c> and <c>701/buss</c>; no text at all is everything.</summary>
    /// <param name="error">What is wrong with a text; null where nothing is.</param>
    public static OrderChoice Read(IEnumerable<string> texts, out string? error)
    {
        var choice = new OrderChoice();
        error = null;
        foreach (var text in texts)
        {
            if (text.Contains('/', StringComparison.Ordinal))
            {
                var name = PieceName.Read(text, out var fault);
                error ??= name is null ? fault : null;
                choice.Add(name?.Order ?? text, name?.Piece);
            }
            else
            {
                choice.Add(NameReader.TryReadOrder(text, out var order, out _) ? order : text, null);
            }
        }

        return choice;
    }

    /// <summary>Whether the run is for this order, or for pieces of it.</summary>
    /// <param name="order">Its number, in capitals.</param>
    public bool Has(string order) => IsAll || _orders.ContainsKey(order);

    /// <summary>What is wanted of the sets that are ready.</summary>
    public IEnumerable<ReadySet> Of(IEnumerable<ReadySet> ready) => ready
        .Where(set => Has(set.Order))
        .Select(set => _orders.GetValueOrDefault(set.Order) is { } pieces ? set.Only(pieces) : set)
        .Where(set => set.Pieces > 0);

    private void Add(string order, string? piece)
    {
        if (piece is null || (_orders.TryGetValue(order, out var pieces) && pieces is null))
        {
            _orders[order] = null;
            return;
        }

        _orders[order] = [.. pieces ?? [], piece];
    }
}
