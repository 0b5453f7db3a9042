using System.Collections.Concurrent;
using Tagend.Catalog;
using Tagend.Logos;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Problems;
using Tagend.Specs;

namespace Tagend.Pages.Sheet;

/// <summary>The sheet a customer gets with a set: what is in the bag, how to fit it, what never to do.</summary>
/// <remarks>The catalog's folder has the texts, sheets/BOW.LANGUAGE.md.</remarks>
public sealed class CustomerSheet
{
    private const string NoSystem =
        "nothing says what bow it is for, and a sheet for another kind of bow could hurt: give the piece a kind in the order";

    /// <summary>A sheet and its back.</summary>
    private const int MostPages = 2;

    private readonly ShopCatalog _catalog;
    private readonly Fonts _fonts;
    private readonly string? _asked;
    private readonly List<Problem> _ofLogo = [];
    private readonly Picture? _logo;
    private readonly ConcurrentDictionary<string, (PaperLanguage? Language, IReadOnlyList<Problem> Problems)> _languages = [];
    private readonly ConcurrentDictionary<(BowSystem, string), (SheetTemplate? Template, IReadOnlyList<Problem> Problems)> _templates = [];

    private readonly ConcurrentDictionary<(string File, int Most), StyleSearch<SheetStyle>> _searches = [];

    /// <param name="language">Of all sheets, as the files of words are named; each order's own, else the shop's, where it is null.</param>
    /// <exception cref="TagendException">There is no such language, or a file cannot be read.</exception>
    public CustomerSheet(ShopCatalog catalog, Fonts fonts, string? language = null)
    {
        (_catalog, _fonts, _asked) = (catalog, fonts, language);
        if (language is not null)
        {
            LanguageOf(language);
        }

        _logo = catalog.Shop.Logo is { } path ? Logo.Read(path, _ofLogo) : null;
    }

    /// <summary>Of the texts of some sets, as PDFs name it; the shop's where they differ.</summary>
    public string LanguageTag(IEnumerable<BuildSet> sets)
    {
        var names = sets.Select(NameOf).Distinct().Take(2).ToList();
        return names is [var name] && LanguageOf(name).Language is { } language ? language.Tag : _catalog.Words.Tag;
    }

    /// <summary>All that is wrong with the texts of a templates folder, in every language it has words for, and with a logo.</summary>
    /// <exception cref="TagendException">A text or the logo cannot be read.</exception>
    public static IReadOnlyList<Problem> Check(string folder, string? logo = null)
    {
        var problems = new List<Problem>();
        if (logo is not null)
        {
            Logo.Read(logo, problems);
        }

        foreach (var language in PaperLanguageReader.Languages(folder))
        {
            PaperLanguageReader.Read(folder, language, problems);
            problems.AddRange(Enum.GetValues<BowSystem>().SelectMany(s => SheetTemplate.Read(FileOf(folder, s, language)).Problems));
        }

        return problems;
    }

    /// <summary>The sheet of a set; one for each kind of bow, should its pieces be for several.</summary>
    /// <exception cref="TagendException">A text cannot be read or filled in.</exception>
    public Composed Of(BuildSet set, Paper paper)
    {
        var (read, problems) = LanguageOf(NameOf(set));
        if (read is not { } language || _ofLogo.Count > 0)
        {
            return new Composed([], [.. problems, .. _ofLogo]);
        }

        var systems = set.Builds.Select(SystemOf).OfType<BowSystem>().Distinct().ToList();
        if (systems.Count != 1 && set.Builds.FirstOrDefault(b => SystemOf(b) is null) is { } unknown)
        {
            return new Composed([], [new Problem(Whose(set.Order), unknown.Spec.Piece, NoSystem)]);
        }

        var writer = new SheetWriter(language);
        var sheets = set.Builds
            .GroupBy(b => SystemOf(b) ?? systems[0])
            .Select(g => Of(g.Key, new SheetData(set.Order, [.. g], _catalog, writer), paper))
            .ToList();
        return new Composed([.. sheets.SelectMany(s => s.Pages).Select(page => page with { Language = language.Tag })], [.. sheets.SelectMany(s => s.Problems)]);
    }

    private static Place Whose(string order) => new($"customer sheet {order}");

    private BowSystem? SystemOf(Build build) => _catalog.Plans.GetValueOrDefault(build.Spec.Kind)?.System;

    /// <summary>What was asked for, else what the order says, else the shop's own.</summary>
    private string NameOf(BuildSet set) =>
        _asked ?? set.Builds.Select(b => b.Slip.Language).FirstOrDefault(l => l.Length > 0) ?? _catalog.Shop.Language;

    private (PaperLanguage? Language, IReadOnlyList<Problem> Problems) LanguageOf(string name) => _languages.GetOrAdd(name, n =>
    {
        if (n == _catalog.Words.Name)
        {
            return (_catalog.Words, []);
        }

        var problems = new List<Problem>();
        return (PaperLanguageReader.Read(_catalog.Folder, n, problems), problems);
    });

    private Composed Of(BowSystem system, SheetData data, Paper paper)
    {
        var language = data.Write.Language;
        var file = FileOf(_catalog.Folder, system, language.Name);
        var (template, problems) = _templates.GetOrAdd(
            (system, language.Name), _ => SheetTemplate.Read(file));
        if (template is null)
        {
            return new Composed([], problems);
        }

        if (SheetMarkdown.Parse(template.Fill(data)) is not { } text)
        {
            return new Composed([], [new Problem(new Place(file), null, "lists, panels or quotes stand within each other too often: a sheet needs two or three levels")]);
        }

        var write = new CardWriter(data.Unit, language);
        var marks = data.Builds.Where(b => b.SupersededBy is not null).Select(b => $"{b.Spec.Piece}: {write.Superseded(b)}").ToList();
        var drawn = new Drawn(language, style => new SheetDrawing(data, style));
        var sheet = Roomiest(MostPages);
        return sheet.Pages.Count > MostPages ? Roomiest(sheet.Pages.Count) : sheet; // if it takes more, no denser than that asks for

        Composed Roomiest(int most) => _searches.GetOrAdd((file, most), _ => new StyleSearch<SheetStyle>(SheetStyle.LooseToDense, SheetStyle.Likely))
            .Roomiest(Lay, pages => pages.Pages.Count > 0 && pages.Pages.Count <= most);

        Composed Lay(SheetStyle loose)
        {
            var style = loose with { Accent = _catalog.Shop.Accent };
            var blocks = MarkdownBlocks.Of(text, template.Find, style, drawn);
            return blocks.Problems.Count > 0
                ? new Composed([], blocks.Problems)
                : new SheetLayout(_fonts, paper, style, _catalog.Shop, _logo).Of(blocks, marks, Whose(data.Order));
        }
    }

    private static string FileOf(string folder, BowSystem system, string language) =>
        Path.Combine(folder, "sheets", $"{system.ToString().ToLowerInvariant()}.{language}.md");
}
