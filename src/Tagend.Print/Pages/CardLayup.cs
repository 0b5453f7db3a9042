using Tagend.Blocks;
using Tagend.Output;
using Tagend.Specs;

namespace Tagend.Pages;

/// <summary>How the strands are laid and tied, and what the twist does.</summary>
internal static class CardLayup
{
    public static Block Of(BuildSpec spec, string materialTitle, CardStyle style, CardWriter write) => new Row(
        [
            new Column(Layup(spec, materialTitle, style, write), ColumnWidth.Shared(1.12f)),
            new Column(Twist(spec, write), ColumnWidth.Shared(1)),
        ],
        Gap: 14);

    private static Block Layup(BuildSpec spec, string materialTitle, CardStyle style, CardWriter write)
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
                CardStyle.Bold(c.Color),
                CardStyle.Text($"{c.Strands}"),
                CardStyle.Bold($"{c.Loops}"),
                CardStyle.Text($"post {c.Post}"),
            ]));
        return new Stack(
        [
            CardStyle.Heading("LAY UP", materialTitle),
            new Spacer(2),
            table,
            new Spacer(3),
            .. spec.Layup.EndTags.Select(Tie),
            CardStyle.Text($"Tails {write.Mark(spec.Layup.Tail)}: tie, split each three times, stagger."),
        ]);
    }

    private static Block Tie(EndTag tag) => new Paragraph(
    [
        new Span($"Post {tag.Post}: ", TypeScale.BodyBold),
        new Span(tag.IsDummy ? "no color ends here; tie in a dummy tag." : $"tie {string.Join(", ", tag.Colors)}.", TypeScale.Body),
    ]);

    private static Block Twist(BuildSpec spec, CardWriter write)
    {
        var takeUp = spec.Twist.TakeUp;
        var other = takeUp.Used == TakeUpModel.Rule ? TakeUpModel.Helix : TakeUpModel.Rule;
        var facts = new List<Block>
        {
            Line("Laid up, untwisted", write.Exact(spec.LaidUpLength)),
            Line($"Take-up by {CardWriter.Model(takeUp.Used)}", write.Exact(takeUp.Amount)),
        };
        if (spec.ModelsDisagree)
        {
            facts.Add(Line($"Take-up by {CardWriter.Model(other)}", write.Exact(takeUp.Used == TakeUpModel.Rule ? takeUp.Helix : takeUp.Rule)));
            facts.Add(new Paragraph("The models differ by more than the tolerance: measure before serving.", TypeScale.Caption));
        }

        if (spec.Settle > Measures.Length.Zero)
        {
            facts.Add(Line("Settles on the stretcher", write.Exact(spec.Settle)));
        }

        facts.Add(Line("One turn more or less", write.Fine(spec.TurnSensitivity)));
        facts.Add(Line("Reads under load", write.Exact(spec.Stretch.Reading)));
        facts.Add(Line("Strength", write.Load(spec.Strength.Breaking)));
        if (spec.Strength.Floor is { } floor)
        {
            facts.Add(Line("At least", $"{write.Load(floor)}"));
        }

        if (spec.NockFit is { } fit)
        {
            facts.Add(Line("Center serving, nock", $"{write.Fine(fit.Diameter)}, {write.Fine(fit.Groove)}"));
        }

        return new Stack([CardStyle.Heading("TWIST AND STRETCH"), new Spacer(2), .. facts]);
    }

    private static Row Line(string name, string value) => new(
        [
            new Column(CardStyle.Text(name), ColumnWidth.Shared()),
            new Column(new Paragraph(value, TypeScale.BodyBold, Align.Right), ColumnWidth.Natural),
        ],
        Gap: 4,
        Level: Level.Baseline);
}
