using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Output;
using Tagend.Pages;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Tags;
using Xunit;

namespace Tagend.PaperTests.Pages;

/// <summary>The tags of the demo orders on a stock, and the texts their codes must say.</summary>
internal sealed record PrintedTags(LabelStock LoopStock, IReadOnlyList<Page> Pages, IReadOnlyList<string> Texts)
{
    private static readonly ShopCatalog Catalog = ReadCatalog();

    public static PrintedTags Of(string bagStock, string loopStock)
    {
        var file = OrderReader.Read(
            Path.Combine(Sample.Templates, "..", "demo-orders", "demo.csv"), LengthUnit.Inch, Catalog.Shop.Columns);
        var report = SetBuilder.Build(file, new SpecBuilder(Catalog, LengthUnit.Inch, Sample.Date));
        Assert.Equal(7, report.Sets.Count);
        return new PrintedTags(
            Catalog.Stocks[loopStock], Compose(report.Sets, bagStock, loopStock), [.. report.Sets.SelectMany(TextsOf)]);

        IEnumerable<string> TextsOf(BuildSet set)
        {
            var words = Compose([set], bagStock, loopStock)[0].Inks.OfType<TextInk>().Select(t => t.Text);
            var contentsOnly = words.Any(t => t.StartsWith("Code: pieces and", StringComparison.Ordinal));
            return
            [
                contentsOnly ? TagWriter.WriteContents(set) : TagWriter.Write(set),
                .. set.Builds.Select(b => TagWriter.Write(b.Spec)),
            ];
        }
    }

    private static IReadOnlyList<Page> Compose(IReadOnlyList<BuildSet> sets, string bagStock, string loopStock)
    {
        var composed = TagLabels.Compose(sets, Catalog, Sample.Fonts, Catalog.Stocks[bagStock], Catalog.Stocks[loopStock]);
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
