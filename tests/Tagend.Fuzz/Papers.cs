using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Card;
using Tagend.Pages.Labels;
using Tagend.Pages.Parts;
using Tagend.Pages.Pull;
using Tagend.Pages.Sheet;
using Tagend.Pages.Strip;
using Tagend.Specs;
using Tagend.Tags;

namespace Tagend.Fuzz;

/// <summary>Composes one of a set's papers, and now and then writes it.</summary>
internal sealed class Papers(Fonts fonts, Mutation mutation)
{
    private const int WrittenOneIn = 8;
    private const int LongestWritten = 20;

    /// <summary>All papers that <c>print</c> makes of orders.</summary>
    public void OfOrder(BuildSet set, ShopCatalog catalog)
    {
        var build = mutation.Pick(set.Builds.ToList());
        Hold(mutation.Random.Next(8) switch
        {
            0 or 1 => Strip(build, catalog),
            2 => PullSheet.Compose(BatchPull.Of(set.Builds.Select(b => b.Spec), catalog.Shop)!, set.Builds.Take(1).ToDictionary(b => b.Spec.Order, b => b.Slip), catalog, SheetPaper, fonts),
            _ => null,
        });
        OfTag(set, catalog);
    }

    /// <summary>Every paper there is, of a spec that nobody has made.</summary>
    public void OfForged(BuildSet set, ShopCatalog catalog)
    {
        Hold(mutation.OneIn(3) ? Strip(mutation.Pick(set.Builds.ToList()), catalog) : null);
        OfTag(set, catalog);
    }

    /// <summary>The papers that <c>recall</c> makes of tags.</summary>
    public void OfTag(BuildSet set, ShopCatalog catalog)
    {
        var build = mutation.Pick(set.Builds.ToList());
        var isKnown = set.Builds.All(b => catalog.Plans.ContainsKey(b.Spec.Kind) && catalog.Materials.ContainsKey(b.Spec.Bundle.Material));
        Hold(mutation.Random.Next(4) switch
        {
            0 => Tags(set, catalog),
            1 when isKnown => new CustomerSheet(catalog, fonts).Of(set, SheetPaper),
            _ => JigCard.Compose(build, catalog, TagWriter.Write(build.Spec), mutation.OneIn(2) ? Paper.HalfLetter : Paper.A5, fonts),
        });
    }

    private Paper SheetPaper => mutation.OneIn(2) ? Paper.Letter : Paper.A4;

    private Composed Strip(Build build, ShopCatalog catalog) => MarkingStrip.Compose(
        build,
        catalog,
        mutation.OneIn(2) ? StripStock.Sheet(SheetPaper) : StripStock.Roll(Length.FromMillimeters(mutation.Random.Next(50, 300))),
        mutation.OneIn(2) ? StripPositions.OnJig : StripPositions.Finished,
        fonts);

    private Composed Tags(BuildSet set, ShopCatalog catalog)
    {
        var stocks = catalog.Stocks.Values.ToList();
        return stocks.Count == 0
            ? new Composed([], [])
            : TagLabels.Compose([set], catalog, fonts, mutation.Pick(stocks), mutation.Pick(stocks));
    }

    private void Hold(Composed? composed)
    {
        Corpus.Hold(composed?.Problems ?? []);
        if (composed?.Pages.Count is > 0 and < LongestWritten && mutation.OneIn(WrittenOneIn))
        {
            PdfFile.Write(composed.Pages, fonts, new PdfNote("Fuzz", new DateOnly(2026, 3, 14)), new MemoryStream());
        }
    }
}
