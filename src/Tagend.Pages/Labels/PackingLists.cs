using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Problems;
using Tagend.Specs;

namespace Tagend.Pages.Labels;

/// <summary>A label a bag with squares to tick: its pieces, and what is packed with them. For the bag's other side.</summary>
public sealed class PackingLists : IPageKind
{
    /// <summary>Around the words, in points.</summary>
    private const float Margin = 9;

    public string Name => "packing";

    public string Title => "packing list";

    public bool IsUsual => false;

    public IPageBatch Begin(ShopCatalog catalog, Fonts fonts, PageSetting setting) => new Batch(catalog, fonts, setting, Name);

    /// <summary>The label of one set, or the problems of what does not fit.</summary>
    internal static SetLabels Of(BuildSet set, ShopCatalog catalog, Fonts fonts, LabelStock stock, SheetUse use)
    {
        var at = new Place($"packing list {set.Order}");
        if (use.MisfitOn(stock) is { } misfit)
        {
            return new SetLabels([], [new Problem(new Place("packing lists"), null, misfit)]);
        }

        var (grid, height) = (DotGrid.Of(stock), Points.Of(stock.LabelHeight));
        var room = new Room(Points.Of(stock.LabelWidth) - (2 * Margin), height - (2 * Margin));
        Placement last = new Misfit("");
        foreach (var style in LabelStyle.LargeToSmall)
        {
            last = Words(set, catalog, style).Place(fonts, room);
            if (last is Placed words)
            {
                return new SetLabels([new TagLabel(stock, [.. words.InksAt(Margin, Margin).Select(grid.OnDots)])], []);
            }
        }

        return new SetLabels([], [.. ((Misfit)last).Reasons.Select(r => new Problem(at, null, $"{r}; on {stock.Name} ({stock.Title})"))]);
    }

    private static Stack Words(BuildSet set, ShopCatalog catalog, LabelStyle style)
    {
        var write = new CardWriter(set.Builds[0].Spec.Unit, catalog.Words);
        var customer = set.Builds[0].Slip.Customer;
        var title = $"{catalog.Words[PaperWord.TagPacking]}\u00A0\u00A0{set.Order}";
        return new Stack(
            [
                new Paragraph(title, style.BodyBold with { Size = style.Body.Size * 1.4f }),
                .. customer.Length > 0 ? [style.Line(customer)] : (IEnumerable<Block>)[],
                new Rule(0.8f),
                .. set.Builds.Select(b => new Checkbox(style.Line($"{b.Spec.Piece} · {write.Mark(b.Spec.FinishedLength)}"))),
                .. set.Builds.SelectMany(b => b.Slip.Accessories).Distinct().Select(a => new Checkbox(style.Line(a))),
            ],
            style.Gap);
    }

    private sealed class Batch(ShopCatalog catalog, Fonts fonts, PageSetting setting, string name) : IPageBatch
    {
        private readonly LabelBatch _labels = new(name, [setting.BagStock], setting, fonts);

        public LaidSet Lay(BuildSet set)
        {
            var made = Of(set, catalog, fonts, setting.BagStock, setting.Use);
            return new LaidSet(made.Problems, () => _labels.Keep(made.Labels.Select(l => l with { Bookmark = Bookmark.Of(set) })));
        }

        public Bound Bind(Lazy<BatchPull> pull) => new(_labels.Documents(), []);
    }
}
