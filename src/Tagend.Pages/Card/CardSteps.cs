using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Specs;

namespace Tagend.Pages.Card;

/// <summary>The work in its order, a step under the other, each with a box to tick.</summary>
internal sealed class CardSteps(BuildSpec spec, ShopCatalog catalog, Fonts fonts, CardStyle style, CardWriter write)
{
    private const float TickSide = 9;
    private const float TitleWidth = 68;
    private const float Gap = 5;
    private const float Between = 0.4f;

    private readonly PlaceTables _tables = new(spec, fonts, style, write);
    private readonly StepTexts _texts = new(spec, catalog, write);

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
                new Column(new Paragraph(_texts.TitleOf(step), TypeScale.Heading), ColumnWidth.Of(TitleWidth)),
                new Column(new Stack(content, 1), ColumnWidth.Shared()),
            ],
            Gap),
        new Spacer(style.RowPadding),
    ]);

    /// <summary>Null for a step that the piece does not have.</summary>
    private List<Block>? ContentOf(CardStep step) => step.Kind switch
    {
        CardStepKind.LayUp => [_tables.Colors(), .. Said(step)],
        CardStepKind.Tie => [.. spec.EndTags().Select(Tie), .. Said(step)],
        CardStepKind.Separators => spec.Separators.Count == 0 ? null : [_tables.Separators(), .. Said(step)],
        CardStepKind.Twist => [.. Twisting(), .. Said(step)],
        CardStepKind.Stretch => [Stretching(_texts.UnderLoad()), .. Said(step)],
        CardStepKind.Serve => Serving(step),
        CardStepKind.StretchAgain => [Stretching(null), .. Said(step)],
        CardStepKind.Measure => [Bench($"{_texts.Finished()} {_texts.Tolerance()}", _texts.OverPins()), .. Said(step)],
        CardStepKind.Rest or CardStepKind.Inspect or CardStepKind.Own => [.. Said(step)],
        _ => throw new InvalidOperationException($"nothing to show for {step.Kind}"),
    };

    private IEnumerable<Block> Said(CardStep step) => _texts.SentenceOf(step) is { Length: > 0 } sentence ? [style.Text(sentence)] : [];

    private Paragraph Tie(EndTag tag)
    {
        var tie = _texts.Tie(tag);
        return new Paragraph([new Span(tie.Name + " ", style.BodyBold), new Span(tie.Value, style.Body)]);
    }

    private IEnumerable<Block> Twisting()
    {
        yield return Bench(_texts.Turns(), _texts.Hook());
        if (_texts.LegTurns() is { } legs)
        {
            yield return Bench(legs, "");
        }
    }

    private Paragraph Stretching(string? reading) => Bench($"{_texts.Load()}, {_texts.Minutes()}", reading ?? "");

    private List<Block>? Serving(CardStep step)
    {
        var marks = spec.Marks.Count > 0;
        if (spec.Servings.Count == 0 && !marks && spec.EndLoops?.Serving is null)
        {
            return null;
        }

        var blocks = new List<Block>();
        blocks.AddRange(new[] { _texts.TightNock(), _texts.LoopsServed() }.OfType<string>().Select(style.Bold));

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

        blocks.AddRange(Said(step));
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
