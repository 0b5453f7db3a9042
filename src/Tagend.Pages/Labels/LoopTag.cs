using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Specs;

namespace Tagend.Pages.Labels;

/// <summary>The words on the tag of a loop.</summary>
internal static class LoopTag
{
    /// <summary>
    /// From all to the least. What a small label leaves out, in this order: bow and kind; material and turns; colors.
    /// Order, piece, finished length, revision and date are never left out.
    /// </summary>
    public static IReadOnlyList<Func<LabelStyle, Block>> FromFullToLeast(Build build, ShopCatalog catalog) =>
        [.. Enumerable.Range(0, 4).Select(left => (Func<LabelStyle, Block>)(style => Of(build, catalog, style, 3 - left)))];

    /// <summary><c>black 12, red 12</c>, each held together.</summary>
    public static string Colors(BuildSpec spec) =>
        string.Join(", ", spec.Layup.Colors.Select(c => $"{c.Color}\u00A0{c.Strands}"));

    private static Stack Of(Build build, ShopCatalog catalog, LabelStyle style, int parts)
    {
        var spec = build.Spec;
        var lines = new List<Block>
        {
            new LabelName(spec.Order, spec.Piece, style.Title, style.IsSmallest),
            new Paragraph(
                [
                    new Span(Held(LengthWriter.Mark(spec.FinishedLength, spec.Unit)), style.Length),
                    new Span($" \u00A0{Held($"± {LengthWriter.Mark(spec.Tolerance, spec.Unit)}")}", style.Body),
                ]),
            new Rule(0.8f),
        };
        Add(parts > 0, $"{spec.Bundle.Strands} strands: {Colors(spec)}");
        Add(parts > 1, catalog.Materials.GetValueOrDefault(spec.Bundle.Material)?.Title ?? spec.Bundle.Material);
        Add(parts > 2, catalog.Plans.GetValueOrDefault(spec.Kind)?.Title ?? spec.Kind);
        Add(parts > 2, build.Slip.Bow);
        var turns = parts > 1 ? $"{spec.Twist.Turns}\u00A0turns · " : "";
        Add(true, $"{turns}rev\u00A0{spec.Revision} · {DateWriter.Iso(spec.Date)}");
        return new Stack(lines, style.Gap);

        void Add(bool wanted, string text)
        {
            if (wanted && text.Length > 0)
            {
                lines.Add(style.Line(text));
            }
        }
    }

    private static string Held(string text) => text.Replace(' ', '\u00A0');
}
