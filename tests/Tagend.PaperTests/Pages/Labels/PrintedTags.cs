using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Output;
using Tagend.Pages.Labels;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Tags;
using Xunit;

namespace Tagend.PaperTests.Pages;

/// <summary>The tags of the demo orders on a stock, and the texts their codes must say.</summary>
/// <param name="BagStock">With the dots they are drawn on.</param>
internal sealed record PrintedTags(LabelStock BagStock, LabelStock LoopStock, IReadOnlyList<Page> Pages, IReadOnlyList<string> Texts)
{
    private static readonly ShopCatalog Catalog = ReadCatalog();

    /// <param name="dotsPerInch">Of the printer they are drawn for; null for what the stock says.</param>
    /// <param name="orders">Of the demo; null for all.</param>
    public static PrintedTags Of(
        string bagStock, string loopStock, int? dotsPerInch = null, params IReadOnlyList<string> orders)
    {
        var (bag, loop) = (Drawn(Catalog.Stocks[bagStock]), Drawn(Catalog.Stocks[loopStock]));
        var file = OrderReader.Read(
            Path.Combine(Sample.Templates, "..", "demo-orders", "demo.csv"), LengthUnit.Inch, Catalog.Shop.Columns);
        var report = SetBuilder.Build(file, new SpecBuilder(Catalog, LengthUnit.Inch, Sample.Date));
        Assert.Equal(7, report.MakeSets().Count);
        List<BuildSet> sets = [.. report.MakeSets().Where(s => orders.Count == 0 || orders.Contains(s.Order))];
        return new PrintedTags(bag, loop, Compose(sets, bag, loop), [.. sets.SelectMany(TextsOf)]);

        LabelStock Drawn(LabelStock stock) => stock with { DotsPerInch = dotsPerInch ?? stock.DotsPerInch };

        IEnumerable<string> TextsOf(BuildSet set)
        {
            var words = Compose([set], bag, loop)[0].Inks.OfType<TextInk>().Select(t => t.Text);
            var contentsOnly = words.Any(t => t.StartsWith("Code: pieces and", StringComparison.Ordinal));
            return
            [
                contentsOnly ? TagWriter.WriteContents(set) : TagWriter.Write(set),
                .. set.Builds.Select(b => TagWriter.Write(b.Spec)),
            ];
        }
    }

    private static IReadOnlyList<Page> Compose(IReadOnlyList<BuildSet> sets, LabelStock bag, LabelStock loop)
    {
        var composed = TagLabels.Compose(sets, Catalog, Sample.Fonts, bag, loop);
        Assert.Empty(composed.Problems);
        return composed.Pages;
    }

    private static ShopCatalog ReadCatalog()
    {
        var problems = new List<Problem>();
        var catalog = CatalogReader.Read(Sample.Templates, problems);
        Assert.Empty(problems);
        return catalog!;
    }
}
