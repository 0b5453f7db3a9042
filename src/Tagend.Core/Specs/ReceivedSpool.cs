using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>A spool of strand material or serving thread, as it came into the shop and as its tag has it.</summary>
/// <param name="Number">In the shop's job book, from 1; written on the spool.</param>
/// <param name="Name">Of the strand material or the serving thread in the catalog, in lower case.</param>
/// <param name="Color">In lower case; empty where it has none that matters.</param>
/// <param name="Lot">The maker's lot number, in capitals.</param>
/// <param name="Length">What was on it when it came, to whole millimeters.</param>
/// <param name="Received">The day it came.</param>
public sealed record ReceivedSpool(long Number, StockKind Kind, string Name, string Color, string Lot, Length Length, DateOnly Received)
{
    /// <summary>Whether a need can be taken from it: of its material or thread, and of its color where the need names one.</summary>
    public bool Serves(StockNeed need) => Kind == need.Kind && Name == need.Name && (need.Color.Length == 0 || need.Color == Color);
}
