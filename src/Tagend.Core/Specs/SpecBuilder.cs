using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;

namespace Tagend.Specs;

/// <summary>Computes the spec of an ordered piece: the only place where orders and catalog meet.</summary>
/// <param name="catalog">The shop's templates, with what its builds teach.</param>
/// <param name="unit">The unit the pages are printed in.</param>
/// <param name="date">The date of issue.</param>
/// <param name="issues">What was printed before; null where nothing is known of it.</param>
public sealed class SpecBuilder(ShopCatalog catalog, LengthUnit unit, DateOnly date, IIssues? issues = null)
{
    private static readonly char[] Digits = [.. "0123456789"];

    /// <summary>The plans it takes defaults from, by name.</summary>
    public IReadOnlyDictionary<string, PiecePlan> Plans => catalog.Plans;

    /// <summary>The day an order of the shop is due; null where its text is no date.</summary>
    public DateOnly? DueOf(string text) => DueDate.Read(text, catalog.Shop.Dates, date);

    /// <summary>The two days that the text of a due date may be; null where it is no date at all.</summary>
    internal (DateOnly MonthFirst, DateOnly DayFirst)? EitherDue(string text) => DueDate.Either(text, date);

    /// <summary>The newest revision of a piece that is printed as an older one; null for all others.</summary>
    internal int? SupersededBy(OrderLine line) => issues?.SupersededBy(line.Order, line.Piece);

    /// <summary>Computes a piece.</summary>
    /// <param name="line">Its row.</param>
    /// <param name="problems">Every problem of it is added, warnings too.</param>
    /// <returns>Null where a problem refuses the piece.</returns>
    public BuildSpec? Build(OrderLine line, ICollection<Problem> problems)
    {
        var found = new List<Problem>();
        var spec = Compute(line, found);
        if (spec is not null && issues is not null && !found.Exists(p => p.Severity == Severity.Refusal))
        {
            spec = issues.Issue(line, spec, found);
        }

        foreach (var problem in found)
        {
            problems.Add(problem);
        }

        return found.Exists(p => p.Severity == Severity.Refusal) ? null : spec;
    }

    private BuildSpec? Compute(OrderLine line, List<Problem> problems)
    {
        if (PlanOf(line, problems) is not { } plan)
        {
            return null;
        }

        var materialName = line.Material ?? plan.Material;
        var strands = line.Strands ?? plan.Strands;
        var material = materialName is null ? null : catalog.Materials.GetValueOrDefault(materialName);
        if (material is null)
        {
            problems.Add(line.Row.Problem(OrderColumn.Material, materialName is null
                ? SpecWording.Needed(OrderColumn.Material, plan.Name)
                : SpecWording.Unknown(OrderColumn.Material, materialName, catalog.Materials.Keys)));
        }

        if (strands is null)
        {
            problems.Add(line.Row.Problem(OrderColumn.Strands, SpecWording.Needed(OrderColumn.Strands, plan.Name)));
        }

        var finished = FinishedLength(line, plan, problems);
        if (material is null || strands is null)
        {
            return null;
        }

        var shop = catalog.Shop;
        var bundle = new Bundle(
            material.Name,
            strands.Value,
            Bundle.DiameterOf(material.Diameter, strands.Value, material.Packing ?? StrandMaterial.AssumedPacking));
        var rate = line.TurnsPerInch ?? catalog.TurnsPerInch(plan, material);
        var turns = Twist.TurnsFor(rate, finished);
        var fit = catalog.FitOf(bundle.Material, bundle.Strands, turns, finished, plan.Tolerance);
        var takeUp = new TakeUp(
            fit is null ? shop.TakeUpModel : TakeUpModel.Fitted,
            catalog.RuleTakeUpPerTurn(plan, material) * turns,
            Helix.TakeUp(bundle.Diameter, turns, finished),
            fit?.For(turns, finished));
        var settles = fit?.Settle ?? material.Settle;
        var settle = finished * (settles / (1 + settles));
        var yoke = plan.Split is { } split ? new Yoke(split, Twist.TurnsFor(turns / finished.Inches, split)) : null;
        var schedule = new PlaceSchedule(line, plan, catalog, unit, finished, bundle, problems);
        var loops = new EndLoops(plan.EndLoopA, plan.EndLoopB, LoopServing(plan, schedule.Servings));
        var closing = loops.AtA(shop.PinDiameter, bundle, yoke).Closing + loops.AtB(shop.PinDiameter, bundle).Closing;
        var laidUp = takeUp.LaidUp(finished, settle);
        var spec = new BuildSpec
        {
            Order = line.Order,
            Piece = line.Piece,
            Kind = plan.Name,
            Revision = line.Revision ?? 1,
            Date = date,
            Unit = unit,
            FinishedLength = finished,
            Tolerance = plan.Tolerance,
            DrawWeight = line.DrawWeight,
            Bundle = bundle,
            Twist = new Twist(turns, shop.TwistHand, shop.ServingHand, takeUp),
            Settle = settle,
            Posts = PostSetting.For(
                laidUp, closing, shop.Jig.PostDiameter, shop.PinDiameter, shop.TapeStep(unit)),
            Layup = Layup.Of(Colors(line, strands.Value, problems), plan.Tail ?? shop.Jig.Tail),
            Separators = schedule.Separators,
            Servings = schedule.Servings,
            Marks = schedule.Marks,
            Strength = Strength.Of(strands.Value, material.Strength, shop.TerminationEfficiency, plan.HasStrengthFloor ? line.DrawWeight : null),
            Stretch = new Stretch(
                material.StretchLoad,
                material.StretchMinutes,
                Stretch.ReadingUnder(
                    material.StretchLoad, finished, strands.Value, material.Modulus, material.LinearDensity, material.Density)),
            NockGroove = line.NockGroove,
            Mass = null,
            EndLoops = loops,
            Yoke = yoke,
        };
        Judge(spec, material, plan, line, problems);
        return spec with { Mass = PieceMass.Of(spec, catalog) };
    }

    /// <summary>In the color of the end servings, where one of them is of the same thread.</summary>
    private LoopServing? LoopServing(PiecePlan plan, ValueList<Serving> servings) => plan.LoopThread is { } thread
        ? new LoopServing(
            thread,
            catalog.Threads[thread].Diameter,
            servings.FirstOrDefault(s => s.Role is ServingRole.EndA or ServingRole.EndB && s.Thread == thread)?.Color ?? plan.ThreadColor)
        : null;

    /// <summary>The plan of the kind; without one, that of the piece's name, with or without a number behind it.</summary>
    private PiecePlan? PlanOf(OrderLine line, List<Problem> problems)
    {
        var plan = line.Kind is { } kind
            ? catalog.PlanCalled(kind)
            : catalog.PlanCalled(line.Piece) ?? catalog.PlanCalled(line.Piece.TrimEnd(Digits).TrimEnd());
        if (plan is null)
        {
            problems.Add(line.Row.Problem(OrderColumn.Kind, line.Kind is null
                ? SpecWording.NoKind(line.Piece, catalog.Plans.Keys)
                : SpecWording.Unknown("kind", line.Kind, catalog.Plans.Keys)));
        }

        return plan;
    }

    private Length FinishedLength(OrderLine line, PiecePlan plan, List<Problem> problems)
    {
        var column = line.LengthColumn;
        var finished = line.FinishedLength ?? AmoStringLength.Of(line.BowLength!.Value);
        if (finished < plan.Shortest || finished > plan.Longest)
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

    private static List<(string Color, int Strands)> Colors(OrderLine line, int strands, List<Problem> problems)
    {
        var ordered = line.Colors ?? [new OrderedColor("any", strands)];
        var colors = new List<(string Color, int Strands)>();
        foreach (var color in ordered)
        {
            colors.Add((color.Name, color.Strands ?? strands / ordered.Count));
        }

        if (ordered[0].Strands is null && strands % ordered.Count != 0)
        {
            problems.Add(line.Row.Problem(OrderColumn.Colors, SpecWording.ColorsDoNotShare(ordered.Count, strands)));
        }
        else if (colors.Sum(c => c.Strands) is var sum && sum != strands)
        {
            problems.Add(line.Row.Problem(OrderColumn.Colors, SpecWording.ColorsDoNotAddUp(sum, strands)));
        }

        return colors;
    }

    private void Judge(BuildSpec spec, StrandMaterial material, PiecePlan plan, OrderLine line, List<Problem> problems)
    {
        if (line.Row[OrderColumn.Language] is not null && !catalog.Languages.Contains(line.Slip.Language))
        {
            problems.Add(line.Row.Problem(OrderColumn.Language, SpecWording.Unknown("language", line.Slip.Language, catalog.Languages)));
        }

        var jig = catalog.Shop.Jig;
        if (spec.Posts.Outside < jig.Shortest || spec.Posts.Outside > jig.Longest)
        {
            problems.Add(line.Row.Problem(
                line.LengthColumn,
                SpecWording.BeyondJig(spec.Posts.Outside, jig.Shortest, jig.Longest, unit)));
        }

        if (spec.StretchShare > material.StretchLimit)
        {
            problems.Add(line.Row.Problem(OrderColumn.Strands, SpecWording.StretchedTooHard(spec, material)));
        }

        if (plan.NeedsCenterServing && !spec.Servings.Any(s => s.Role == ServingRole.Center))
        {
            problems.Add(line.Row.Problem(OrderColumn.CenterServing, SpecWording.CenterServingForgotten(plan.Name), Severity.Warning));
        }

        if (spec.Servings.FirstOrDefault(s => s.Role is ServingRole.EndA or ServingRole.EndB && s.Length < spec.Layup.Tail) is { } shorter)
        {
            problems.Add(line.Row.Problem(OrderColumn.Servings, SpecWording.TailsTooLong(spec.Layup.Tail, shorter, unit), Severity.Warning));
        }

        if (spec.NockFit is { } fit
            && (fit.Clearance < Length.Zero || fit.Clearance - catalog.Shop.WantedNockClearance > catalog.Shop.GreatestNockMisfit))
        {
            var best = NockFit.Best(fit.Groove, catalog.Shop.WantedNockClearance, spec.Bundle.Diameter, catalog.Threads.Values);
            problems.Add(line.Row.Problem(OrderColumn.NockGroove, SpecWording.NockMisfit(fit, best, unit), Severity.Warning));
        }

        if (spec.Strength.IsBelowFloor)
        {
            problems.Add(line.Row.Problem(
                OrderColumn.DrawWeight, SpecWording.BelowFloor(spec.Strength, spec.Bundle.Strands, spec.Bundle.Material)));
        }
    }
}
