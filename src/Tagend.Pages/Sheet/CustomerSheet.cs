using System.Collections.Concurrent;
using Tagend.Catalog;
using Tagend.Logos;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Problems;
using Tagend.Specs;

namespace Tagend.Pages.Sheet;

/// <summary>The sheet a customer gets with a set: what is in the bag, how to fit it, what never to do.</summary>
/// <remarks>The catalog's folder has the texts, sheets/KIND.LANGUAGE.md, and the words beside them.</remarks>
public sealed class CustomerSheet
{
    /// <summary>A sheet and its back.</summary>
    private const int MostPages = 2;

    private readonly ShopCatalog _catalog;
    private readonly Fonts _fonts;
    private readonly SheetLanguage? _language;
    private readonly List<Problem> _problems = [];
    private readonly string _name;
    private readonly Picture? _logo;
    private readonly ConcurrentDictionary<BowSystem, (SheetTemplate? Template, IReadOnlyList<Problem> Problems)> _templates = [];

    /// <param name="language">As the texts' file names have it; the shop's where it is null.</param>
    /// <exception cref="TagendException">There is no such language, or a file cannot be read.</exception>
    public CustomerSheet(ShopCatalog catalog, Fonts fonts, string? language = null)
    {
        (_catalog, _fonts) = (catalog, fonts);
        _name = language ?? catalog.Shop.Language;
        _language = SheetLanguageReader.Read(catalog.Folder, _name, _problems);
        _logo = catalog.Shop.Logo is { } path ? Logo.Read(path, _problems) : null;
    }

    /// <summary>Of the texts, as PDFs name it.</summary>
    public string LanguageTag => _language?.Tag ?? _name;

    /// <summary>All that is wrong with the texts of a templates folder, in every language it has words for, and with a logo.</summary>
    /// <exception cref="TagendException">A text or the logo cannot be read.</exception>
    public static IReadOnlyList<Problem> Check(string folder, string? logo = null)
    {
        var problems = new List<Problem>();
        if (logo is not null)
        {
            Logo.Read(logo, problems);
        }

        foreach (var language in SheetLanguageReader.Languages(folder))
        {
            SheetLanguageReader.Read(folder, language, problems);
            problems.AddRange(Enum.GetValues<BowSystem>().SelectMany(s => SheetTemplate.Read(FileOf(folder, s, language)).Problems));
        }

        return problems;
    }

    /// <summary>The sheet of a set; one for each kind of bow, should its pieces be for several.</summary>
    /// <exception cref="TagendException">A text cannot be read or filled in.</exception>
    public Composed Of(BuildSet set, Paper paper)
    {
        if (_language is not { } language || _problems.Count > 0)
        {
            return new Composed([], _problems);
        }

        var writer = new SheetWriter(language);
        var sheets = set.Builds
            .GroupBy(b => _catalog.Plans[b.Spec.Kind].System)
            .Select(g => Of(g.Key, new SheetData(set.Order, [.. g], _catalog, writer), language, paper))
            .ToList();
        return new Composed([.. sheets.SelectMany(s => s.Pages)], [.. sheets.SelectMany(s => s.Problems)]);
    }

    private Composed Of(BowSystem system, SheetData data, SheetLanguage language, Paper paper)
    {
        var file = FileOf(_catalog.Folder, system, _name);
        var (template, problems) = _templates.GetOrAdd(system, _ => SheetTemplate.Read(file));
        if (template is null)
        {
            return new Composed([], problems);
        }

        var text = new SheetMarkdown(template.Fill(data));
        var drawn = new Drawn(language, style => new SheetDrawing(data, style));
        var sheet = Roomiest(MostPages);
        return sheet.Pages.Count > MostPages ? Roomiest(sheet.Pages.Count) : sheet; // if it takes more, no denser than that asks for

        Composed Roomiest(int most) => StyleSearch.Roomiest(SheetStyle.LooseToDense, Lay, pages => pages.Pages.Count > 0 && pages.Pages.Count <= most);

        Composed Lay(SheetStyle loose)
        {
            var style = loose with { Accent = _catalog.Shop.Accent };
            var blocks = MarkdownBlocks.Of(text, template.Find, style, drawn);
            return blocks.Problems.Count > 0
                ? new Composed([], blocks.Problems)
                : new SheetLayout(_fonts, paper, style, _catalog.Shop, _logo).Of(blocks, new Place($"customer sheet {data.Order}"));
        }
    }

    private static string FileOf(string folder, BowSystem system, string language) =>
        Path.Combine(folder, "sheets", $"{system.ToString().ToLowerInvariant()}.{language}.md");
}
