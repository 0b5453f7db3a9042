namespace Tagend.Measures;

/// <summary>The unit a shop works in: how a bare number is read and how lengths are printed.</summary>
public enum LengthUnit
{
    Inch,
    Millimeter,
}
