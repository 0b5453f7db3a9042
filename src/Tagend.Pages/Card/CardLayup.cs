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
                new TableColumn(write.Language[PaperWord.CardColor], ColumnWidth.Shared()),
                new TableColumn(write.Language[PaperWord.CardStrandsColumn], ColumnWidth.Natural, Align.Right),
                new TableColumn(write.Language[PaperWord.CardLoopsColumn], ColumnWidth.Natural, Align.Right),
                new TableColumn(write.Language[PaperWord.CardStartEnd], ColumnWidth.Natural, Align.Right),
            ],
            spec.Layup.Colors.Select<ColorShare, IReadOnlyList<Block>>(c =>
            [
                style.Bold(write.Color(c.Color)),
                style.Text($"{c.Strands}"),
                style.Bold(c.LoopCount()),
                style.Text(write.Language.Say(PaperWord.CardPost, ("post", c.IsHalf ? $"{c.Post}, {c.EndPost}" : $"{c.Post}"))),
            ]));
        return CardStyle.Part(
            write.Language[PaperWord.CardLayUp],
            materialTitle,
            [
                table,
                new Spacer(style.Gap / 3),
                .. spec.EndTags().Select(tag => Tie(tag, spec.Layup.Colors.Count, style, write)),
                style.Text(write.Language.Say(PaperWord.CardTails, ("length", write.Setting(spec.Layup.Tail)))),
            ]);
    }

    private static Paragraph Tie(EndTag tag, int colors, CardStyle style, CardWriter write)
    {
        var work = tag.IsDummy ? write.Language[PaperWord.CardDummyTag]
            : colors == 1 ? write.Language[PaperWord.CardTieEnds]
            : write.Language.Say(PaperWord.CardTieEndsOf, ("colors", string.Join(", ", tag.Colors.Select(write.Color))));
        var post = tag.Leg > 0 ? $"{tag.Post}{tag.Leg}" : $"{tag.Post}";
        return new Paragraph([new Span(write.Language.Say(PaperWord.CardAtPost, ("post", post)) + " ", style.BodyBold), new Span(work, style.Body)]);
    }

    private static Stack Twist(BuildSpec spec, CardStyle style, CardWriter write)
    {
        List<Block> facts =
        [
            style.Line(write.Language[PaperWord.CardLaidUp], write.Exact(spec.LaidUpLength)),
            .. TakeUpFacts(spec, style, write),
        ];
        if (spec.Settle > Measures.Length.Zero)
        {
            facts.Add(style.Line(write.Language[PaperWord.CardSettles], write.Exact(spec.Settle)));
        }

        facts.Add(style.Line(write.Language[PaperWord.CardOneTurn], write.Fine(spec.TurnSensitivity)));
        if (spec.Stretch.Reading is { } reading)
        {
            facts.Add(style.Line(write.Language[PaperWord.CardReads], write.Exact(reading)));
        }

        facts.Add(spec.Strength.Floor is { } floor
            ? style.Line(write.Language[PaperWord.CardStrengthFloor], $"{write.Load(spec.Strength.Breaking)}, {write.Load(floor)}")
            : style.Line(write.Language[PaperWord.CardStrength], write.Load(spec.Strength.Breaking)));
        if (spec.NockFit is { } fit)
        {
            facts.Add(style.Line(write.Language[PaperWord.CardNockFit], $"{write.Fine(fit.Diameter)}, {write.Fine(fit.Groove)}"));
        }

        return CardStyle.Part(write.Language[PaperWord.CardTwist], "", facts);
    }

    private static IEnumerable<Block> TakeUpFacts(BuildSpec spec, CardStyle style, CardWriter write)
    {
        var takeUp = spec.Twist.TakeUp;
        if (takeUp.Fitted is { } fitted)
        {
            yield return style.Line(write.Language[PaperWord.CardTakeUpFitted], write.Exact(fitted.Amount));
            yield return style.Line(write.Language.Say(PaperWord.CardFitError, ("builds", $"{fitted.Builds}")), $"± {write.Exact(fitted.Error)}");
            yield break;
        }

        yield return style.Line(write.TakeUp(takeUp.Used), write.Exact(takeUp.Amount));
        if (spec.ModelsDisagree)
        {
            var (other, amount) = takeUp.Used == TakeUpModel.Rule ? (TakeUpModel.Helix, takeUp.Helix) : (TakeUpModel.Rule, takeUp.Rule);
            yield return style.Line(write.TakeUp(other), write.Exact(amount));
            yield return new Paragraph(write.Language[PaperWord.CardModelsDiffer], TypeScale.Caption);
        }
    }
}
