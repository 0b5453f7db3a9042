using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Pages.Parts;
using Tagend.Specs;

namespace Tagend.Pages.Card;

/// <summary>How the strands are laid and tied, and what the twist does.</summary>
internal static class CardLayup
{
    public static Block Of(BuildSpec spec, string materialTitle, CardStyle style, CardWriter write) => new Row(
        [
            new Column(Layup(spec, materialTitle, style, write), ColumnWidth.Shared(1.12f)),
            new Column(Twist(spec, style, write), ColumnWidth.Shared(1)),
        ],
        Gap: 14);

    private static Stack Layup(BuildSpec spec, string materialTitle, CardStyle style, CardWriter write)
    {
        var table = style.Table(
            [
                new TableColumn("Color", ColumnWidth.Shared()),
                new TableColumn("Strands", ColumnWidth.Natural, Align.Right),
                new TableColumn("Loops", ColumnWidth.Natural, Align.Right),
                new TableColumn("Start, end", ColumnWidth.Natural, Align.Right),
            ],
            spec.Layup.Colors.Select<ColorShare, IReadOnlyList<Block>>(c =>
            [
                style.Bold(c.Color),
                style.Text($"{c.Strands}"),
                style.Bold($"{c.Loops}"),
                style.Text($"post {c.Post}"),
            ]));
        return CardStyle.Part(
            "LAY UP",
            materialTitle,
            [
                table,
                new Spacer(style.Gap / 3),
                .. spec.Layup.EndTags().Select(tag => Tie(tag, spec.Layup.Colors.Count, style)),
                style.Text($"Tails {write.Setting(spec.Layup.Tail)}: tie, split each three times, stagger."),
            ]);
    }

    private static Paragraph Tie(EndTag tag, int colors, CardStyle style)
    {
        var work = tag.IsDummy ? "no color ends here, tie in a dummy tag."
            : colors == 1 ? "tie the tag ends."
            : $"tie the tag ends of {string.Join(", ", tag.Colors)}.";
        return new Paragraph([new Span($"Post {tag.Post}: ", style.BodyBold), new Span(work, style.Body)]);
    }

    private static Stack Twist(BuildSpec spec, CardStyle style, CardWriter write)
    {
        List<Block> facts =
        [
            style.Line("Laid up, untwisted", write.Exact(spec.LaidUpLength)),
            .. TakeUpFacts(spec, style, write),
        ];
        if (spec.Settle > Measures.Length.Zero)
        {
            facts.Add(style.Line("Settles on the stretcher", write.Exact(spec.Settle)));
        }

        facts.Add(style.Line("One turn more or less", write.Fine(spec.TurnSensitivity)));
        facts.Add(style.Line("Reads under load", write.Exact(spec.Stretch.Reading)));
        facts.Add(spec.Strength.Floor is { } floor
            ? style.Line("Strength, least allowed", $"{write.Load(spec.Strength.Breaking)}, {write.Load(floor)}")
            : style.Line("Strength", write.Load(spec.Strength.Breaking)));
        if (spec.NockFit is { } fit)
        {
            facts.Add(style.Line("Center serving, nock", $"{write.Fine(fit.Diameter)}, {write.Fine(fit.Groove)}"));
        }

        return CardStyle.Part("TWIST AND STRETCH", "", facts);
    }

    private static IEnumerable<Block> TakeUpFacts(BuildSpec spec, CardStyle style, CardWriter write)
    {
        var takeUp = spec.Twist.TakeUp;
        if (takeUp.Fitted is { } fitted)
        {
            yield return style.Line("Take-up, fitted", write.Exact(fitted.Amount));
            yield return style.Line($"Its error, {fitted.Builds} builds", $"± {write.Exact(fitted.Error)}");
            yield break;
        }

        yield return style.Line($"Take-up by {CardWriter.Model(takeUp.Used)}", write.Exact(takeUp.Amount));
        if (spec.ModelsDisagree)
        {
            var (other, amount) = takeUp.Used == TakeUpModel.Rule ? (TakeUpModel.Helix, takeUp.Helix) : (TakeUpModel.Rule, takeUp.Rule);
            yield return style.Line($"Take-up by {CardWriter.Model(other)}", write.Exact(amount));
            yield return new Paragraph("They differ beyond the tolerance: measure early.", TypeScale.Caption);
        }
    }
}
