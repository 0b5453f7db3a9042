using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;

namespace Tagend.Catalog;

/// <summary>Reads a templates folder: shop, materials, threads, label stocks and plans.</summary>
public static class CatalogReader
{
    /// <summary>Reads all files; every mistake in any of them is added to the problems.</summary>
    /// <returns>Null where there was a problem.</returns>
    /// <exception cref="TagendException">The folder is missing or a file cannot be opened.</exception>
    public static ShopCatalog? Read(string folder, ICollection<Problem> problems)
    {
        if (!Directory.Exists(folder))
        {
            throw new TagendException(CatalogWording.MissingFolder(folder));
        }

        var (found, inWords) = (new List<Problem>(), new List<Problem>());
        var shop = ReadShop(folder, found);
        var languages = PaperLanguageReader.Languages(folder);
        var words = Task.Run(() => // the longest file by far
            shop is not null && languages.Contains(shop.Language) ? PaperLanguageReader.Read(folder, shop.Language, inWords) : null);
        var materials = ReadNamed(folder, "materials.toml", found, ReadMaterial);
        var threads = ReadNamed(folder, "threads.toml", found, ReadThread);
        var stocks = ReadNamed(folder, "stocks.toml", found, StockReader.Read);
        var plans = PlanReader.ReadAll(folder, materials, threads, found);
        var colors = ColorFile.Read(folder, found);
        var steps = CardStepReader.Read(folder, found);
        var read = words.GetAwaiter().GetResult();
        found.AddRange(inWords);
        foreach (var problem in found)
        {
            problems.Add(problem);
        }

        return found.Count > 0
            ? null
            : new ShopCatalog(folder, shop!, materials!, threads!, stocks!, plans) { Colors = colors, CardSteps = steps, Words = read!, Languages = languages };
    }

    /// <summary>A section an item; null where the file is missing or is not TOML.</summary>
    private static Dictionary<string, T>? ReadNamed<T>(
        string folder, string name, List<Problem> problems, Func<TomlSection, T> read)
    {
        if (TomlFile.Read(Path.Combine(folder, name), name, problems) is not { } file)
        {
            return null;
        }

        var items = new Dictionary<string, T>();
        foreach (var section in file.Sections)
        {
            if (!ShownText.IsShown(section.Name))
            {
                section.Report(null, ShownText.Of(section.Name), CatalogWording.HiddenCharacter);
            }

            items[section.Name.ToLowerInvariant()] = read(section);
            section.RefuseUnknown();
        }

        file.Root.RefuseUnknown();
        return items;
    }

    private static StrandMaterial ReadMaterial(TomlSection section) => new StrandMaterial
    {
        Name = section.Name.ToLowerInvariant(),
        Title = section.Text("title"),
        Density = section.OptionalNumber("density", 0.5, 3),
        Diameter = section.Length("diameter", LengthRange.Strand),
        LinearDensity = section.OptionalNumber("linear_density", 1, 2000),
        Strength = section.Force("strength"),
        Modulus = section.OptionalNumber("modulus", 0.1, 400),
        Settle = section.Number("settle", 0, 0.05, 0),
        StretchLoad = section.Force("stretch_load"),
        StretchMinutes = section.Whole("stretch_minutes", 0, 10_000, 0),
        StretchLimit = section.Number("stretch_limit", 0.05, 0.9, 0.5),
        Packing = section.OptionalNumber("packing", 0.3, StrandMaterial.HexagonalPacking),
        TurnsPerInch = section.OptionalNumber("turns_per_inch", 0, 2),
        RuleTakeUpPerTurn = section.OptionalLength("rule_per_turn", LengthRange.TakeUpPerTurn),
        Spool = section.OptionalLength("spool"),
    };

    private static ServingThread ReadThread(TomlSection section) => new(
        section.Name.ToLowerInvariant(),
        section.Text("title"),
        section.Length("diameter", LengthRange.Strand),
        section.OptionalNumber("linear_density", 1, 2000),
        section.OptionalLength("spool"));

    private static Shop? ReadShop(string folder, List<Problem> problems)
    {
        var file = TomlFile.Read(Path.Combine(folder, "shop.toml"), "shop.toml", problems);
        if (file?.Section("jig") is not { } jig || file.Section("measuring") is not { } measuring
            || file.Section("twisting") is not { } twisting || file.Section("strength") is not { } strength
            || file.Section("labels") is not { } labels || file.Section("serving") is not { } serving
            || file.Section("stock") is not { } stock)
        {
            return null;
        }

        var hand = twisting.Choice("hand", ("S", Hand.S), ("Z", Hand.Z));
        var columns = file.Sections.FirstOrDefault(s => s.Name == "columns");
        var shop = new Shop
        {
            Name = file.Root.Text("name", ""),
            Phone = file.Root.Text("phone", ""),
            Web = file.Root.Text("web", ""),
            Logo = ShopIdentity.ReadLogo(folder, file.Root),
            Accent = ShopIdentity.ReadAccent(file.Root),
            Language = ShopIdentity.ReadLanguage(folder, file.Root),
            Dates = file.Root.Choice("dates", ("", DateStyle.Unknown), ("m/d/y", DateStyle.MonthFirst), ("d/m/y", DateStyle.DayFirst)),
            Unit = file.Root.Choice("unit", ("in", LengthUnit.Inch), ("mm", LengthUnit.Millimeter)),
            Paper = file.Root.Choice("paper", [.. PaperSet.All.Select(set => (set.Name, set))]),
            Cards = file.Root.Choice("cards", ("two-sided", CardLayout.TwoSided), ("full-page", CardLayout.FullPage)),
            Jig = new Jig
            {
                PostDiameter = jig.OptionalLength("post_diameter", LengthRange.Post),
                Shortest = jig.Length("shortest", LengthRange.Reach),
                Longest = jig.Length("longest", LengthRange.Reach),
                InchTapeStep = jig.Length("tape_in", LengthRange.TapeStep, Length.FromInches(1.0 / 16)),
                MillimeterTapeStep = jig.Length("tape_mm", LengthRange.TapeStep, Length.FromMillimeters(1)),
                Tail = jig.Length("tail", LengthRange.Tail),
            },
            PinDiameter = measuring.Length("pin_diameter", LengthRange.Pin, Length.FromInches(0.25)),
            TurnsPerInch = twisting.Number("turns_per_inch", 0.2, 2, Shop.CommonTurnsPerInch),
            TakeUpModel = twisting.Choice("take_up", ("rule", TakeUpModel.Rule), ("helix", TakeUpModel.Helix)),
            TwistHand = hand,
            ServingHand = hand == Hand.S
                ? twisting.Choice("serving_hand", ("Z", Hand.Z), ("S", Hand.S))
                : twisting.Choice("serving_hand", ("S", Hand.S), ("Z", Hand.Z)),
            RuleTakeUpPerTurn = twisting.Length("rule_per_turn", LengthRange.TakeUpPerTurn, Shop.CommonTakeUpPerTurn),
            WantedNockClearance = serving.Length("nock_clearance", LengthRange.Clearance, Length.FromInches(0.002)),
            GreatestNockMisfit = serving.Length("nock_misfit", LengthRange.Clearance, Length.FromInches(0.008)),
            ThreadTail = serving.Length("thread_tail", LengthRange.Tail, Length.FromInches(12)),
            Waste = stock.Number("waste", 0, 1, 0.03),
            DummyTag = stock.Length("dummy_tag", LengthRange.Tail, Length.FromInches(12)),
            TerminationEfficiency = strength.Number("termination_efficiency", 0.1, 1),
            BagStock = labels.Text("bag"),
            LoopStock = labels.Text("loop"),
            Columns = columns?.Keys.ToDictionary(k => k.ToLowerInvariant(), k => columns.Text(k))
                ?? new Dictionary<string, string>(),
        };
        foreach (var section in file.Sections.Prepend(file.Root))
        {
            section.RefuseUnknown();
        }

        return shop;
    }
}
