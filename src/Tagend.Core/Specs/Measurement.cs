using Tagend.Catalog;
using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>What was measured of a piece when it was built.</summary>
/// <param name="Length">Over measuring pins, outside to outside, after stretching.</param>
/// <param name="Turns">The turns as they were put in, halves too; 0 or more.</param>
/// <param name="Load">The load on the stretcher.</param>
/// <param name="Minutes">The minutes on the stretcher, 0 or more.</param>
/// <param name="Lots">The lots of material and thread, in capitals; none where they were not noted.</param>
/// <param name="Date">The day it was logged.</param>
/// <param name="Who">Initials or name of the builder; may be empty.</param>
public sealed record Measurement(Length Length, double Turns, Force Load, double Minutes, ValueList<string> Lots, DateOnly Date, string Who)
{
    /// <summary>Measured less ordered length.</summary>
    public Length Off(BuildSpec spec) => Length - spec.FinishedLength;

    /// <summary>Whether the length is the ordered one within its tolerance, limits included.</summary>
    public bool IsWithin(BuildSpec spec) => Measures.Length.Abs(Off(spec)) <= spec.Tolerance;
}

/// <summary>Two pieces that work as a pair, as they were measured.</summary>
/// <param name="Difference">Of their measured lengths, 0 or more.</param>
/// <param name="Tolerance">Of the one that is allowed less.</param>
public sealed record MeasuredPair(string First, string Second, Length Difference, Length Tolerance)
{
    /// <summary>Whether they differ by no more than one of them may be off.</summary>
    public bool IsWithin => Difference <= Tolerance;

    /// <summary>Each two pieces of a set of one kind that works in pairs and of one ordered length, where both were measured.</summary>
    /// <param name="plans">By the name of the kind.</param>
    public static IEnumerable<MeasuredPair> Of(BuildSet set, IReadOnlyDictionary<string, PiecePlan> plans)
    {
        List<Build> paired = [.. set.Builds.Where(b => b.Measured is not null && plans.GetValueOrDefault(b.Spec.Kind)?.IsPaired == true)];
        return paired.SelectMany((first, i) => paired.Skip(i + 1)
            .Where(second => (second.Spec.Kind, second.Spec.FinishedLength) == (first.Spec.Kind, first.Spec.FinishedLength))
            .Select(second => new MeasuredPair(
                first.Spec.Piece,
                second.Spec.Piece,
                Length.Abs(first.Measured!.Length - second.Measured!.Length),
                first.Spec.Tolerance < second.Spec.Tolerance ? first.Spec.Tolerance : second.Spec.Tolerance)));
    }
}
