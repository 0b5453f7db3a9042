using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Pages.Parts;
using Tagend.Specs;

namespace Tagend.Pages.Labels;

/// <summary>The words on the tag of a bag.</summary>
internal static class BagTag
{
    /// <summary>
    /// From all to the least. What a small label leaves out, in this order: shop; bow and due date; colors; customer.
    /// Order, date and the pieces with their finished lengths are never left out.
    /// </summary>
    /// <param name="codeIsWhole">The code carries the whole texts of the pieces, not only names and revisions.</param>
    public static IReadOnlyList<Func<LabelStyle, Block>> FromFullToLeast(BuildSet set, ShopCatalog catalog, bool codeIsWhole) =>
        [.. Enumerable.Range(0, 5).Select(left => (Func<LabelStyle, Block>)(style => Of(set, catalog, codeIsWhole, style, 4 - left)))];

    private static Stack Of(BuildSet set, ShopCatalog catalog, bool codeIsWhole, LabelStyle style, int parts)
    {
        var (shop, words) = (catalog.Shop, catalog.Words);
        var write = new CardWriter(set.Builds[0].Spec.Unit, words);
        var slip = set.Builds[0].Slip;
        var colors = set.Builds.Select(b => LoopTag.Colors(b.Spec, write)).ToList();
        var oneColoring = colors.Distinct().Count() == 1;
        var lines = new List<Block> { new LabelName(set.Order, "", style.Title, style.IsSmallest) };
        if (parts > 0 && slip.Customer.Length > 0)
        {
            lines.Add(new Paragraph(slip.Customer, style.BodyBold));
        }

        Add(parts > 2, slip.Bow);
        lines.Add(new Rule(0.8f));
        lines.Add(new BagPieces(set, WithColors: parts > 1 && !oneColoring, style, write));
        lines.AddRange(set.Builds.Where(b => b.SupersededBy is not null).Select(b => new Paragraph($"{b.Spec.Piece}: {write.Superseded(b)}", style.BodyBold)));
        Add(parts > 1 && oneColoring, words.Say(PaperWord.TagColors, ("colors", colors[0])));
        lines.Add(new Rule(0.4f));
        Add(!codeIsWhole, words[PaperWord.TagCodeInPart]);
        var due = parts > 2 && slip.Due.Length > 0 ? $" · {words.Say(PaperWord.TagDue, ("due", slip.Due)).Replace(' ', '\u00A0')}" : "";
        Add(true, DateWriter.Iso(set.Builds.Max(b => b.Spec.Date)) + due);
        var contact = string.Join("\u00A0· ", new[] { shop.Name, shop.Phone.Replace(' ', '\u00A0') }.Where(t => t.Length > 0));
        if (parts > 3 && contact.Length > 0)
        {
            lines.Add(new Paragraph(contact, style.Body));
        }

        return new Stack(lines, style.Gap);

        void Add(bool wanted, string text)
        {
            if (wanted && text.Length > 0)
            {
                lines.Add(style.Line(text));
            }
        }
    }
}
