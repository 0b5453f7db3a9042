using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;

namespace Tagend.Specs;

/// <summary>A piece that can be built, and the row it was ordered in.</summary>
internal sealed record SetPiece(OrderLine Line, BuildSpec Spec);

/// <summary>What is wrong with the pieces of a set together: each of them could be built alone.</summary>
internal static class SetChecks
{
    /// <summary>Kinds for bows that differ; it needs no more of a piece than its kind.</summary>
    /// <param name="kinds">The rows of one set that name their piece, in the file's order, with the plans of those whose kind is known.</param>
    public static IEnumerable<Problem> Systems(IEnumerable<(OrderLine Line, PiecePlan? Plan)> kinds)
    {
        (OrderLine Line, PiecePlan Plan)? first = null;
        foreach (var (line, plan) in kinds)
        {
            if (plan is not { System: not null })
            {
                continue;
            }

            first ??= (line, plan);
            if (plan.System != first.Value.Plan.System)
            {
                yield return line.Row.Problem(OrderColumn.Kind, SpecWording.OtherSystem(plan, first.Value.Line.Piece, first.Value.Plan));
            }
        }
    }

    /// <param name="pieces">Of one set, in the file's order; of broken rows what could be computed.</param>
    /// <param name="isWhole">No piece of the set is missing among them.</param>
    /// <returns>Each problem with the line of its piece.</returns>
    public static IEnumerable<Problem> Of(
        IReadOnlyList<SetPiece> pieces, bool isWhole, IReadOnlyDictionary<string, PiecePlan> plans)
    {
        foreach (var kind in pieces.GroupBy(p => p.Spec.Kind))
        {
            var plan = plans[kind.Key];
            var first = kind.First();
            var problems = plan.IsPaired ? kind.Skip(1).SelectMany(other => Unequal(first, other)) : [];
            problems = plan.IsMirrored ? problems.Concat(kind.SelectMany(p => UnequalEnds(p, plan))) : problems;
            var missing = plan.Partners.Where(partner =>
                isWhole && pieces.Count(p => p.Spec.Kind == partner) < (partner == plan.Name ? 2 : 1));
            foreach (var problem in problems.Concat(missing.Select(
                partner => first.Line.Row.Problem(OrderColumn.Kind, SpecWording.PartnerMissing(plan.Name, partner), Severity.Warning))))
            {
                yield return problem;
            }
        }
    }

    private static IEnumerable<Problem> Unequal(SetPiece first, SetPiece other)
    {
        var (a, b, unit) = (first.Spec, other.Spec, other.Spec.Unit);
        if (a.FinishedLength != b.FinishedLength)
        {
            yield return Refusal(
                other.Line.LengthColumn,
                $"{LengthWriter.Mark(b.FinishedLength, unit)} long",
                $"{LengthWriter.Mark(a.FinishedLength, unit)}");
        }

        if (a.Bundle.Strands != b.Bundle.Strands)
        {
            yield return Refusal(OrderColumn.Strands, $"of {b.Bundle.Strands} strands", $"of {a.Bundle.Strands}");
        }

        if (a.Bundle.Material != b.Bundle.Material)
        {
            yield return Refusal(OrderColumn.Material, $"of {b.Bundle.Material}", $"of {a.Bundle.Material}");
        }

        Problem Refusal(string column, string ofOther, string ofFirst) =>
            other.Line.Row.Problem(column, SpecWording.PairDiffers(b, ofOther, a, ofFirst));
    }

    /// <summary>Servings that reach the ends: as long from A as from B, or the ends close at different places.</summary>
    private static IEnumerable<Problem> UnequalEnds(SetPiece piece, PiecePlan plan)
    {
        var spec = piece.Spec;
        var (fromA, fromB) = (EndOf(ServingRole.EndA), EndOf(ServingRole.EndB));
        if (Length.Abs(fromA - fromB) > plan.Tolerance && !piece.Line.Unread.Contains(OrderColumn.Servings))
        {
            yield return piece.Line.Row.Problem(OrderColumn.Servings, SpecWording.EndsDiffer(plan.Name, fromA, fromB, spec.Unit));
        }

        Length EndOf(ServingRole role) => spec.Servings.FirstOrDefault(s => s.Role == role)?.Length ?? Length.Zero;
    }
}
