namespace Tagend.Measures;

/// <summary>The unit a shop works in: how a bare number is read and how lengths are printed.</summary>
public enum LengthUnit
{
    /// <summary>Inches, with pounds-force for forces; fractions on a tape go by sixteenths.</summary>
    Inch,

    /// <summary>Millimeters, with newtons for forces.</summary>
    Millimeter,
}
