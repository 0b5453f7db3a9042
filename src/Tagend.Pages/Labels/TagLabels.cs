using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Problems;
using Tagend.Qr.Encode;
using Tagend.Specs;
using Tagend.Tags;

namespace Tagend.Pages.Labels;

/// <summary>One label, drawn from its top left.</summary>
public sealed record TagLabel(LabelStock Stock, IReadOnlyList<Ink> Inks)
{
    /// <summary>Title of the bookmark that leads to its page; null for none.</summary>
    public string? Bookmark { get; init; }
}

/// <summary>The labels of a set, or the problems that keep them off the stock.</summary>
public sealed record SetLabels(IReadOnlyList<TagLabel> Labels, IReadOnlyList<Problem> Problems);

/// <summary>The tags of sets on label stock: a bag tag a set and a loop tag a piece.</summary>
public static class TagLabels
{
    /// <summary>Around the words, in points; the code has its quiet zone.</summary>
    private const float Margin = 7;

    /// <summary>Texts that are named one by one where they do not fit.</summary>
    private const int MostReasons = 4;

    /// <summary>
    /// Each set's bag tag, then its loop tags, where both are on one stock or on rolls; else all bag tags, then all
    /// loop tags. On a label the code comes first, then as many words as fit: see <see cref="BagTag"/> and
    /// <see cref="LoopTag"/> for what is left out first, and <see cref="LabelStyle"/> for the smallest type.
    /// </summary>
    /// <param name="use">Of the first sheet of each stock: it may be part used. Whole where null.</param>
    /// <returns>The pages, or the problems of what does not fit.</returns>
    public static Composed Compose(
        IEnumerable<BuildSet> sets,
        ShopCatalog catalog,
        Fonts fonts,
        LabelStock bagStock,
        LabelStock loopStock,
        SheetUse? use = null)
    {
        var sheets = use ?? SheetUse.Whole;
        var made = sets.Select(set => Of(set, catalog, fonts, bagStock, loopStock, sheets)).ToList();
        List<Problem> problems = [.. made.SelectMany(m => m.Problems).Distinct()];
        return problems.Count > 0
            ? new Composed([], problems)
            : new Composed(Pages(made.SelectMany(m => m.Labels), sheets), []);
    }

    /// <summary>The labels of one set, its bag's first, or the problems of what does not fit.</summary>
    /// <param name="use">As of <see cref="Compose"/>.</param>
    public static SetLabels Of(
        BuildSet set, ShopCatalog catalog, Fonts fonts, LabelStock bagStock, LabelStock loopStock, SheetUse use)
    {
        if ((use.MisfitOn(bagStock) ?? use.MisfitOn(loopStock)) is { } misfit)
        {
            return new SetLabels([], [new Problem(new Place("tags"), null, misfit)]);
        }

        var problems = new List<Problem>();
        var labels = new List<TagLabel> { new(bagStock, Bag(set, catalog, fonts, bagStock, problems)) };
        labels.AddRange(set.Builds.Select(b => new TagLabel(loopStock, Loop(b, catalog, fonts, loopStock, problems))));
        return problems.Count > 0 ? new SetLabels([], problems) : new SetLabels(labels, []);
    }

    /// <summary>The pages of labels, in the order that <see cref="Compose"/> tells.</summary>
    /// <param name="use">Of the first sheet of each stock, which has the labels it names.</param>
    public static IReadOnlyList<Page> Pages(IEnumerable<TagLabel> labels, SheetUse use)
    {
        var all = labels.ToList();
        return all.TrueForAll(l => l.Stock.LabelsPerPage == 1)
            ? [.. all.Select(l => LabelPage.Of(l.Stock, [(1, l)]))]
            : [.. all.GroupBy(l => l.Stock).SelectMany(g => LabelPage.Fill(g.Key, g, use))];
    }

    /// <summary>The next free label of each stock of sheets when labels are printed, by its name.</summary>
    /// <param name="use">Of the first sheet of each stock.</param>
    internal static IReadOnlyDictionary<string, int> Next(IEnumerable<TagLabel> labels, SheetUse use) => labels
        .Where(l => l.Stock.LabelsPerPage > 1)
        .GroupBy(l => l.Stock)
        .ToDictionary(g => g.Key.Name, g => use.NextOn(g.Key, g.Count()));

    private static IReadOnlyList<Ink> Bag(
        BuildSet set, ShopCatalog catalog, Fonts fonts, LabelStock stock, List<Problem> problems)
    {
        var at = new Place($"bag tag {set.Order}");
        var whole = LabelCode.Of(TagWriter.Write(set), stock);
        var code = whole ?? LabelCode.Of(TagWriter.WriteContents(set), stock);
        return Lay(at, Say(set.Order, catalog), code, BagTag.FromFullToLeast(set, catalog, whole is not null), fonts, stock, problems);
    }

    private static IReadOnlyList<Ink> Loop(
        Build build, ShopCatalog catalog, Fonts fonts, LabelStock stock, List<Problem> problems)
    {
        var at = new Place($"loop tag {build.Spec.Order} {build.Spec.Piece}");
        var text = ProvenTag.Of(build.Spec, at, out var problem);
        if (problem is not null)
        {
            problems.Add(problem);
            return [];
        }

        var code = LabelCode.Of(text, stock);
        return Lay(at, Say($"{build.Spec.Order} {build.Spec.Piece}", catalog), code, LoopTag.FromFullToLeast(build, catalog), fonts, stock, problems);
    }

    private static string Say(string whose, ShopCatalog catalog) => catalog.Words.Say(PaperWord.TagCode, ("what", whose));

    /// <summary>
    /// The code at the left, the words beside it: the most words at the largest size that fits them all. Words that no
    /// height would make fit are a problem, not left out.
    /// </summary>
    /// <param name="codeInWords">For a screen reader.</param>
    internal static IReadOnlyList<Ink> Lay(
        Place at,
        string codeInWords,
        LabelCode? code,
        IReadOnlyList<Func<LabelStyle, Block>> wordings,
        Fonts fonts,
        LabelStock stock,
        List<Problem> problems)
    {
        if (code is null)
        {
            problems.Add(new Problem(
                at, null, $"a code that scans does not fit on {stock.Name} ({stock.Title}): choose a larger label"));
            return [];
        }

        var (width, height) = (Points.Of(stock.LabelWidth), Points.Of(stock.LabelHeight));
        var left = code.Side + code.Grid.Size; // a letter may reach out of its place by part of a dot
        var room = new Room(width - left - Margin, height - (2 * Margin));
        var last = wordings[0](LabelStyle.LargeToSmall[^1]).Place(fonts, room with { Height = Room.Endless });
        if (last is Placed)
        {
            foreach (var (wording, style) in wordings.SelectMany(w => LabelStyle.LargeToSmall.Select(s => (w, s))))
            {
                last = wording(style).Place(fonts, room);
                if (last is Placed words)
                {
                    var top = code.Grid.Before((height - code.Side) / 2);
                    var quiet = QrSymbol.QuietModules * code.Module;
                    return
                    [
                        new PartStart(PartKind.Figure, codeInWords),
                        new BarsInk(quiet, top + quiet, code.Module, code.Symbol.Bars),
                        PartEnd.Ink,
                        .. words.InksAt(left, (height - words.Height) / 2).Select(code.Grid.OnDots),
                    ];
                }
            }
        }

        var reasons = ((Misfit)last).Reasons;
        problems.AddRange(reasons.Take(MostReasons).Select(r => new Problem(at, null, $"{r}; on {stock.Name} ({stock.Title})")));
        if (reasons.Count > MostReasons)
        {
            problems.Add(new Problem(at, null, $"{reasons.Count - MostReasons} more texts do not fit on {stock.Name}: choose a larger label, or make two orders of this one"));
        }

        return [];
    }
}
