using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Specs;

namespace Tagend.Pages;

/// <summary>The words on the tag of a loop.</summary>
internal static class LoopTag
{
    /// <summary>
    /// From all to the least. What a small label leaves out, in this order: bow and kind; material and turns; colors.
    /// Piece, order, revision, date and finished length are never left out.
    /// </summary>
    public static IEnumerable<Func<LabelStyle, Block>> FromFullToLeast(Build build, ShopCatalog catalog)
    {
        for (var left = 3; left >= 0; left--)
        {
            var parts = left;
            yield return style => Of(build, catalog, style, parts);
        }
    }

    private static Stack Of(Build build, ShopCatalog catalog, LabelStyle style, int parts)
    {
        var spec = build.Spec;
        var lines = new List<Block>
        {
            new Paragraph($"{spec.Order} {spec.Piece}", style.Title),
            new Paragraph($"rev {spec.Revision} · {DateWriter.Iso(spec.Date)}", style.Body),
            new Paragraph(
                [
                    new Span(LengthWriter.Mark(spec.FinishedLength, spec.Unit), style.Length),
                    new Span($" ± {LengthWriter.Mark(spec.Tolerance, spec.Unit)}", style.Body),
                ]),
        };
        if (parts > 0)
        {
            lines.Add(new Paragraph($"{spec.Bundle.Strands} strands: {Colors(spec)}", style.Body));
        }

        if (parts > 1)
        {
            var material = catalog.Materials.GetValueOrDefault(spec.Bundle.Material)?.Title ?? spec.Bundle.Material;
            lines.Add(new Paragraph($"{material} · {spec.Twist.Turns}\u00A0turns", style.Body));
        }

        if (parts > 2)
        {
            lines.Add(new Paragraph(catalog.Plans.GetValueOrDefault(spec.Kind)?.Title ?? spec.Kind, style.Body));
            lines.AddRange(build.Slip.Bow.Length > 0 ? [new Paragraph(build.Slip.Bow, style.Body)] : []);
        }

        return new Stack(lines, style.Gap);
    }

    /// <summary><c>black 12, red 12</c>, each held together.</summary>
    public static string Colors(BuildSpec spec) => string.Join(", ", spec.Layup.Colors.Select(c => $"{c.Color}\u00A0{c.Strands}"));
}
