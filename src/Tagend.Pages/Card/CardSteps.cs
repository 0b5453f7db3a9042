using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Specs;

namespace Tagend.Pages.Card;

/// <summary>The work in its order, a step under the other, each with a box to tick.</summary>
internal sealed class CardSteps(BuildSpec spec, ShopCatalog catalog, string materialTitle, Fonts fonts, CardStyle style, CardWriter write)
{
    private const float TickSide = 9;
    private const float TitleWidth = 68;
    private const float Gap = 5;
    private const float Between = 0.4f;

    private readonly PlaceTables _tables = new(spec, fonts, style, write);

    private PaperLanguage Words => write.Language;

    public IReadOnlyList<Block> Blocks() =>
    [
        .. catalog.CardSteps.Select(step => (Step: step, Content: ContentOf(step))).Where(s => s.Content is not null).Select(s => Of(s.Step, s.Content!)),
    ];

    private Stack Of(CardStep step, List<Block> content) => new(
    [
        new Rule(Between),
        new Spacer(1.5f + style.RowPadding),
        new Row(
            [
                new Column(new Tick(TickSide), ColumnWidth.Of(TickSide)),
                new Column(new Paragraph(step.Title.Length > 0 ? Words.Term(step.Title) : Words[TitleOf(step.Kind)], TypeScale.Heading), ColumnWidth.Of(TitleWidth)),
                new Column(new Stack(content, 1), ColumnWidth.Shared()),
            ],
            Gap),
        new Spacer(style.RowPadding),
    ]);

    private static PaperWord TitleOf(CardStepKind kind) => kind switch
    {
        CardStepKind.LayUp => PaperWord.StepLayUp,
        CardStepKind.Tie => PaperWord.StepTie,
        CardStepKind.Separators => PaperWord.StepSeparators,
        CardStepKind.Twist => PaperWord.StepTwist,
        CardStepKind.Stretch => PaperWord.StepStretch,
        CardStepKind.Rest => PaperWord.StepRest,
        CardStepKind.Serve => PaperWord.StepServe,
        CardStepKind.StretchAgain => PaperWord.StepStretchAgain,
        CardStepKind.Measure => PaperWord.StepMeasure,
        CardStepKind.Inspect => PaperWord.StepInspect,
        _ => throw new InvalidOperationException($"no title for {kind}"),
    };

    /// <summary>Null for a step that the piece does not have.</summary>
    private List<Block>? ContentOf(CardStep step) => step.Kind switch
    {
        CardStepKind.LayUp => [_tables.Colors(), style.Text(Said(step, materialTitle))],
        CardStepKind.Tie =>
        [
            .. spec.EndTags().Select(Tie),
            style.Text(Said(step, Words.Say(PaperWord.CardTails, ("length", write.Setting(spec.Layup.Tail))))),
        ],
        CardStepKind.Separators => spec.Separators.Count == 0 ? null : [_tables.Separators(), .. Own(step)],
        CardStepKind.Twist => [.. Twisting(), style.Text(Said(step, Words[PaperWord.CardBurnish]))],
        CardStepKind.Stretch => [Stretching(withReading: true), .. Own(step)],
        CardStepKind.Rest => [style.Text(Said(step, Words[PaperWord.CardRest]))],
        CardStepKind.Serve => Serving(step),
        CardStepKind.StretchAgain => [Stretching(withReading: false), .. Own(step)],
        CardStepKind.Measure => [Measuring(), .. Own(step)],
        CardStepKind.Inspect => [style.Text(Said(step, Words[PaperWord.CardInspect]))],
        CardStepKind.Own => [.. Own(step)],
        _ => throw new InvalidOperationException($"nothing to show for {step.Kind}"),
    };

    /// <summary>The shop's own sentence, else the program's.</summary>
    private string Said(CardStep step, string otherwise) => step.Text.Length > 0 ? Words.Term(step.Text) : otherwise;

    private IEnumerable<Block> Own(CardStep step) => step.Text.Length > 0 ? [style.Text(Words.Term(step.Text))] : [];

    private Paragraph Tie(EndTag tag)
    {
        var work = tag.IsDummy ? Words[PaperWord.CardDummyTag]
            : spec.Layup.Colors.Count == 1 ? Words[PaperWord.CardTieEnds]
            : Words.Say(PaperWord.CardTieEndsOf, ("colors", string.Join(", ", tag.Colors.Select(write.Color))));
        var post = tag.Leg > 0 ? $"{tag.Post}{tag.Leg}" : $"{tag.Post}";
        return new Paragraph([new Span(Words.Say(PaperWord.CardAtPost, ("post", post)) + " ", style.BodyBold), new Span(work, style.Body)]);
    }

    private IEnumerable<Block> Twisting()
    {
        yield return Bench(
            $"{write.Turns(CardWriter.TurnsToPutIn(spec))}, {spec.Twist.Hand}",
            Words.Say(PaperWord.CardHook, ("direction", write.Direction(spec.Twist.Direction))));
        if (spec.Yoke is { } yoke)
        {
            yield return Bench(Words.Say(PaperWord.CardLegTurns, ("turns", write.Turns($"{yoke.LegTurns}"))), "");
        }
    }

    private Paragraph Stretching(bool withReading) => Bench(
        $"{write.Load(spec.Stretch.Load)}, {Words.Say(PaperWord.Minutes, ("count", $"{spec.Stretch.Minutes}"))}",
        withReading && spec.Stretch.Reading is { } reading ? Words.Say(PaperWord.CardUnderLoad, ("length", write.Mark(reading))) : "");

    private Paragraph Measuring() => Bench(
        $"{write.Mark(spec.FinishedLength)} ± {write.Mark(spec.Tolerance)}",
        Words.Say(PaperWord.CardOverPins, ("pin", write.Setting(spec.Posts.PinDiameter)), ("load", write.Load(Stretch.MeasuringLoad))));

    private List<Block>? Serving(CardStep step)
    {
        var marks = spec.Marks.Count > 0;
        if (spec.Servings.Count == 0 && !marks && spec.EndLoops?.Serving is null)
        {
            return null;
        }

        var blocks = new List<Block>();
        if (spec.NockFit is { } fit && fit.Clearance < Measures.Length.Zero)
        {
            blocks.Add(style.Bold(Words.Say(PaperWord.CardNockTight, ("amount", write.Fine(Measures.Length.Abs(fit.Clearance))))));
        }

        if (spec.EndLoops?.Serving is { } loops)
        {
            blocks.Add(style.Bold(Words.Say(PaperWord.CardLoopsServed, ("thread", write.Thread(loops.Thread, loops.Color)))));
        }

        if (style.ServingsAreOnBack && spec.Servings.Count > 0)
        {
            blocks.Add(style.Bold(Words.Say(PaperWord.CardServingsOnBack, ("count", $"{spec.Servings.Count}"))));
        }
        else if (spec.Servings.Count > 0 || (marks && !style.MarksAreOnBack))
        {
            blocks.Add(_tables.Servings());
        }

        if (marks && style.MarksAreOnBack)
        {
            blocks.Add(style.Bold(Words[PaperWord.CardMarksOnBack]));
        }

        blocks.Add(style.Text(Said(
            step, Words.Say(PaperWord.CardSpool, ("hand", $"{spec.Twist.ServingHand}"), ("direction", write.Direction(spec.Twist.SpoolDirection))))));
        return blocks;
    }

    /// <summary>What the hand works by, and what is said of it.</summary>
    private Paragraph Bench(string number, string remark) => remark.Length == 0
        ? new Paragraph(number, TypeScale.Bench)
        : new Paragraph([new Span(number.Replace(' ', '\u00A0') + "  ", TypeScale.Bench), new Span(remark, style.Body)]);

    /// <summary>An empty square.</summary>
    private sealed record Tick(float Side) : Block
    {
        private const float Line = 0.9f;

        public override Placement Place(Fonts fonts, Room room) => room.HoldsHeight(Side)
            ? new Placed(Side, Side, new BoxInk(0, 0, Side, Side, Line))
            : new Misfit($"a box to tick of {Side:0.#} pt has {room.Height:0.#} pt");
    }
}
