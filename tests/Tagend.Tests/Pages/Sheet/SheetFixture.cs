using System.Drawing;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Pages.Sheet;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Tests.Output;
using Tagend.Tests.Specs;
using Xunit;

namespace Tagend.Tests.Pages;

/// <summary>Sets made with the shipped templates, and their sheets.</summary>
internal static class SheetFixture
{
    public static OrderSlip Slip { get; } = new("Jo Sample", "compound bow, hybrid cam, 70 lb", "2026-04-01", "");

    public static ShopCatalog Catalog { get; } = SpecFixture.Catalog with
    {
        Shop = SpecFixture.Catalog.Shop with { Name = "Demo String Bench", Phone = "555 0100", Web = "strings.example" },
    };

    /// <summary>A compound string with a peep, and cables after it up to a number of pieces.</summary>
    public static BuildSet Compound(int pieces = 3, LengthUnit unit = LengthUnit.Inch) => Set(
    [
        Piece(unit),
        .. Enumerable.Range(2, pieces - 1).Select(n => Piece(
            unit,
            ("piece", $"cable {n}"), ("kind", "buss-cable"), ("finished_length", $"{34 + n} 1/8 in"),
            ("colors", "red:8 silver:8 flame-orange:8"),
            ("servings", ""), ("center_serving", ""), ("nock_point", ""), ("peep", ""), ("speed_nocks", ""))),
    ]);

    public static BuildSet Recurve() => Set([Single("recurve-string", "65 in", "38 lbf")]);

    public static BuildSet Crossbow() => Set([Single("crossbow-string", "36 in", "175 lbf")]);

    public static BuildSet CrossbowWithCables() => Set(
    [
        Single("crossbow-string", "36 in", "175 lbf"),
        Single("crossbow-cable", "19 3/8 in", "175 lbf") with { Piece = "cable 1" },
        Single("crossbow-cable", "19 3/8 in", "175 lbf") with { Piece = "cable 2" },
    ]);

    /// <summary>A set whose rows say something else.</summary>
    public static BuildSet With(BuildSet set, Func<OrderSlip, OrderSlip> slip) =>
        set with { Builds = set.Builds.Select(b => b with { Slip = slip(b.Slip) }).ToValueList() };

    public static BuildSet Set(IEnumerable<BuildSpec> specs) =>
        new("D-101", specs.Select(s => new Build(s, Slip)).ToValueList());

    public static BuildSpec Single(string kind, string length, string drawWeight) => Piece(
        LengthUnit.Inch,
        ("kind", kind), ("finished_length", length), ("draw_weight", drawWeight), ("strands", "28"), ("colors", ""),
        ("servings", ""), ("center_serving", ""), ("nock_point", ""), ("peep", ""), ("speed_nocks", ""));

    /// <summary>The shipped catalog of a bench of a language.</summary>
    public static ShopCatalog CatalogIn(string language) =>
        Catalog with { Shop = Catalog.Shop with { Language = language }, Words = Language(language) };

    /// <summary>A shipped language's words.</summary>
    public static PaperLanguage Language(string language)
    {
        var problems = new List<Problem>();
        var read = PaperLanguageReader.Read(TestFiles.Templates, language, problems);
        Assert.Empty(problems);
        return read!;
    }

    public static Composed Sheet(BuildSet set, Paper? paper = null, ShopCatalog? catalog = null, string? language = null) =>
        new CustomerSheet(catalog ?? Catalog, TestFonts.Shipped, language).Of(set, paper ?? Paper.Letter);

    /// <summary>Pages of a set whose sheet must come out.</summary>
    public static IReadOnlyList<Page> Pages(
        BuildSet set, Paper? paper = null, ShopCatalog? catalog = null, string? language = null)
    {
        var sheet = Sheet(set, paper, catalog, language);
        Assert.Empty(sheet.Problems);
        return sheet.Pages;
    }

    /// <summary>All text of some pages, in the order it is drawn, a space between lines.</summary>
    public static string TextOf(IEnumerable<Page> pages) =>
        string.Join(' ', pages.SelectMany(p => p.Inks.OfType<TextInk>()).Select(t => t.Text.Trim()));

    public static float WidthOf(TextInk text) => TestFonts.Shipped.WidthOf(text.Text, text.Style);

    /// <summary>What a line of text covers from its baseline to the height of its small letters, in hundredths of a point.</summary>
    public static Rectangle BoxOf(TextInk text)
    {
        var height = text.Style.Size / 2;
        return Rectangle.FromLTRB(
            (int)(text.X * 100),
            (int)((text.Baseline - height) * 100),
            (int)((text.X + TestFonts.Shipped.WidthOf(text.Text.Trim(), text.Style)) * 100),
            (int)(text.Baseline * 100));
    }

    private static BuildSpec Piece(LengthUnit unit, params (string Column, string Text)[] cells)
    {
        var (spec, _) = SpecFixture.Build(unit, cells);
        Assert.NotNull(spec);
        return spec;
    }
}
