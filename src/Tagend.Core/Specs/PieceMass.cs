using Tagend.Catalog;
using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>What a piece weighs.</summary>
public static class PieceMass
{
    /// <summary>A third of the string's mass counts as arrow mass: Hickman and Klopsteg, in Archery: The Technical Side, 1947.</summary>
    public static Mass ArrowShare(Mass piece) => piece / 3;

    /// <summary>Strands and all thread that is wound.</summary>
    /// <returns>Null where the linear density of one of them is not given.</returns>
    public static Mass? Of(BuildSpec spec, ShopCatalog catalog)
    {
        if (catalog.Materials[spec.Bundle.Material].LinearDensity is not { } tex)
        {
            return null;
        }

        Mass? sum = Of(spec.LaidUpLength, spec.Bundle.Strands * tex);
        foreach (var use in ThreadUse.Of(spec))
        {
            sum = catalog.Threads[use.Thread].LinearDensity is { } ofThread ? sum + Of(use.Wound, ofThread) : null;
        }

        return sum;
    }

    /// <summary>The mass of strands or thread, to the milligram.</summary>
    /// <param name="length">Of all of it.</param>
    /// <param name="linearDensity">Of one strand or thread, tex (g/km).</param>
    public static Mass Of(Length length, double linearDensity) => Mass.FromGrams(length.Millimeters / 1_000_000 * linearDensity);
}
