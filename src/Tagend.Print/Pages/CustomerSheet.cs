using System.Collections.Concurrent;
using Tagend.Catalog;
using Tagend.Output;
using Tagend.Problems;
using Tagend.Specs;

namespace Tagend.Pages;

/// <summary>The sheet a customer gets with a set: what is in the bag, how to fit it, what never to do.</summary>
/// <param name="catalog">Its folder has the texts: sheets/KIND.LANGUAGE.md.</param>
/// <param name="language">As the texts' file names have it.</param>
public sealed class CustomerSheet(ShopCatalog catalog, Fonts fonts, string language = "en")
{
    /// <summary>A sheet and its back.</summary>
    private const int MostPages = 2;

    private readonly ConcurrentDictionary<BowSystem, (SheetTemplate? Template, IReadOnlyList<Problem> Problems)> _templates = [];

    /// <summary>All that is wrong with the texts of a templates folder.</summary>
    /// <exception cref="TagendException">A text cannot be read.</exception>
    public static IReadOnlyList<Problem> Check(string folder, string language = "en") =>
        [.. Enum.GetValues<BowSystem>().SelectMany(s => SheetTemplate.Read(FileOf(folder, s, language)).Problems)];

    /// <summary>The sheet of a set; one for each kind of bow, should its pieces be for several.</summary>
    /// <exception cref="TagendException">A text cannot be read or filled in.</exception>
    public Composed Of(BuildSet set, Paper paper)
    {
        var sheets = set.Builds
            .GroupBy(b => catalog.Plans[b.Spec.Kind].System)
            .Select(g => Of(g.Key, new SheetData(set.Order, [.. g], catalog), paper))
            .ToList();
        return new Composed([.. sheets.SelectMany(s => s.Pages)], [.. sheets.SelectMany(s => s.Problems)]);
    }

    private Composed Of(BowSystem system, SheetData data, Paper paper)
    {
        var file = FileOf(catalog.Folder, system, language);
        var (template, problems) = _templates.GetOrAdd(system, _ => SheetTemplate.Read(file));
        if (template is null)
        {
            return new Composed([], problems);
        }

        var markdown = template.Fill(data);
        Composed? pages = null;
        foreach (var style in SheetStyle.LooseToDense)
        {
            var text = MarkdownBlocks.Of(markdown, template.PlaceOf, style);
            if (text.Problems.Count > 0)
            {
                return new Composed([], text.Problems);
            }

            pages = new SheetLayout(fonts, paper, style, catalog.Shop).Of(text, new Place(file));
            if (pages.Pages.Count is > 0 and <= MostPages)
            {
                break;
            }
        }

        return pages!;
    }

    private static string FileOf(string folder, BowSystem system, string language) =>
        Path.Combine(folder, "sheets", $"{system.ToString().ToLowerInvariant()}.{language}.md");
}
