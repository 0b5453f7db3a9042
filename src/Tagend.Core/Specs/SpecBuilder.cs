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
        var isSound = !HasRefusal(found);
        issues?.CheckOrder(line, found);
        if (spec is not null && issues is not null && isSound)
        {
            spec = issues.Issue(line, spec, found);
        }

        found.ForEach(problems.Add);
        return HasRefusal(found) ? null : spec;
    }

    /// <summary>Computes what can be computed of a row that is broken, for what else is wrong with it: nothing that follows from what is told already.</summary>
    /// <param name="line">The row as far as it could be read.</param>
    /// <param name="problems">Every further problem of it is added, warnings too.</param>
    /// <returns>Null where more is wrong, or too little is known; never to be built from.</returns>
    internal BuildSpec? Examine(OrderLine line, List<Problem> problems)
    {
        var found = new List<Problem>();
        var spec = Compute(line, found);
        if (line.Order.Length > 0)
        {
            issues?.CheckOrder(line, found);
        }

        problems.AddRange(found);
        return HasRefusal(found) ? null : spec;
    }

    /// <summary>The plan of a row's kind, or of its name; null where there is none, or where they could not be read.</summary>
    internal PiecePlan? PlanOf(OrderLine line) => KnownRow.PlanOf(line, catalog);

    private static bool HasRefusal(List<Problem> problems) => problems.Exists(p => p.Severity == Severity.Refusal);

    /// <returns>Null, with problems added for what can be told, where not all is known that a spec needs.</returns>
    private BuildSpec? Compute(OrderLine line, List<Problem> problems)
    {
        var (plan, material, strands, known) = KnownRow.Of(line, catalog, unit, problems);
        var shop = catalog.Shop;
        var bundle = material is null || strands is null ? null : new Bundle(
            material.Name,
            strands.Value,
            Bundle.DiameterOf(material.Diameter, strands.Value, material.Packing ?? StrandMaterial.AssumedPacking));
        var schedule = new PlaceSchedule(line, plan, catalog, unit, known, bundle, problems);
        var colors = strands is null ? null : Colors(line, strands.Value, problems);
        CheckLanguage(line, problems);
        var strength = material is null || bundle is null ? null : Strength.Of(
            bundle.Strands, material.Strength, shop.TerminationEfficiency, plan is { HasStrengthFloor: true } ? line.DrawWeight : null);
        if (strength is not null)
        {
            CheckStrength(strength, material!, bundle!.Strands, line, problems);
        }

        if (plan is null || material is null || bundle is null || strength is null || known is not { } finished || colors is null || line.Unread.Contains(OrderColumn.Twists))
        {
            return null;
        }

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
            Layup = Layup.Of(colors, plan.Tail ?? shop.Jig.Tail),
            Separators = schedule.Separators,
            Servings = schedule.Servings,
            Marks = schedule.Marks,
            Strength = strength,
            Stretch = new Stretch(
                material.StretchLoad,
                material.StretchMinutes,
                Stretch.ReadingUnder(
                    material.StretchLoad, finished, bundle.Strands, material.Modulus, material.LinearDensity, material.Density)),
            NockGroove = line.NockGroove,
            Mass = null,
            EndLoops = loops,
            Yoke = yoke,
        };
        Judge(spec, line, problems);
        return PieceMass.Of(spec, catalog) is { } mass ? spec with { Mass = mass } : spec;
    }

    /// <summary>In the color of the end servings, where one of them is of the same thread.</summary>
    private LoopServing? LoopServing(PiecePlan plan, ValueList<Serving> servings) => plan.LoopThread is { } thread
        ? new LoopServing(
            thread,
            catalog.Threads[thread].Diameter,
            servings.FirstOrDefault(s => s.Role is ServingRole.EndA or ServingRole.EndB && s.Thread == thread)?.Color ?? plan.ThreadColor)
        : null;

    /// <summary>A slip is that of an order, which must be known.</summary>
    private void CheckLanguage(OrderLine line, List<Problem> problems)
    {
        if (line.Row[OrderColumn.Language] is not null && !line.Unread.Contains(OrderColumn.Order) && !catalog.Languages.Contains(line.Slip.Language))
        {
            problems.Add(line.Row.Problem(OrderColumn.Language, SpecWording.Unknown("language", line.Slip.Language, catalog.Languages)));
        }
    }

    private static void CheckStrength(Strength strength, StrandMaterial material, int strands, OrderLine line, List<Problem> problems)
    {
        if (material.StretchLoad / strength.Breaking > material.StretchLimit)
        {
            problems.Add(line.Row.Problem(OrderColumn.Strands, SpecWording.StretchedTooHard(strength, strands, material)));
        }

        if (strength.IsBelowFloor)
        {
            problems.Add(line.Row.Problem(OrderColumn.DrawWeight, SpecWording.BelowFloor(strength, strands, material.Name)));
        }
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

    private void Judge(BuildSpec spec, OrderLine line, List<Problem> problems)
    {
        var jig = catalog.Shop.Jig;
        if (spec.Posts.Outside < jig.Shortest || spec.Posts.Outside > jig.Longest)
        {
            problems.Add(line.Row.Problem(
                line.LengthColumn,
                SpecWording.BeyondJig(spec.Posts.Outside, jig.Shortest, jig.Longest, unit)));
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
    }
}
