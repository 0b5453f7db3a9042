using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Specs;

namespace Tagend.Pages;

/// <summary>The words on the tag of a bag.</summary>
internal static class BagTag
{
    /// <summary>
    /// From all to the least. What a small label leaves out, in this order: shop; bow and due date; colors; customer.
    /// Order, date and the pieces with their finished lengths are never left out.
    /// </summary>
    /// <param name="codeIsWhole">The code carries the whole texts of the pieces, not only their names.</param>
    public static IEnumerable<Func<LabelStyle, Block>> FromFullToLeast(BuildSet set, Shop shop, bool codeIsWhole)
    {
        for (var left = 4; left >= 0; left--)
        {
            var parts = left;
            yield return style => Of(set, shop, codeIsWhole, style, parts);
        }
    }

    private static Stack Of(BuildSet set, Shop shop, bool codeIsWhole, LabelStyle style, int parts)
    {
        var slip = set.Builds[0].Slip;
        var lines = new List<Block>();
        Add(parts > 3, string.Join(" · ", new[] { shop.Name, shop.Phone }.Where(t => t.Length > 0)));
        lines.Add(new Paragraph(set.Order, style.Title));
        if (parts > 0 && slip.Customer.Length > 0)
        {
            lines.Add(new Paragraph(slip.Customer, style.BodyBold));
        }

        Add(parts > 2, slip.Bow);
        Add(true, DateWriter.Iso(set.Builds[0].Spec.Date) + (parts > 2 && slip.Due.Length > 0 ? $" · due {slip.Due}" : ""));
        lines.Add(new Rule());
        lines.AddRange(set.Builds.Select(b => new Paragraph(
            [
                new Span(b.Spec.Piece, style.BodyBold),
                new Span($" {LengthWriter.Mark(b.Spec.FinishedLength, b.Spec.Unit)}", style.Body),
                new Span(parts > 1 ? $" · {LoopTag.Colors(b.Spec)}" : "", style.Body),
            ])));
        Add(!codeIsWhole, "Code: names of the pieces only; scan the loop tags.");
        return new Stack(lines, style.Gap);

        void Add(bool wanted, string text)
        {
            if (wanted && text.Length > 0)
            {
                lines.Add(new Paragraph(text, style.Body));
            }
        }
    }
}
