using Tagend.Measures;

namespace Tagend.Orders;

/// <summary>Reads which units an order's customer is given: <c>in</c> or <c>mm</c>.</summary>
internal static class UnitsReader
{
    /// <summary>Reads a unit's symbol, in capitals or not.</summary>
    public static bool TryRead(string text, out LengthUnit unit)
    {
        unit = text.Equals("mm", StringComparison.OrdinalIgnoreCase) ? LengthUnit.Millimeter : LengthUnit.Inch;
        return text.Equals(LengthWriter.Symbol(unit), StringComparison.OrdinalIgnoreCase);
    }
}
