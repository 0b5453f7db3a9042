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
    /// From all to the least. What a small label leaves out, in this order: bow and kind; material, lots and turns; colors and
    /// the end it is tied to. Order, piece, finished length, revision and date are never left out.
    /// </summary>
    public static IReadOnlyList<Func<LabelStyle, Block>> FromFullToLeast(Build build, ShopCatalog catalog) =>
        [.. Enumerable.Range(0, 4).Select(left => (Func<LabelStyle, Block>)(style => Of(build, catalog, style, 3 - left)))];

    /// <summary><c>black 12, red 12</c>, each held together: no name is broken.</summary>
    public static string Colors(BuildSpec spec, CardWriter write) =>
        string.Join(", ", spec.Layup.Colors.Select(c => $"{Held(write.Color(c.Color))}\u00A0{c.Strands}"));

    private static Stack Of(Build build, ShopCatalog catalog, LabelStyle style, int parts)
    {
        var (spec, words) = (build.Spec, catalog.Words);
        var write = new CardWriter(spec.Unit, words);
        List<Block> lines =
        [
            new LabelName(spec.Order, spec.Piece, style.Title, style.IsSmallest),
            new OneLine(
                new Paragraph(
                [
                    new Span(Held(write.Mark(spec.FinishedLength)), style.Length),
                    new Span(Held($"  ± {write.Mark(spec.Tolerance)}"), style.Body),
                ]),
                style.IsSmallest),
            .. Superseded(build, style, write),
            .. build.Measured is { } measured
                ? [style.Line(words.Say(PaperWord.TagMeasured, ("length", Held(write.Mark(measured.Length))), ("date", Held(DateWriter.Iso(measured.Date)))))]
                : (IEnumerable<Block>)[],
            new Rule(0.8f),
        ];
        if (parts > 0)
        {
            lines.Add(new TieHere(style.Line(words.Say(PaperWord.TagTie, ("end", EndA(spec, catalog, write))))));
        }

        Add(parts > 0, words.Say(PaperWord.TagStrands, ("count", $"{spec.Bundle.Strands}"), ("colors", Colors(spec, write))));
        Add(parts > 1, words.Term(catalog.Materials.GetValueOrDefault(spec.Bundle.Material)?.Title ?? spec.Bundle.Material));
        Add(parts > 1, write.Lots(spec));
        Add(parts > 2, words.Kind(catalog.Plans.GetValueOrDefault(spec.Kind)?.Title ?? spec.Kind));
        Add(parts > 2, build.Slip.Bow);
        var issue = Held($"{words.Say(PaperWord.Rev, ("revision", $"{spec.Revision}"))} · {DateWriter.Iso(spec.Date)}");
        lines.Add(parts > 1
            ? new OneLine(
                new Paragraph([new Span(Held($"{write.Turns(CardWriter.TurnsToPutIn(spec))} {spec.Twist.Hand}"), style.Body), new Span(Held($" · {issue}"), style.Body)]),
                MayBreak: true)
            : new Paragraph(issue, style.Body));
        return new Stack(lines, style.Gap);

        void Add(bool wanted, string text)
        {
            if (wanted && text.Length > 0)
            {
                lines.Add(style.Line(text));
            }
        }
    }

    /// <summary>That the tag is not the newest; nothing on one that is.</summary>
    private static IEnumerable<Block> Superseded(Build build, LabelStyle style, CardWriter write) =>
        write.Superseded(build) is { Length: > 0 } mark ? [new Paragraph(mark, style.BodyBold)] : [];

    /// <summary><c>A: top cam</c>; the letter alone where the plan is not there.</summary>
    private static string EndA(BuildSpec spec, ShopCatalog catalog, CardWriter write) =>
        catalog.Plans.GetValueOrDefault(spec.Kind) is { } plan ? $"A: {write.Ends(plan).A}" : "A";

    private static string Held(string text) => text.Replace(' ', '\u00A0').Replace('-', '\u2011');
}
