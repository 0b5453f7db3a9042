using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Pages.Parts;
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
    public static string Colors(BuildSpec spec, CardWriter write) =>
        string.Join(", ", spec.Layup.Colors.Select(c => $"{write.Color(c.Color)}\u00A0{c.Strands}"));

    private static Stack Of(Build build, ShopCatalog catalog, LabelStyle style, int parts)
    {
        var (spec, words) = (build.Spec, catalog.Words);
        var write = new CardWriter(spec.Unit, words);
        var lines = new List<Block>
        {
            new LabelName(spec.Order, spec.Piece, style.Title, style.IsSmallest),
            new Paragraph(
                [
                    new Span(Held(write.Mark(spec.FinishedLength)), style.Length),
                    new Span($" \u00A0{Held($"± {write.Mark(spec.Tolerance)}")}", style.Body),
                ]),
            new Rule(0.8f),
        };
        Add(parts > 0, words.Say(PaperWord.TagStrands, ("count", $"{spec.Bundle.Strands}"), ("colors", Colors(spec, write))));
        Add(parts > 1, words.Term(catalog.Materials.GetValueOrDefault(spec.Bundle.Material)?.Title ?? spec.Bundle.Material));
        Add(parts > 2, words.Kind(catalog.Plans.GetValueOrDefault(spec.Kind)?.Title ?? spec.Kind));
        Add(parts > 2, build.Slip.Bow);
        var turns = parts > 1 ? $"{Held(write.Turns($"{spec.Twist.Turns}"))}\u00A0· " : "";
        Add(true, $"{turns}{Held(words.Say(PaperWord.Rev, ("revision", $"{spec.Revision}")))}\u00A0· {DateWriter.Iso(spec.Date)}");
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
