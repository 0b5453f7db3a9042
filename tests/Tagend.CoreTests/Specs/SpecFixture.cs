using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Specs;

/// <summary>The shipped templates with the demo shop's spools and posts of 1 in, and specs made with them from a row of cells.</summary>
public static class SpecFixture
{
    public static DateOnly Date { get; } = new(2026, 3, 14);

    public static ShopCatalog Catalog { get; } = ReadCatalog();

    /// <summary>A string of 60 1/4 in with everything a string can have; cells given replace its own.</summary>
    public static (BuildSpec? Spec, IReadOnlyList<Problem> Problems) Build(params (string Column, string Text)[] cells) =>
        Build(LengthUnit.Inch, cells);

    public static (BuildSpec? Spec, IReadOnlyList<Problem> Problems) Build(
        LengthUnit unit, params (string Column, string Text)[] cells) => Build(Catalog, unit, cells);

    public static (BuildSpec? Spec, IReadOnlyList<Problem> Problems) Build(
        ShopCatalog catalog, LengthUnit unit, params (string Column, string Text)[] cells)
    {
        var file = Read(unit, cells);
        var problems = new List<Problem>(file.Problems);
        var spec = file.Lines.Count == 0 ? null : new SpecBuilder(catalog, unit, Date).Build(file.Lines[0], problems);
        return (spec, problems);
    }

    /// <summary>The shipped shop, with other values of its own.</summary>
    public static ShopCatalog With(Func<Shop, Shop> change) => Catalog with { Shop = change(Catalog.Shop) };

    /// <summary>The shipped catalog, with another plan in place of one.</summary>
    public static ShopCatalog WithPlan(string name, Func<PiecePlan, PiecePlan> change) => Catalog with
    {
        Plans = Catalog.Plans.ToDictionary(p => p.Key, p => p.Key == name ? change(p.Value) : p.Value),
    };

    /// <summary>The shipped catalog, with another material in place of one.</summary>
    public static ShopCatalog WithMaterial(string name, Func<StrandMaterial, StrandMaterial> change) => Catalog with
    {
        Materials = Catalog.Materials.ToDictionary(m => m.Key, m => m.Key == name ? change(m.Value) : m.Value),
    };

    /// <summary>The order itself, which must be readable.</summary>
    public static OrderLine Order(params (string Column, string Text)[] cells) => Assert.Single(Read(LengthUnit.Inch, cells).Lines);

    private static OrderFile Read(LengthUnit unit, (string Column, string Text)[] cells)
    {
        var row = new Dictionary<string, string>
        {
            ["order"] = "D-101",
            ["piece"] = "string",
            ["kind"] = "compound-string",
            ["finished_length"] = "60 1/4 in",
            ["material"] = "hmpe-0145",
            ["strands"] = "24",
            ["colors"] = "black:12 red:12",
            ["draw_weight"] = "70 lbf",
            ["servings"] = "A 0 in..8 in t021 black; B 0 in..8 1/2 in t021 black",
            ["center_serving"] = "26 1/4 in..31 in t019 red",
            ["nock_point"] = "29 1/2 in",
            ["peep"] = "18 in",
            ["speed_nocks"] = "9 in; B 9 1/2 in",
        };
        foreach (var (column, text) in cells)
        {
            row[column] = text;
            if (text.Length == 0)
            {
                row.Remove(column);
            }
        }

        var path = Path.Combine(Path.GetTempPath(), $"tagend-{Guid.NewGuid():N}.csv");
        File.WriteAllText(path, $"{string.Join(',', row.Keys)}\n{string.Join(',', row.Values.Select(v => $"\"{v}\""))}\n");
        var file = OrderReader.Read(path, unit, Catalog.Shop.Columns);
        File.Delete(path);
        return file;
    }

    /// <summary>A spec that must come out without any problem.</summary>
    public static BuildSpec Good(params (string Column, string Text)[] cells)
    {
        var (spec, problems) = Build(cells);
        Assert.Empty(problems);
        return spec!;
    }

    private static ShopCatalog ReadCatalog()
    {
        var problems = new List<Problem>();
        var catalog = CatalogReader.Read(TestFiles.Templates, problems);
        var spools = ReadDemoShop(problems);
        Assert.Empty(problems);
        var shop = catalog!.Shop;
        return catalog with
        {
            Materials = spools!.Materials,
            Threads = spools.Threads,
            Shop = shop with { Name = "Your shop's name", Phone = "your phone number", Jig = shop.Jig with { PostDiameter = Length.FromInches(1) } },
        };
    }

    /// <summary>The shipped templates with the demo shop's own files over them.</summary>
    private static ShopCatalog? ReadDemoShop(List<Problem> problems)
    {
        var folder = Directory.CreateTempSubdirectory("tagend-demo-shop-").FullName;
        foreach (var file in Directory.EnumerateFiles(TestFiles.Templates, "*.toml", SearchOption.AllDirectories)
            .Concat(Directory.EnumerateFiles(TestFiles.DemoShop)))
        {
            var from = file.StartsWith(TestFiles.Templates, StringComparison.Ordinal) ? TestFiles.Templates : TestFiles.DemoShop;
            var copy = Path.Combine(folder, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy, overwrite: true);
        }

        var catalog = CatalogReader.Read(folder, problems);
        Directory.Delete(folder, recursive: true);
        return catalog;
    }
}
