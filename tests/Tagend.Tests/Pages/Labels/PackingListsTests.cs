using Tagend.Output;
using Tagend.Pages.Labels;
using Tagend.Pages.Parts;
using Tagend.Specs;
using Tagend.Tests.Output;
using Xunit;

namespace Tagend.Tests.Pages;

public sealed class PackingListsTests
{
    [Fact]
    public void List_OfASet_HasASquareForEachPieceAndAccessory()
    {
        var set = SheetFixture.With(SheetFixture.Compound(3), slip => slip with { Accessories = ["loop", "silencers A 12 in"] });
        var label = Assert.Single(Of(set, "roll-4x2").Labels);

        Assert.Equal(
            ["PACKING LIST  D-101", "Jo Sample", "string · 60 1/4 in", "cable 2 · 36 1/8 in", "cable 3 · 37 1/8 in", "loop", "silencers A 12 in"],
            label.Inks.OfType<TextInk>().Select(t => t.Text));
        Assert.Equal(5, label.Inks.OfType<BoxInk>().Count(b => Math.Abs(b.Width - b.Height) < 0.01f));
    }

    [Theory]
    [InlineData("roll-4x2", 12, true)]
    [InlineData("roll-3x1.25", 12, false)]
    public void List_OfManyThings_FitsOrSaysSo(string stock, int things, bool fits)
    {
        var set = SheetFixture.With(SheetFixture.Compound(1), slip => slip with { Accessories = [.. Enumerable.Range(1, things).Select(i => $"thing {i}")] });
        var made = Of(set, stock);

        Assert.Equal(fits, made.Labels.Count == 1);
        Assert.Equal(!fits, made.Problems.Any(p => p.ToString().StartsWith("packing list D-101: ", StringComparison.Ordinal)));
    }

    private static SetLabels Of(BuildSet set, string stock) =>
        PackingLists.Of(set, SheetFixture.Catalog, TestFonts.Shipped, SheetFixture.Catalog.Stocks[stock], SheetUse.Whole);
}
