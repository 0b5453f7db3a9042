using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>What the piece should carry, against what it must.</summary>
/// <param name="Breaking">Strands × strand strength × termination efficiency.</param>
/// <param name="Floor">Four times the draw weight; null where no draw weight is ordered, and for cables.</param>
public sealed record Strength(Force Breaking, Force? Floor)
{
    /// <summary>A string carries at least four times the draw weight: The Traditional Bowyer's Bible, of hand bows' strings.</summary>
    public const double SafetyFactor = 4;

    /// <summary>
    /// Share of the strands' summed strength that a string carried: 17.7 strands of 14.4 lb broke at 168.4 lb
    /// (Archery: The Technical Side, 1947: Nagler's tests, Ford's averages).
    /// </summary>
    public const double PublishedEfficiency = 0.66;

    // Forces are whole micronewtons: what is equal may differ by a few of them.
    private const double Slack = 1e-6;

    /// <summary>Breaking force over the floor; null without a floor.</summary>
    public double? Ratio => Floor is { } floor ? Breaking / floor : null;

    /// <summary>Whether it carries less than the floor; false without a floor.</summary>
    public bool IsBelowFloor => Ratio < 1 - Slack;

    /// <summary>The strength of a bundle of strands.</summary>
    /// <param name="strands">The total.</param>
    /// <param name="strandStrength">Breaking force of one strand in straight pull.</param>
    /// <param name="terminationEfficiency">Share of the strands' summed strength that the finished piece carries.</param>
    /// <param name="drawWeight">Null where there is none, and for pieces the rule is not meant for.</param>
    public static Strength Of(int strands, Force strandStrength, double terminationEfficiency, Force? drawWeight) =>
        new(strandStrength * (strands * terminationEfficiency), drawWeight * SafetyFactor);
}
