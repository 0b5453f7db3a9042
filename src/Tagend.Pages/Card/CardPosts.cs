using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Specs;

namespace Tagend.Pages.Card;

/// <summary>The number a card is for, the posts' setting, and the key figures under it.</summary>
internal static class CardPosts
{
    private const float Border = 1.6f;
    private const float Hairline = 0.6f;

    public static Block Of(BuildSpec spec, CardStyle style, CardWriter write)
    {
        var posts = spec.Posts;
        var beside = new Stack(
        [
            style.Fact(write.Language[PaperWord.CardExact], write.Exact(posts.Outside)),
            style.Fact(write.Language[PaperWord.CardCenters], $"{write.Setting(posts.CentersTape)} ({write.Exact(posts.Centers)})"),
            style.Fact(write.Language[PaperWord.CardPostPin], $"{write.Setting(posts.PostDiameter)}, {write.Setting(posts.PinDiameter)}"),
            new Spacer(3),
            Residual(spec, style, write),
        ]);
        var number = new Row(
            [
                new Column(new BigReading(write.Setting(posts.Tape)), ColumnWidth.Natural),
                new Column(beside, ColumnWidth.Shared()),
            ],
            Gap: 14,
            Level: Level.Middle);
        var title = new Box(
            new Row(
                [
                    new Column(new Paragraph(write.Language[PaperWord.CardSetPosts], White(TypeScale.Heading)), ColumnWidth.Natural),
                    new Column(new Paragraph(write.Language.Say(PaperWord.CardPostsReading, ("setting", write.Setting(posts.Tape))), White(TypeScale.Caption), Align.Right), ColumnWidth.Shared()),
                ],
                Level: Level.Baseline),
            Padding: 2.5f,
            Fill: 0);
        return new Stack([title, new Box(number, Padding: 5.5f, Border: Border), KeyFigures(spec, write)]);
    }

    private static Paragraph Residual(BuildSpec spec, CardStyle style, CardWriter write)
    {
        var turns = CardWriter.HalfTurns(spec.ResidualTurns);
        var off = write.Exact(Measures.Length.Abs(spec.Posts.Residual));
        if (turns.Length == 0)
        {
            return style.Text(write.Language.Say(PaperWord.CardResidualNone, ("amount", off)));
        }

        var longer = spec.ResidualTurns > 0;
        return new Paragraph(
        [
            new Span(write.Language.Say(longer ? PaperWord.CardResidualLong : PaperWord.CardResidualShort, ("amount", off)) + " ", style.Body),
            new Span(Joined(write.Language.Say(longer ? PaperWord.CardAdd : PaperWord.CardTakeOut, ("turns", write.Turns(turns)))), style.BodyBold),
        ]);
    }

    private static Row KeyFigures(BuildSpec spec, CardWriter write) => Row.Equal(
        [
            Figure(write.Language[PaperWord.CardFinishedLength], write.Mark(spec.FinishedLength), $"± {write.Mark(spec.Tolerance)}"),
            Figure(
                write.Language[PaperWord.CardTurns],
                $"{spec.Twist.Turns}",
                write.Language.Say(PaperWord.CardSeenFromA, ("direction", write.Direction(spec.Twist.Direction)))),
            Figure(write.Language[PaperWord.CardStrands], $"{spec.Bundle.Strands}", write.Language.Say(PaperWord.CardLoops, ("count", $"{spec.Layup.Loops}"))),
            Figure(write.Language[PaperWord.CardStretch], write.Load(spec.Stretch.Load), write.Language.Say(PaperWord.Minutes, ("count", $"{spec.Stretch.Minutes}"))),
        ],
        gap: -Hairline);

    private static Box Figure(string name, string value, string remark) => new Box(
        new Stack(
        [
            new Paragraph(name, TypeScale.Caption),
            new Paragraph(value, TypeScale.Figure),
            new Paragraph(remark, TypeScale.Caption),
        ]),
        Padding: 3.5f,
        Border: Hairline);

    /// <summary>Kept on one line.</summary>
    private static string Joined(string text) => text.Replace(' ', '\u00A0');

    private static TextStyle White(TextStyle style) => style with { Gray = 255 };
}
