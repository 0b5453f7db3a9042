using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>What a piece weighs.</summary>
public static class PieceMass
{
    /// <summary>A third of the string's mass counts as arrow mass: Hickman and Klopsteg, in Archery: The Technical Side, 1947.</summary>
    public static Mass ArrowShare(Mass piece) => piece / 3;

    /// <param name="linearDensity">Of one strand or thread, tex (g/km).</param>
    public static Mass Of(Length length, double linearDensity) => Mass.FromGrams(length.Millimeters / 1_000_000 * linearDensity);
}
