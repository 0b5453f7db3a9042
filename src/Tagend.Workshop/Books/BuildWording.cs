using System.Globalization;
using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Specs;

namespace Tagend.Workshop.Books;

/// <summary>Builds in sentences.</summary>
public static class BuildWording
{
    /// <summary>A build that was logged, in some lines.</summary>
    /// <param name="unit">The unit of its lengths.</param>
    public static string Logged(LoggedPiece logged, LengthUnit unit)
    {
        var (spec, built) = (logged.Spec, logged.Build.Built);
        return $"build {logged.Build.Number} logged: {spec.Order}/{spec.Piece}, revision {spec.Revision}: {Measured(spec, built, unit)}; "
            + $"posts {LengthWriter.Setting(built.Posts, unit)}, "
            + FormattableString.Invariant($"{built.Turns:0.##} turns, {built.Load.Pounds:0.#} lbf, {built.Minutes:0.##} min")
            + (built.Who.Length == 0 ? "" : $", {built.Who}") + (built.Lots.Count == 0 ? "" : $"; lots {string.Join(", ", built.Lots)}")
            + string.Concat(logged.Spools.Select(s => $"\nspool {s.Spool.Number}, {SpoolShelf.TextOf(s.Spool)}: {SpoolWording.Left(s, unit)}"))
            + (TurnAdvice.Of(spec, built) is { } advice ? "\n" + Advice(advice) : "");
    }

    /// <summary>What was measured, how far off the order it is, and whether that is within the tolerance.</summary>
    /// <param name="unit">The unit of its lengths.</param>
    public static string Measured(BuildSpec spec, AsBuilt built, LengthUnit unit)
    {
        var off = built.Measured - spec.FinishedLength;
        var within = IsWithin(spec, built) ? "within" : "outside";
        var by = off == Length.Zero ? "as ordered"
            : $"{LengthWriter.Exact(Length.Abs(off), unit)} {(off > Length.Zero ? "longer" : "shorter")} than ordered";
        return $"{LengthWriter.Mark(built.Measured, unit)}, {by} ({within} ± {LengthWriter.Mark(spec.Tolerance, unit)})";
    }

    /// <summary>Whether what was measured is within the tolerance.</summary>
    public static bool IsWithin(BuildSpec spec, AsBuilt built) => Length.Abs(built.Measured - spec.FinishedLength) <= spec.Tolerance;

    /// <summary>That a build of a piece stands already, so that another one may be the same.</summary>
    /// <param name="unit">The unit of its lengths.</param>
    public static string Before(LoggedPiece before, LengthUnit unit)
    {
        var (spec, build) = (before.Spec, before.Build);
        return $"{spec.Order}/{spec.Piece}, revision {spec.Revision}, is logged as built already: build {build.Number} of "
            + $"{build.LoggedAt.ToLocalTime().ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)}, {LengthWriter.Mark(build.Built.Measured, unit)}"
            + (build.Built.Who.Length > 0 ? $", {build.Built.Who}" : "");
    }

    /// <summary>How many turns bring a piece to its length, or that none do.</summary>
    public static string Advice(TurnAdvice advice)
    {
        var (verb, turns) = (advice.Turns > 0 ? "put in" : "take out", Math.Abs(advice.Turns));
        return advice.IsTwistEnough
            ? FormattableString.Invariant($"to correct it: {verb} {turns:0.#} {(turns is 0.5 or 1 ? "turn" : "turns")}, then measure again")
            : turns == 0 ? "turns cannot correct it: lay it up again"
            : FormattableString.Invariant($"turns cannot correct it: to {verb} {turns:0.#} would change the planned turns by more than a fifth; lay it up again");
    }
}
