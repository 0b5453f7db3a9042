using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Pages.Pull;
using Tagend.Specs;
using Tagend.Tests.Output;
using Xunit;

namespace Tagend.Tests.Pages;

public class PullSheetTests
{
    public static TheoryData<string, LengthUnit, int> Sheets => new MatrixTheoryData<string, LengthUnit, int>(
        ["letter", "A4"], [LengthUnit.Inch, LengthUnit.Millimeter], [1, 40]);

    [Theory]
    [MemberData(nameof(Sheets))]
    public void Sheet_OfAnyBatch_IsLegibleWithinItsPages(string paperName, LengthUnit unit, int sets)
    {
        var paper = paperName == "A4" ? Paper.A4 : Paper.Letter;
        var composed = Compose(paper, [.. Enumerable.Range(0, sets).Select(_ => SheetFixture.Compound(4, unit))]);
        Assert.Empty(composed.Problems);
        Assert.Equal(sets > 1, composed.Pages.Count > 1);
        foreach (var page in composed.Pages)
        {
            Assert.Equal((Points.Of(paper.Width), Points.Of(paper.Height)), (page.Width, page.Height));
            var texts = page.Inks.OfType<TextInk>().Where(t => t.Text.Trim().Length > 0).ToList();
            Assert.All(texts, t => Assert.True(
                t.Style.Size >= TypeScale.Smallest
                && t.X >= 36 && t.X + SheetFixture.WidthOf(t) <= page.Width - 36
                && t.Baseline > 36 && t.Baseline < page.Height - 24));
            var boxes = texts.Select(SheetFixture.BoxOf).ToList();
            for (var i = 0; i < boxes.Count; i++)
            {
                Assert.DoesNotContain(boxes.Take(i), b => b.IntersectsWith(boxes[i]));
            }
        }
    }

    [Fact]
    public void Sheet_OfSets_ListsEveryPieceInTheOrderOfBuildsWithABoxToTick()
    {
        BuildSet[] sets = [SheetFixture.Compound(3), SheetFixture.Recurve(), SheetFixture.Compound(3)];
        var pages = Compose(Paper.Letter, sets).Pages;
        var pull = PullOf(sets);
        var order = pull.Order;
        var text = SheetFixture.TextOf(pages);
        var at = text.IndexOf("ORDER OF BUILDS", StringComparison.Ordinal);
        foreach (var step in order.Steps)
        {
            var posts = LengthWriter.Bare(step.Posts, LengthUnit.Inch);
            at = text.IndexOf($"D-101 {step.Piece} Jo Sample 2026-04-01 {posts} ", at + 1, StringComparison.Ordinal);
            Assert.True(at > 0, $"{step.Piece} is missing or out of order");
        }

        Assert.Equal(pull.Pieces + pull.Stock.Count, pages.SelectMany(p => p.Inks.OfType<BoxInk>()).Count());
        Assert.Contains($"{order.Changes} changes of spools and posts; {order.ChangesAsOrdered} in the order of the file", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(LengthUnit.Inch)]
    [InlineData(LengthUnit.Millimeter)]
    public void Sheet_OfASet_HasTheTotalOfEverySpoolInTheShopsUnit(LengthUnit unit)
    {
        var set = SheetFixture.Compound(3, unit);
        var text = SheetFixture.TextOf(Compose(Paper.A4, [set]).Pages);
        foreach (var need in PullOf([set]).Stock)
        {
            Assert.Contains(
                $"{need.Name} {(need.Color.Length > 0 ? need.Color : "any")} {LengthWriter.Spool(need.Length, unit)}",
                text,
                StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Sheet_OfAShopThatSaysWhatItsSpoolsHold_CountsThem()
    {
        var set = SheetFixture.Compound(1);
        Assert.Contains("Spools", SheetFixture.TextOf(Compose(Paper.A4, [set]).Pages), StringComparison.Ordinal);
        var silent = SheetFixture.Catalog with
        {
            Materials = SheetFixture.Catalog.Materials.ToDictionary(m => m.Key, m => m.Value with { Spool = null }),
            Threads = SheetFixture.Catalog.Threads.ToDictionary(t => t.Key, t => t.Value with { Spool = null }),
        };
        var text = SheetFixture.TextOf(PullSheet.Compose(PullOf([set]), SlipsOf([set]), silent, Paper.A4, TestFonts.Shipped).Pages);
        Assert.DoesNotContain("Spools", text, StringComparison.Ordinal);
        Assert.Contains("Description", text, StringComparison.Ordinal);
    }

    /// <summary>The longest names an order may have, four colors, 40 strands: before, columns that share what is left were a letter wide.</summary>
    [Theory]
    [InlineData("letter", LengthUnit.Inch)]
    [InlineData("A4", LengthUnit.Millimeter)]
    public void Sheet_OfLongNamesAndManyColors_BreaksNoColorAndFits(string paperName, LengthUnit unit)
    {
        var set = SheetFixture.Compound(4, unit);
        var hostile = set with
        {
            Order = "HOSTILE-2026-0001",
            Builds = [.. set.Builds.Select(b => b with
            {
                Slip = b.Slip with { Customer = "Maximiliane Friederike von Hohenlohe, Archery Club of the Northern Provinces" },
                Spec = b.Spec with
                {
                    Order = "HOSTILE-2026-0001",
                    Piece = "long-string left bow 471",
                    Layup = Layup.Of([("flame-orange", 13), ("electric-blue", 11), ("flo-green", 9), ("desert-tan", 7)], b.Spec.Layup.Tail),
                },
            })],
        };
        var composed = Compose(paperName == "A4" ? Paper.A4 : Paper.Letter, [hostile]);
        Assert.Empty(composed.Problems);
        var texts = composed.Pages.SelectMany(p => p.Inks.OfType<TextInk>()).Select(t => t.Text).ToList();
        var words = texts.SelectMany(t => t.Split(' ', ',', '-', '\u2011', '\u00A0')).ToHashSet();
        Assert.All(["flame", "orange", "electric", "blue", "desert", "tan", "posts;", "Maximiliane", "Hohenlohe"], w => Assert.Contains(w, words));
        Assert.DoesNotContain(words, w => w.Length > 1 && w.Length < 8 && "electric".StartsWith(w, StringComparison.Ordinal));
        Assert.Contains(texts, t => t.Contains("HOSTILE-2026-0001", StringComparison.Ordinal));
        Assert.Single(composed.Pages);
    }

    [Fact]
    public void Sheet_WithACharacterTheFontLacks_IsAProblem()
    {
        var set = SheetFixture.Compound(1);
        var spec = set.Builds[0].Spec with { Piece = "漢" };
        var composed = Compose(Paper.A4, [SheetFixture.Set([spec])]);
        Assert.Empty(composed.Pages);
        Assert.StartsWith("pull sheet: \"D-101 漢\": the font has no glyph for '漢'", Assert.Single(composed.Problems).ToString(), StringComparison.Ordinal);
    }

    private static Dictionary<string, OrderSlip> SlipsOf(IEnumerable<BuildSet> sets) =>
        sets.DistinctBy(s => s.Order).ToDictionary(s => s.Order, s => s.Builds[0].Slip);

    private static BatchPull PullOf(IEnumerable<BuildSet> sets) =>
        BatchPull.Of(sets.SelectMany(s => s.Builds).Select(b => b.Spec), SheetFixture.Catalog.Shop)!;

    private static Composed Compose(Paper paper, IReadOnlyList<BuildSet> sets) =>
        PullSheet.Compose(PullOf(sets), SlipsOf(sets), SheetFixture.Catalog, paper, TestFonts.Shipped);
}
