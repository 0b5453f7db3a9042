using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>The strands side by side, untwisted, under working load.</summary>
/// <param name="Material">Catalog name of the strand material.</param>
/// <param name="Strands">Total, even: two a loop.</param>
/// <param name="Diameter">Twice the helix model's radius R = (d / 2)·√(n / φ).</param>
public sealed record Bundle(string Material, int Strands, Length Diameter)
{
    /// <summary>Diameter of half the strands, such as a yoke's leg or one leg of an end loop.</summary>
    public Length HalfDiameter => Diameter / Math.Sqrt(2);

    /// <summary>Diameter of a bundle of round strands.</summary>
    /// <param name="strandDiameter">Of one strand.</param>
    /// <param name="strands">Total, 1 or more.</param>
    /// <param name="packing">Share of the bundle's section that strands fill, above 0 up to the hexagonal limit.</param>
    /// <remarks>The section of n strands, n·πd²/4, is φ times the bundle's: geometry.</remarks>
    public static Length DiameterOf(Length strandDiameter, int strands, double packing) =>
        strandDiameter * Math.Sqrt(strands / packing);
}
