using Tagend.Blocks;
using Tagend.Output;
using Tagend.Pages.Labels;
using Tagend.Tests.Blocks;
using Xunit;

namespace Tagend.Tests.Pages;

/// <summary>What the words of tags say, and what they leave out first.</summary>
public sealed class TagWordsTests
{
    private static readonly LabelStyle Smallest = LabelStyle.LargeToSmall[^1];

    [Fact]
    public void LoopTag_FromFullToLeast_LeavesOutBowAndKindThenMaterialAndTurnsThenColors()
    {
        var build = SheetFixture.Compound(1).Builds[0];
        var wordings = LoopTag.FromFullToLeast(build, SheetFixture.Catalog).Select(w => TextOf(w(Smallest))).ToList();
        Assert.Equal(
            [
                "D-101 string | 60 1/4 in ± 1/16 in | Tie to A: top cam | 24 strands: black 12, red 12 | HMPE, 0.0145 in strand | "
                + "String, hybrid-cam or twin-cam compound | compound bow, hybrid cam, 70 lb | 45 turns S · rev 1 · 2026-03-14",
                "D-101 string | 60 1/4 in ± 1/16 in | Tie to A: top cam | 24 strands: black 12, red 12 | HMPE, 0.0145 in strand | 45 turns S · rev 1 · 2026-03-14",
                "D-101 string | 60 1/4 in ± 1/16 in | Tie to A: top cam | 24 strands: black 12, red 12 | rev 1 · 2026-03-14",
                "D-101 string | 60 1/4 in ± 1/16 in | rev 1 · 2026-03-14",
            ],
            wordings);
    }

    [Fact]
    public void LoopTag_OfASpecWithLots_SaysThem()
    {
        var build = SheetFixture.Compound(1).Builds[0];
        var lots = build with { Spec = build.Spec with { Lots = ["L-204", "77B"] } };
        Assert.Contains("| lots L-204, 77B |", TextOf(LoopTag.FromFullToLeast(lots, SheetFixture.Catalog)[1](Smallest)), StringComparison.Ordinal);
    }

    [Fact]
    public void BagTag_FromFullToLeast_LeavesOutShopThenBowAndDueThenColorsThenCustomer()
    {
        Assert.Equal(
            [
                "D-101 | Jo Sample | compound bow, hybrid cam, 70 lb | string 60 1/4 in · black 12, red 12 | "
                + "cable 2 36 1/8 in · red 8, silver 8, flame-orange 8 | 2026-03-14 · due 2026-04-01 | Demo String Bench · 555 0100",
                "D-101 | Jo Sample | compound bow, hybrid cam, 70 lb | string 60 1/4 in · black 12, red 12 | "
                + "cable 2 36 1/8 in · red 8, silver 8, flame-orange 8 | 2026-03-14 · due 2026-04-01",
                "D-101 | Jo Sample | string 60 1/4 in · black 12, red 12 | cable 2 36 1/8 in · red 8, silver 8, flame-orange 8 | 2026-03-14",
                "D-101 | Jo Sample | string 60 1/4 in | cable 2 36 1/8 in | 2026-03-14",
                "D-101 | string 60 1/4 in | cable 2 36 1/8 in | 2026-03-14",
            ],
            Bag(codeIsWhole: true));
    }

    [Fact]
    public void BagTag_WhoseCodeHasNamesOnly_SaysSoHoweverSmall() =>
        Assert.All(Bag(codeIsWhole: false), t => Assert.Contains("Code: pieces and revisions only; scan the loop tags.", t, StringComparison.Ordinal));

    [Fact]
    public void BagTag_OfOneColoring_SaysItOnce()
    {
        var set = SheetFixture.Recurve();
        var text = TextOf(BagTag.FromFullToLeast(set, SheetFixture.Catalog, true)[0](Smallest));
        Assert.Contains("string 65 in | colors: ", text, StringComparison.Ordinal);
    }

    [Fact]
    public void LoopTag_InANarrowRoom_BreaksNoColorAndKeepsTheToleranceBesideTheLength()
    {
        var build = SheetFixture.Compound(2).Builds[1];
        var inks = Laid.Out(LoopTag.FromFullToLeast(build, SheetFixture.Catalog)[0](Smallest), 95).InksAt(0, 0).OfType<TextInk>().ToList();
        Assert.Contains(inks, t => t.Text.Contains("flame-orange 8", StringComparison.Ordinal));
        Assert.Single(inks.Where(t => t.Text.Contains("36 1/8 in", StringComparison.Ordinal) || t.Text.Contains('±', StringComparison.Ordinal)).Select(t => t.Baseline).Distinct());
    }

    [Fact]
    public void Smallest_InANarrowRoom_BreaksNeitherOrderNorToleranceNorColor()
    {
        var set = SheetFixture.Compound(2);
        var build = set.Builds[1] with { Spec = set.Builds[1].Spec with { Order = "HOSTILE-2026-0001" } };
        var loop = TextOf(LoopTag.FromFullToLeast(build, SheetFixture.Catalog)[0](Smallest), 84);
        Assert.StartsWith("HOSTILE-2026-0001 | cable 2 | 36 1/8 in | ± 1/16 in | ", loop, StringComparison.Ordinal);
        var bag = TextOf(BagTag.FromFullToLeast(set, SheetFixture.Catalog, codeIsWhole: true)[0](Smallest), 100);
        Assert.Contains("| cable 2 36 1/8 in | red 8, silver 8, | flame-orange 8 |", bag, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(200, "1001 cable 2")]
    [InlineData(90, "1001 | cable 2")]
    [InlineData(60, null)]
    public void LabelName_InARoom_IsOnOneLineElseTwoElseSmaller(float width, string? expected)
    {
        var name = new LabelName("1001", "cable 2", LabelStyle.LargeToSmall[2].Title, MayBreak: false);
        Assert.Equal(expected, name.Place(TestFonts, new Room(width, 100)) is Placed ? TextOf(name, width) : null);
    }

    private static Fonts TestFonts => Tagend.Tests.Output.TestFonts.Shipped;

    private static IEnumerable<string> Bag(bool codeIsWhole) =>
        BagTag.FromFullToLeast(SheetFixture.Compound(2), SheetFixture.Catalog, codeIsWhole).Select(w => TextOf(w(Smallest)));

    /// <summary>Lines from the top, a bar between them.</summary>
    private static string TextOf(Block block, float width = 400) => string.Join(
        " | ",
        Laid.Out(block, width).InksAt(0, 0).OfType<TextInk>()
            .GroupBy(t => MathF.Round(t.Baseline))
            .OrderBy(g => g.Key)
            .Select(g => string.Join(' ', string.Join(' ', g.OrderBy(t => t.X).Select(t => t.Text))
                .Split(' ', StringSplitOptions.RemoveEmptyEntries))));
}
