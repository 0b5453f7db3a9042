using Tagend.Catalog;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Problems;
using Tagend.Specs;

namespace Tagend.Pages.Sheet;

/// <summary>The customer sheets of sets, one a set.</summary>
public sealed class CustomerSheets : IPageKind
{
    public string Name => "sheets";

    public string Title => "customer sheet";

    public bool IsUsual => true;

    public string FromTag => "sheet";

    public IPageBatch Begin(ShopCatalog catalog, Fonts fonts, PageSetting setting)
    {
        var sheet = new CustomerSheet(catalog, fonts, setting.Language);
        return new PlainBatch(
            setting,
            fonts,
            set => [Lacking(set, catalog) is { } problem ? new Composed([], [problem]) : sheet.Of(set, setting.Paper.Sheet)],
            (sets, pages) => [new Document(Name, setting.Paper.Sheet, pages) { Language = sheet.LanguageTag(sets) }]);
    }

    /// <summary>A tag may name what the templates had once.</summary>
    private static Problem? Lacking(BuildSet set, ShopCatalog catalog) => set.Builds.Select(b => b.Spec).FirstOrDefault(
        spec => !catalog.Plans.ContainsKey(spec.Kind) || !catalog.Materials.ContainsKey(spec.Bundle.Material)) is { } strange
        ? new Problem(
            new Place(set.Order),
            null,
            $"the templates have no kind {strange.Kind} or no material {strange.Bundle.Material} any more, "
            + "and a customer sheet needs both; card and tag do not")
        : null;
}
