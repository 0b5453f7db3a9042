using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>String length of a recurve or longbow that is ordered by the bow's length.</summary>
public static class AmoStringLength
{
    /// <summary>A master string marked with a bow's length is 3 in shorter: AMO Standards FP-3, 2000 (66 measures 63).</summary>
    public static readonly Length Allowance = Length.FromInches(3);

    /// <summary>The finished length of a string for a bow of this nominal length.</summary>
    public static Length Of(Length bowLength) => bowLength - Allowance;
}
