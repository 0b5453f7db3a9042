using System.Text.RegularExpressions;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Card;
using Tagend.Pages.Labels;
using Tagend.Pages.Parts;
using Tagend.Pages.Pull;
using Tagend.Pages.Record;
using Tagend.Pages.Ruler;
using Tagend.Pages.Strip;
using Tagend.Specs;
using Tagend.Tags;
using Tagend.Tests.Output;
using Tagend.Tests.Specs;
using Xunit;

namespace Tagend.Tests.Pages;

/// <summary>The bench's papers in its own language: no word is left in the code, and the longest finds room.</summary>
public sealed partial class BenchWordsTests
{
    /// <summary>What an order or a template names, which no language changes, and units' symbols.</summary>
    private static readonly string[] Names =
        ["string", "cable", "buss", "D", "Jo", "Sample", "Demo", "String", "Bench", "compound", "bow", "hybrid", "cam", "lb", "lbf", "N",
            "hmpe", "notes", "office", "letter", "yd", "ft", "m", "g", "HMPE", "polyester"];

    private static readonly string[] Languages = ["de", "en", "es", "fr"];

    /// <summary>Specs that between them bring out every branch of the cards' words.</summary>
    private static readonly Dictionary<string, Func<BuildSpec>> Specs = new()
    {
        ["usual"] = () => SpecFixture.Good(),
        ["one color"] = () => SpecFixture.Good(("colors", ""), ("draw_weight", ""), ("nock_groove", "0.121 in")),
        ["fitted"] = () => Fitted(SpecFixture.Good()),
        ["models apart"] = () => Apart(SpecFixture.Good()),
        ["tape long"] = () => OffBy(SpecFixture.Good(), 0.031),
        ["tape short"] = () => OffBy(SpecFixture.Good(), -0.012),
        ["yoke"] = () => SpecFixture.Good(
            ("kind", "split-yoke-cable"), ("finished_length", "38 in"), ("servings", "10 in..12 in t021"), ("center_serving", ""), ("nock_point", ""), ("peep", ""), ("speed_nocks", "")),
    };

    public static MatrixTheoryData<string, string, LengthUnit> Benches => new(
        Languages, Specs.Keys, [LengthUnit.Inch, LengthUnit.Millimeter]);

    [Fact]
    public void Papers_OfABenchWithAnotherLanguage_HaveNoWordOfTheirOwn()
    {
        var catalog = SheetFixture.Catalog with { Words = Disguised() };
        var texts = new[] { LengthUnit.Inch, LengthUnit.Millimeter }
            .SelectMany(unit => Specs.Values.SelectMany(s => PapersOf(s() with { Unit = unit }, catalog)))
            .Concat(RulerPage.Compose(Paper.Letter, null, catalog.Words, TestFonts.Shipped).Pages)
            .Concat(RulerPage.Compose(Paper.Letter, "office", catalog.Words, TestFonts.Shipped).Pages)
            .Append(StockOutlines.Of(catalog.Stocks["letter-2x5"], catalog.Words, TestFonts.Shipped))
            .SelectMany(p => p.Inks.OfType<TextInk>().Select(t => t.Text))
            .Except(["4 in", "100 mm"]) // beside the check bars, in every language
            .ToHashSet();

        Assert.True(texts.Count > 200);
        Assert.Empty(texts.SelectMany(t => Word().Matches(t).Select(w => w.Value)).Except(Names));
    }

    [Theory]
    [MemberData(nameof(Benches))]
    public void Papers_OfABench_FindRoomForItsWords(string language, string spec, LengthUnit unit)
    {
        var catalog = SheetFixture.CatalogIn(language);
        Assert.NotEmpty(PapersOf(Specs[spec]() with { Unit = unit }, catalog));
    }

    [Theory]
    [InlineData(PaperWord.Danger, "danger")]
    [InlineData(PaperWord.CardSetPosts, "card_set_posts")]
    [InlineData(PaperWord.CardFromA, "card_from_a")]
    public void Key_OfAWord_IsItsNameInLowerCaseWithUnderscores(PaperWord word, string key) => Assert.Equal(key, PaperWords.KeyOf(word));

    /// <summary>Every letter of every word is another, so that what is still English stands out.</summary>
    private static PaperLanguage Disguised()
    {
        var english = SheetFixture.Language("en");
        var plans = SheetFixture.Catalog.Plans.Values;
        var terms = plans.SelectMany(p => new[] { p.EndA, p.EndB }.Concat(p.Separators.Select(s => s.Name)))
            .Concat(SheetFixture.Catalog.Materials.Values.Select(m => m.Title))
            .Concat(SheetFixture.Catalog.Threads.Values.Select(t => t.Title))
            .Concat(plans.Select(p => p.Title))
            .Concat(["black", "red", "any"])
            .Distinct();
        return english with
        {
            Inch = "öö",
            Millimeter = "ää",
            Words = english.Words.ToDictionary(w => w.Key, w => Hidden(w.Value)),
            Terms = terms.ToDictionary(t => t, Hidden),
            Kinds = plans.Select(p => p.Title).Distinct().ToDictionary(t => t, Hidden),
        };
    }

    private static string Hidden(string text) => OutsideFields().Replace(text, "ü");

    private static List<Page> PapersOf(BuildSpec spec, ShopCatalog catalog)
    {
        var build = new Build(spec, SheetFixture.Slip with { Notes = "notes" });
        var set = new BuildSet(spec.Order, [build, build with { Spec = spec with { Piece = "cable" } }]);
        var slips = new Dictionary<string, Tagend.Orders.OrderSlip> { [spec.Order] = build.Slip };
        var tags = new[] { ("roll-4x2", "roll-3x2"), ("letter-2x5", "letter-2x5") };
        Composed[] papers =
        [
            JigCard.Compose(build, catalog, TagWriter.Write(spec), Paper.HalfLetter, TestFonts.Shipped),
            JigCard.Compose(build, catalog, TagWriter.Write(spec), Paper.A5, TestFonts.Shipped),
            MarkingStrip.Compose(build, catalog, StripStock.Sheet(Paper.Letter), StripPositions.Finished, TestFonts.Shipped),
            MarkingStrip.Compose(build, catalog, StripStock.Sheet(Paper.A4), StripPositions.OnJig, TestFonts.Shipped),
            .. tags.Select(t => TagLabels.Compose([set], catalog, TestFonts.Shipped, catalog.Stocks[t.Item1], catalog.Stocks[t.Item2])),
            PullSheet.Compose(BatchPull.Of([spec], catalog.Shop)!, slips, catalog, Paper.A4, TestFonts.Shipped),
            PullSheet.Compose(BatchPull.Of([spec, spec with { Order = "D-102" }], catalog.Shop)!, slips, catalog, Paper.Letter, TestFonts.Shipped),
        ];
        var packing = PackingLists.Of(set, catalog, TestFonts.Shipped, catalog.Stocks["roll-3x2"], SheetUse.Whole);
        papers = [.. papers, new Composed(TagLabels.Pages(packing.Labels, SheetUse.Whole), packing.Problems), .. PapersOfStock(spec, catalog), .. Records(set, catalog)];
        Assert.All(papers, p => Assert.Empty(p.Problems));
        return [.. papers.SelectMany(p => p.Pages)];
    }

    /// <summary>A spool's tag, and a pull sheet on which a spool ends and the next does not hold all.</summary>
    private static IEnumerable<Composed> PapersOfStock(BuildSpec spec, ShopCatalog catalog)
    {
        var need = Tagend.Specs.Stock.Of(spec, catalog.Shop)[0];
        var spools = Enumerable.Range(1, 2).Select(n => new ReceivedSpool(n, need.Kind, need.Name, need.Color, "7-7", need.Length, spec.Date)).ToList();
        var pull = BatchPull.Of(
            Enumerable.Range(101, 3).Select(i => spec with { Order = $"D-{i}" }), catalog.Shop, [.. spools.Select(s => new ShelfSpool(s, s.Length, false))])!;
        return
        [
            SpoolLabels.Compose(spools, catalog, TestFonts.Shipped, catalog.Stocks["roll-3x2"], SheetUse.Whole),
            PullSheet.Compose(pull, new Dictionary<string, Tagend.Orders.OrderSlip>(), catalog, Paper.A4, TestFonts.Shipped),
        ];
    }

    /// <summary>A record and tags of a set in which pieces are too long, too short, right, and not measured.</summary>
    private static IEnumerable<Composed> Records(BuildSet set, ShopCatalog catalog)
    {
        var cable = set.Builds[0].Spec with { Kind = "twin-cam-cable" };
        double?[] offs = [-1, 0, 0, 0.04, 1, null];
        var records = new BuildSet("1", [.. offs.Select((off, i) => new Build(cable with { Piece = $"{i}" }, Tagend.Orders.OrderSlip.Blank)
        {
            Measured = off is { } inches
                ? new Measurement(cable.FinishedLength + Length.FromInches(inches), 45.5, cable.Stretch.Load, 20, ["7-7"], cable.Date, "")
                : null,
        })]);
        return
        [
            MeasuredRecord.Compose(records, catalog, catalog.Words, cable.Unit, Paper.Letter, TestFonts.Shipped),
            TagLabels.Compose([records with { Builds = [records.Builds[0]] }], catalog, TestFonts.Shipped, catalog.Stocks["roll-4x2"], catalog.Stocks["roll-3x2"]),
        ];
    }

    private static BuildSpec Fitted(BuildSpec spec) => spec with
    {
        Settle = Length.FromInches(0.1),
        Twist = spec.Twist with
        {
            TakeUp = spec.Twist.TakeUp with { Used = TakeUpModel.Fitted, Fitted = new FittedAmount(Length.FromInches(0.5), Length.FromInches(0.01), 12) },
        },
    };

    private static BuildSpec Apart(BuildSpec spec) => spec with
    {
        Twist = spec.Twist with { TakeUp = spec.Twist.TakeUp with { Rule = Length.FromInches(0.5), Helix = Length.FromInches(0.7) } },
    };

    private static BuildSpec OffBy(BuildSpec spec, double inches) =>
        spec with { Posts = spec.Posts with { Outside = Length.FromInches(60.25 + inches) } };

    [GeneratedRegex(@"[A-Za-z]{2,}")]
    private static partial Regex Word();

    /// <summary>Letters that are not within braces.</summary>
    [GeneratedRegex(@"\p{L}(?![^{}]*\})")]
    private static partial Regex OutsideFields();
}
