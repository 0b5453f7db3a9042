using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;

namespace Tagend.Catalog;

/// <summary>Reads the plans: one file a piece kind.</summary>
internal static class PlanReader
{
    /// <summary>AMO Standards FP-3, 2000: a string's length is held to ±1/16 in.</summary>
    private static readonly Length StandardTolerance = Length.FromInches(1.0 / 16);

    /// <summary>Common practice with compound bows.</summary>
    private const int UsualFirstShots = 100;

    public static Dictionary<string, PiecePlan> ReadAll(
        string folder,
        IReadOnlyDictionary<string, StrandMaterial>? materials,
        IReadOnlyDictionary<string, ServingThread>? threads,
        List<Problem> problems)
    {
        var plans = new Dictionary<string, PiecePlan>();
        var plansFolder = Path.Combine(folder, "plans");
        if (!Directory.Exists(plansFolder))
        {
            problems.Add(new Problem(new Place("plans"), null, CatalogWording.MissingFile(plansFolder)));
            return plans;
        }

        foreach (var path in TemplateFiles.In(plansFolder, "*.toml"))
        {
            var file = TomlFile.Read(path, $"plans/{Path.GetFileName(path)}", problems);
            if (file is null)
            {
                continue;
            }

            var name = Path.GetFileNameWithoutExtension(path).ToLowerInvariant();
            var plan = Read(file, name);
            CheckNames(file.Root, plan, materials, threads);
            foreach (var also in plan.Also)
            {
                if (plans.Values.FirstOrDefault(p => p.IsCalled(also)) is { } other)
                {
                    file.Root.Report("also", also, CatalogWording.PlanNameTwice(other.Name));
                }
            }

            plans[name] = plan;
        }

        return plans;
    }

    /// <summary>A file of materials or threads that has a mistake itself has been told of.</summary>
    private static void CheckNames(
        TomlSection root, PiecePlan plan, IReadOnlyDictionary<string, StrandMaterial>? materials, IReadOnlyDictionary<string, ServingThread>? threads)
    {
        if (materials is not null && plan.Material is not null && !materials.ContainsKey(plan.Material))
        {
            root.Report("material", plan.Material, CatalogWording.UnknownName("material", materials.Keys));
        }

        var named = plan.Servings.Select(s => s.Thread).Append(plan.Thread).Append(plan.LoopThread).OfType<string>().Distinct();
        foreach (var thread in named.Where(t => threads is not null && t.Length > 0 && !threads.ContainsKey(t)))
        {
            root.Report("thread", thread, CatalogWording.UnknownName("thread", threads!.Keys));
        }
    }

    private static PiecePlan Read(TomlFile file, string name)
    {
        var root = file.Root;
        var plan = new PiecePlan
        {
            Name = name,
            Also = (root.Texts("also") ?? []).ToValueList(),
            Title = root.Text("title"),
            System = root.OptionalText("system") is null
                ? null
                : root.Choice<BowSystem?>("system", ("compound", BowSystem.Compound), ("recurve", BowSystem.Recurve), ("crossbow", BowSystem.Crossbow)),
            EndA = root.Text("end_a"),
            EndB = root.Text("end_b"),
            Shortest = root.Length("shortest"),
            Longest = root.Length("longest"),
            Tolerance = root.Length("tolerance", StandardTolerance),
            NeedsPeep = root.Flag("needs_peep", false),
            IsPaired = root.Flag("paired", false),
            IsMirrored = root.Flag("mirrored", false),
            Partners = root.Text("partners", "").Split(' ', StringSplitOptions.RemoveEmptyEntries).ToValueList(),
            EndLoopA = root.Length("end_loop_a", Length.Zero),
            EndLoopB = root.Length("end_loop_b", Length.Zero),
            LoopThread = ReadLoopThread(root),
            Split = ReadSplit(root),
            Tail = root.OptionalLength("tail", LengthRange.Tail),
            NeedsCenterServing = root.Flag("needs_center_serving", false),
            HasStrengthFloor = root.Flag("strength_floor", true),
            TurnsPerInch = root.OptionalNumber("turns_per_inch", 0, 2),
            RuleTakeUpPerTurn = root.OptionalLength("rule_per_turn", LengthRange.TakeUpPerTurn),
            Material = root.OptionalText("material"),
            Strands = root.OptionalWhole("strands", 2, 200),
            Thread = root.Text("thread"),
            ThreadColor = ColorNames.None.Of(root.Text("thread_color", "")),
            Servings = ReadServings(root),
            Separators = [.. file.Sections.Where(s => s.Name == "separator").Select(ReadSeparator)],
            FirstShots = root.Whole("first_shots", 1, 1000, UsualFirstShots),
        };
        if (root.IsSound && plan.LoopThread is not null && (plan.EndLoopA == Length.Zero || plan.EndLoopB == Length.Zero))
        {
            root.Report("loop", null, CatalogWording.ServedWithoutLoop);
        }

        root.RefuseUnknown();
        foreach (var section in file.Sections)
        {
            section.RefuseUnknown();
        }

        return plan;
    }

    /// <summary>The thread of served end loops, the plan's own where none is named; null for bare ones.</summary>
    private static string? ReadLoopThread(TomlSection root)
    {
        var isServed = root.Choice("loop", ("bare", false), ("served", true));
        var thread = root.OptionalText("loop_thread");
        return isServed ? thread ?? root.Text("thread") : null;
    }

    private static Length? ReadSplit(TomlSection root)
    {
        if (root.OptionalText("legs") is not { } text)
        {
            return null;
        }

        if (PositionReader.TryRead(text, LengthUnit.Inch, out var at) && at is { End: PieceEnd.A } && at.Distance > Length.Zero)
        {
            return at.Distance;
        }

        root.Report("legs", text, CatalogWording.Expected(CatalogWording.AnEnd));
        return null;
    }

    private static ValueList<OrderedServing> ReadServings(TomlSection root)
    {
        if (root.OptionalText("servings") is not { } text)
        {
            return [];
        }

        if (ServingsReader.TryRead(text, LengthUnit.Inch, out var servings, out var error))
        {
            return servings;
        }

        root.Report("servings", text, error);
        return [];
    }

    private static PlannedSeparator ReadSeparator(TomlSection section)
    {
        var text = section.Text("at");
        if (!PositionReader.TryRead(text, LengthUnit.Inch, out var at) && section.IsSound)
        {
            section.Report("at", text, CatalogWording.Expected("an end and a length, such as \"A 10 in\""));
        }

        return new PlannedSeparator(section.Text("name"), at);
    }
}
