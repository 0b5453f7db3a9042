using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;

namespace Tagend.Specs;

/// <summary>What a spec begins with, of a row and of its plan where the row does not say it. Null is what is not known.</summary>
/// <param name="Finished">As ordered, or of the bow's length.</param>
internal sealed record KnownRow(PiecePlan? Plan, StrandMaterial? Material, int? Strands, Length? Finished)
{
    private static readonly char[] Digits = [.. "0123456789"];

    /// <summary>Looks a row up.</summary>
    /// <param name="unit">Of what is said of its length.</param>
    /// <param name="problems">Gets what is missing or not in the catalog; not what follows from a cell that could not be read.</param>
    public static KnownRow Of(OrderLine line, ShopCatalog catalog, LengthUnit unit, List<Problem> problems)
    {
        var plan = KnownPlan(line, catalog, problems);
        var material = KnownMaterial(line, plan, catalog, problems);
        var strands = KnownStrands(line, plan, problems);
        return new KnownRow(plan, material, strands, KnownLength(line, plan, unit, problems));
    }

    /// <summary>The plan of the kind; without one, that of the piece's name, with or without a number behind it.</summary>
    /// <returns>Null where there is none, or where kind or name could not be read.</returns>
    public static PiecePlan? PlanOf(OrderLine line, ShopCatalog catalog) => line.Kind is { } kind ? catalog.PlanCalled(kind)
        : IsUnreadKind(line) ? null
        : catalog.PlanCalled(line.Piece) ?? catalog.PlanCalled(line.Piece.TrimEnd(Digits).TrimEnd());

    private static bool IsUnreadKind(OrderLine line) =>
        line.Unread.Contains(OrderColumn.Kind) || (line.Kind is null && line.Unread.Contains(OrderColumn.Piece));

    private static PiecePlan? KnownPlan(OrderLine line, ShopCatalog catalog, List<Problem> problems)
    {
        var plan = PlanOf(line, catalog);
        if (plan is null && !IsUnreadKind(line))
        {
            problems.Add(line.Row.Problem(OrderColumn.Kind, line.Kind is null
                ? SpecWording.NoKind(line.Piece, catalog.Plans.Keys)
                : SpecWording.Unknown("kind", line.Kind, catalog.Plans.Keys)));
        }

        return plan;
    }

    private static StrandMaterial? KnownMaterial(OrderLine line, PiecePlan? plan, ShopCatalog catalog, List<Problem> problems)
    {
        var name = line.Material ?? (line.Unread.Contains(OrderColumn.Material) ? null : plan?.Material);
        if (name is null)
        {
            Need(OrderColumn.Material, line, plan, problems);
            return null;
        }

        var material = catalog.Materials.GetValueOrDefault(name);
        if (material is null)
        {
            problems.Add(line.Row.Problem(OrderColumn.Material, SpecWording.Unknown(OrderColumn.Material, name, catalog.Materials.Keys)));
        }

        return material;
    }

    private static int? KnownStrands(OrderLine line, PiecePlan? plan, List<Problem> problems)
    {
        var strands = line.Strands ?? (line.Unread.Contains(OrderColumn.Strands) ? null : plan?.Strands);
        if (strands is null)
        {
            Need(OrderColumn.Strands, line, plan, problems);
        }

        return strands;
    }

    /// <summary>Says that neither row nor plan has something; not where one of them is unknown.</summary>
    private static void Need(string column, OrderLine line, PiecePlan? plan, List<Problem> problems)
    {
        if (plan is not null && !line.Unread.Contains(column))
        {
            problems.Add(line.Row.Problem(column, SpecWording.Needed(column, plan.Name)));
        }
    }

    private static Length? KnownLength(OrderLine line, PiecePlan? plan, LengthUnit unit, List<Problem> problems)
    {
        if (line.Unread.Contains(OrderColumn.FinishedLength) || line.Unread.Contains(OrderColumn.BowLength))
        {
            return null;
        }

        var column = line.LengthColumn;
        var finished = line.FinishedLength ?? AmoStringLength.Of(line.BowLength!.Value);
        if (plan is not null && (finished < plan.Shortest || finished > plan.Longest))
        {
            problems.Add(line.Row.Problem(
                column, SpecWording.UnusualLength(finished, plan.Name, plan.Shortest, plan.Longest, unit) + UnitMeant(line, plan)));
        }

        return finished;
    }

    /// <summary>Asks whether a bare number was meant in the other unit, where that would be a usual length.</summary>
    private static string UnitMeant(OrderLine line, PiecePlan plan)
    {
        if (line.Row[line.LengthColumn] is not { } text || !LengthReader.IsBare(text))
        {
            return "";
        }

        foreach (var other in new[] { LengthUnit.Inch, LengthUnit.Millimeter })
        {
            LengthReader.TryRead(text, other, out var length);
            length = line.FinishedLength is null ? AmoStringLength.Of(length) : length;
            if (length >= plan.Shortest && length <= plan.Longest)
            {
                return OrderWording.UnitMeant(text, other);
            }
        }

        return "";
    }
}
