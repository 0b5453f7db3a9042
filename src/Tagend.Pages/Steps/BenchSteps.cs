using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Pages.Parts;
using Tagend.Specs;

namespace Tagend.Pages.Steps;

/// <summary>A card's steps in their order, taken apart to what is done at once: a color, a separator, a serving, a mark.</summary>
public sealed class BenchSteps
{
    private readonly BuildSpec _spec;
    private readonly CardWriter _write;
    private readonly StepTexts _texts;

    private BenchSteps(BuildSpec spec, ShopCatalog catalog)
    {
        (_spec, _write) = (spec, new CardWriter(spec.Unit, catalog.Words));
        _texts = new StepTexts(spec, catalog, _write);
    }

    private PaperLanguage Words => _write.Language;

    /// <summary>The steps of a piece: the posts are set, and then what card.toml has in its order.</summary>
    public static IReadOnlyList<BenchStep> Of(BuildSpec spec, ShopCatalog catalog)
    {
        var steps = new BenchSteps(spec, catalog);
        return [steps.Posts(), .. catalog.CardSteps.SelectMany(steps.Of)];
    }

    private BenchStep Posts() => new()
    {
        Title = Words[PaperWord.CardSetPosts],
        Figures = [new BenchFigure("", _write.Setting(_spec.Posts.Tape))],
        Facts =
        [
            new BenchFact("", Words.Say(PaperWord.CardPostsReading, ("setting", _write.Setting(_spec.Posts.Tape)))),
            .. _texts.Posts().Select(f => new BenchFact(f.Name, f.Value)),
        ],
    };

    private IEnumerable<BenchStep> Of(CardStep step) => step.Kind switch
    {
        CardStepKind.LayUp => Layups(step),
        CardStepKind.Tie => [Plain(step) with
        {
            Figures = [new BenchFigure("", _write.Setting(_spec.Layup.Tail))],
            Facts = [.. _spec.EndTags().Select(_texts.Tie).Select(f => new BenchFact(f.Name, f.Value)), .. Said(step)],
            Caution = $"{Words[PaperWord.Caution]}: {Words[PaperWord.CardCaution]}",
            Where = [(Length.Zero, Length.Zero), (_spec.FinishedLength, _spec.FinishedLength)],
        }],
        CardStepKind.Separators => CardPlaces.PlacesOf(_spec, _write).Where(p => p.Separator is not null).Select(p => Plain(step) with
        {
            Part = p.Name,
            Figures = [new BenchFigure(Words[PaperWord.CardOnJig], $"{_write.BareTape(_spec.FromPostA(p.Position))} {_write.UnitSymbol}")],
            Facts = [new BenchFact(Words[PaperWord.CardStrandsColumn], StepTexts.Sides(_spec, _write)), .. Said(step)],
            Where = [(p.Position, p.Position)],
        }),
        CardStepKind.Twist => [Plain(step) with
        {
            Figures = [new BenchFigure("", _texts.Turns())],
            Facts = [new BenchFact("", _texts.Hook()), .. Sentence(_texts.LegTurns()), .. Said(step)],
            IsTwist = true,
        }],
        CardStepKind.Stretch => [Stretched(step) with { Facts = [.. Sentence(_texts.UnderLoad()), .. Said(step)] }],
        CardStepKind.StretchAgain => [Stretched(step)],
        CardStepKind.Rest => [Plain(step) with { Clock = StepClock.Up }],
        CardStepKind.Serve => Servings(step),
        CardStepKind.Measure => [Plain(step) with
        {
            Part = _texts.Tolerance(),
            Figures = [new BenchFigure("", _texts.Finished())],
            Facts = [new BenchFact("", _texts.OverPins()), .. Said(step)],
            Caution = Warning,
        }],
        CardStepKind.Inspect or CardStepKind.Own => [Plain(step)],
        _ => throw new InvalidOperationException($"nothing to show for {step.Kind}"),
    };

    private string Warning => $"{Words[PaperWord.Warning]}: {Words[PaperWord.CardWarning]}";

    private BenchStep Plain(CardStep step) => new() { Title = _texts.TitleOf(step), Facts = [.. Said(step)] };

    private IEnumerable<BenchFact> Said(CardStep step) => Sentence(_texts.SentenceOf(step));

    private static IEnumerable<BenchFact> Sentence(string? sentence) => string.IsNullOrEmpty(sentence) ? [] : [new BenchFact("", sentence)];

    /// <summary>A color after the other; of a yoke each leg's.</summary>
    private IEnumerable<BenchStep> Layups(CardStep step)
    {
        var legs = _spec.Legs();
        var layups = legs.Count == 0 ? [(Leg: "", _spec.Layup)] : legs.Select((leg, i) => (Leg: $"{Words[PaperWord.CardLeg]} {i + 1}, ", Layup: leg));
        return layups.SelectMany(l => l.Layup.Colors, (l, color) => Plain(step) with
        {
            Part = l.Leg + _write.Color(color.Color),
            Figures = [new BenchFigure("", Words.Say(PaperWord.CardLoops, ("count", color.LoopCount())))],
            Facts =
            [
                new BenchFact(Words[PaperWord.CardStartEnd], $"{color.Post} – {color.EndPost}"),
                new BenchFact(Words[PaperWord.CardStrandsColumn], $"{color.Strands}"),
                .. Said(step),
            ],
        });
    }

    /// <summary>The minutes are on its clock.</summary>
    private BenchStep Stretched(CardStep step) => Plain(step) with
    {
        Figures = [new BenchFigure("", _texts.Load())],
        Caution = Warning,
        Clock = StepClock.Down,
        Minutes = _spec.Stretch.Minutes,
    };

    /// <summary>Each serving and each mark; what is near end B is measured from there.</summary>
    private IEnumerable<BenchStep> Servings(CardStep step)
    {
        if (_texts.LoopsServed() is { } loops)
        {
            yield return Plain(step) with { Facts = [new BenchFact("", loops), .. Said(step)] };
        }

        foreach (var serving in _spec.Servings)
        {
            var isFromB = serving.Role == ServingRole.EndB;
            var (from, to) = isFromB ? (_spec.FromB(serving.To), _spec.FromB(serving.From)) : (serving.From, serving.To);
            yield return Plain(step) with
            {
                Part = _write.Serving(serving.Role),
                Figures =
                [
                    new BenchFigure(Words[isFromB ? PaperWord.CardFromB : PaperWord.CardFromA], _write.Mark(from)),
                    new BenchFigure(Words[PaperWord.CardTo], _write.Mark(to)),
                ],
                Facts =
                [
                    new BenchFact(Words[PaperWord.CardThread], _write.Thread(serving.Thread, serving.Color)),
                    .. Sentence(serving.Role == ServingRole.Center ? _texts.TightNock() : null),
                    .. Said(step),
                ],
                Where = [(serving.From, serving.To)],
            };
        }

        foreach (var mark in CardPlaces.PlacesOf(_spec, _write).Where(p => p.Mark is not null))
        {
            yield return new BenchStep
            {
                Title = _texts.TitleOf(step),
                Part = mark.Name,
                Figures = [new BenchFigure(Words[PaperWord.CardFromA], _write.Mark(mark.Position))],
                Facts = [new BenchFact(Words[PaperWord.CardFromB], _write.Mark(_spec.FromB(mark.Position)))],
                Where = [(mark.Position, mark.Position)],
            };
        }
    }
}
