using System.Collections.Concurrent;
using Tagend.Measures;

namespace Tagend.Orders;

/// <summary>What cells said that were read before: in a season the same texts come again and again.</summary>
/// <param name="names">The shop's colors, which cells are read by.</param>
internal sealed class KnownCells(ColorNames names)
{
    // A season's servings, colors and lengths; a file in which every cell is another fills no memory.
    private const int Most = 4096;

    private readonly ConcurrentDictionary<Cell, object?> _values = [];
    private int _count; // to ask the dictionary locks it

    public ColorNames Names => names;

    public bool TryGet(string column, LengthUnit bareUnit, string text, out object? value) => _values.TryGetValue(new Cell(column, bareUnit, text), out value);

    /// <param name="value">Does not change.</param>
    public void Keep(string column, LengthUnit bareUnit, string text, object? value)
    {
        if (_count < Most && _values.TryAdd(new Cell(column, bareUnit, text), value))
        {
            Interlocked.Increment(ref _count);
        }
    }

    private readonly record struct Cell(string Column, LengthUnit BareUnit, string Text)
    {
        // By its text alone: few texts stand in two columns, and sixteen cells a row are looked up.
        public override int GetHashCode() => Text.GetHashCode(StringComparison.Ordinal);
    }
}
