using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Problems;

namespace Tagend.Specs;

/// <summary>All wording about specs that cannot or should not be built, so that tests can hold it.</summary>
internal static class SpecWording
{
    /// <param name="what">The word for it: kind, material, thread as …</param>
    public static string Unknown(string what, string name, IEnumerable<string> known)
    {
        var meant = NearestName.To(name, known) is { } near ? $"did you mean {near}? There are" : "there are";
        return $"there is no such {what} in the templates; {meant} {string.Join(", ", known.Order(StringComparer.Ordinal))}";
    }

    /// <param name="kinds">All that there are; those with a word of the piece's name are offered.</param>
    public static string NoKind(string piece, IEnumerable<string> kinds)
    {
        var words = piece.Split(' ', '-');
        var all = kinds.Order(StringComparer.Ordinal).ToList();
        var near = all.FindAll(k => k.Split('-').Intersect(words).Any());
        return $"the row names no kind, and no plan is called {piece}: expected a kind, such as {string.Join(", ", near.Count > 0 ? near : all)}, or the name {piece} under also in a plan";
    }

    public static string OtherSystem(PiecePlan plan, string first, PiecePlan ofFirst) =>
        $"{plan.Name} is for a {NameOf(plan.System)}, and the set's piece {first} ({ofFirst.Name}) for a {NameOf(ofFirst.System)}, so that no safety sheet is right for both: correct the kind, or give each bow an order of its own";

    private static string NameOf(BowSystem? system) => system switch
    {
        BowSystem.Recurve => "recurve or longbow",
        BowSystem.Crossbow => "crossbow",
        _ => "compound",
    };

    public static string Needed(string column, string kind) =>
        $"is needed here: the kind {kind} has no default {column}";

    public static string UnusualLength(Length length, string kind, Length shortest, Length longest, LengthUnit unit) =>
        $"{Write(length, unit)} is outside the usual lengths of {kind}, {Write(shortest, unit)} to {Write(longest, unit)}: "
        + "check the order, or the range in the plan";

    public static string BeyondJig(Length setting, Length shortest, Length longest, LengthUnit unit) =>
        $"its posts would be set to {LengthWriter.Exact(setting, unit)} outside to outside; "
        + $"the jig reaches {Write(shortest, unit)} to {Write(longest, unit)}";

    public static string ColorsDoNotAddUp(int sum, int strands) =>
        $"the colors add up to {sum} strands, not {strands}";

    public static string ColorsDoNotShare(int colors, int strands) =>
        $"{strands} strands cannot be shared equally among {colors} colors: give each its number, such as black:12";

    public static string OutsidePiece(string what, Length place, Length finished, LengthUnit unit) =>
        $"{what} at {Write(place, unit)} from end A is not on the piece, which ends at {Write(finished, unit)}";

    public static string EmptyServing(string serving) => $"the serving {serving} starts where it ends, or behind it";

    public static string Overlap(Serving first, Serving second, LengthUnit unit) =>
        $"the serving {Span(first, unit)} overlaps the serving {Span(second, unit)}";

    public static string SeparatorUnderServing(Separator separator, Serving serving, LengthUnit unit) =>
        $"the {separator.Name} at {Write(separator.Position, unit)} is under the serving {Span(serving, unit)}";

    public static string NockPointOutside(Length place, string center, LengthUnit unit) =>
        $"the nock point at {Write(place, unit)} is outside the center serving, {center}";

    public static string NoCenterServing(Length place, LengthUnit unit) =>
        $"the nock point at {Write(place, unit)} has no center serving: give one in the column center_serving";

    public static string PeepForgotten(string kind) =>
        $"a {kind} has a peep, but no place for it is given: it cannot be put in once the piece is served";

    public static string CenterServingForgotten(string kind) =>
        $"a {kind} has a center serving, but none is given: give one in the column center_serving, or the arrow has nothing to be nocked on";

    public static string TailsTooLong(Length tail, Serving serving, LengthUnit unit) =>
        $"the tails of {Write(tail, unit)} are longer than the serving {Span(serving, unit)} that buries them: "
        + "make the serving longer, or give the plan a shorter tail";

    public static string PairDiffers(BuildSpec other, string ofOther, BuildSpec first, string ofFirst) =>
        $"{other.Piece} is {ofOther} and {first.Piece} is {ofFirst}: pieces of the kind {first.Kind} are equal in a set";

    public static string EndsDiffer(string kind, Length fromA, Length fromB, LengthUnit unit) =>
        $"the serving at A is {Write(fromA, unit)} long and the one at B {Write(fromB, unit)}: both ends of a {kind} are equal";

    public static string PartnerMissing(string kind, string partner) => kind == partner
        ? $"a set with a {kind} usually has two; this one has one"
        : $"a set with a {kind} usually has a {partner} too; this one has none";

    public static string BelowFloor(Strength strength, int strands, string material) =>
        FormattableString.Invariant($"{strands} strands of {material} carry about {strength.Breaking.Pounds:0} lbf, below four times ")
        + FormattableString.Invariant($"the draw weight, {strength.Floor!.Value.Pounds:0} lbf: more strands or a stronger material");

    public static string StretchedTooHard(Strength strength, int strands, StrandMaterial material) =>
        FormattableString.Invariant($"the stretch load of {material.StretchLoad.Pounds:0} lbf is {material.StretchLoad / strength.Breaking:0%} of what {strands} ")
        + FormattableString.Invariant($"strands of {material.Name} carry, over the limit of {material.StretchLimit:0%}: ")
        + "more strands, or a lower stretch_load in materials.toml";

    public static string NockMisfit(NockFit fit, ServingThread best, LengthUnit unit)
    {
        var over = fit.Clearance < Length.Zero ? "tighter than" : "looser than";
        var advice = best.Name == fit.Thread ? "no thread on hand is nearer" : $"{best.Name} is the nearest thread on hand";
        return $"the center serving of {fit.Thread} is {LengthWriter.Fine(fit.Diameter, unit)} thick, "
            + $"{LengthWriter.Fine(Length.Abs(fit.Clearance), unit)} {over} the groove of {LengthWriter.Fine(fit.Groove, unit)}: {advice}";
    }

    public static string Span(Serving serving, LengthUnit unit) =>
        $"{Write(serving.From, unit)} to {Write(serving.To, unit)}";

    private static string Write(Length length, LengthUnit unit) => LengthWriter.Mark(length, unit);
}
