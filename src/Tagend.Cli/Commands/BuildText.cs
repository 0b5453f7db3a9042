using System.Globalization;
using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Workshop.Books;

namespace Tagend.Commands;

/// <summary>A build that was logged, in a line.</summary>
internal static class BuildText
{
    /// <param name="unit">Of its lengths.</param>
    public static string Of(LoggedPiece logged, LengthUnit unit)
    {
        var (spec, built) = (logged.Spec, logged.Build.Built);
        var off = built.Measured - spec.FinishedLength;
        var within = Length.Abs(off) <= spec.Tolerance ? "within" : "outside";
        var by = off == Length.Zero ? "as ordered"
            : $"{LengthWriter.Exact(Length.Abs(off), unit)} {(off > Length.Zero ? "longer" : "shorter")} than ordered";
        return $"build {logged.Build.Number} logged: {spec.Order}/{spec.Piece}, revision {spec.Revision}: {LengthWriter.Mark(built.Measured, unit)}, {by} "
            + $"({within} ± {LengthWriter.Mark(spec.Tolerance, unit)}); posts {LengthWriter.Setting(built.Posts, unit)}, "
            + FormattableString.Invariant($"{built.Turns:0.##} turns, {built.Load.Pounds:0.#} lbf, {built.Minutes:0.##} min")
            + (built.Who.Length == 0 ? "" : $", {built.Who}") + (built.Lots.Count == 0 ? "" : $"; lots {string.Join(", ", built.Lots)}")
            + string.Concat(logged.Spools.Select(s => $"\nspool {s.Spool.Number}, {SpoolShelf.TextOf(s.Spool)}: {SpoolWording.Left(s, unit)}"))
            + (TurnAdvice.Of(spec, built) is { } advice ? "\n" + Of(advice) : "");
    }

    /// <summary>That a build of a piece stands already, so that another one may be the same.</summary>
    /// <param name="unit">Of its lengths.</param>
    public static string Before(LoggedPiece before, LengthUnit unit)
    {
        var (spec, build) = (before.Spec, before.Build);
        return $"{spec.Order}/{spec.Piece}, revision {spec.Revision}, is logged as built already: build {build.Number} of "
            + $"{build.LoggedAt.ToLocalTime().ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)}, {LengthWriter.Mark(build.Built.Measured, unit)}"
            + (build.Built.Who.Length > 0 ? $", {build.Built.Who}" : "");
    }

    private static string Of(TurnAdvice advice)
    {
        var (verb, turns) = (advice.Turns > 0 ? "put in" : "take out", Math.Abs(advice.Turns));
        return advice.IsTwistEnough
            ? FormattableString.Invariant($"to correct it: {verb} {turns:0.#} {(turns is 0.5 or 1 ? "turn" : "turns")}, then measure again")
            : turns == 0 ? "turns cannot correct it: lay it up again"
            : FormattableString.Invariant($"turns cannot correct it: to {verb} {turns:0.#} would change the planned turns by more than a fifth; lay it up again");
    }
}
