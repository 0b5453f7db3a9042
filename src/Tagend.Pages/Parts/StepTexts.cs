using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Specs;

namespace Tagend.Pages.Parts;

/// <summary>Something to be known at a step.</summary>
/// <param name="Name">Empty for a sentence.</param>
/// <param name="IsLoud">It comes before all else.</param>
internal sealed record StepFact(string Name, string Value, bool IsLoud = false);

/// <summary>What the bench is told at each step of a piece, in the shop's words: the same on a card and on a screen.</summary>
internal sealed class StepTexts(BuildSpec spec, ShopCatalog catalog, CardWriter write)
{
    private PaperLanguage Words => write.Language;

    /// <summary>The shop's own title, else the step's.</summary>
    public string TitleOf(CardStep step) => step.Title.Length > 0 ? Words.Term(step.Title) : Words[step.Kind switch
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
        _ => throw new InvalidOperationException($"no title for {step.Kind}"),
    }];

    /// <summary>The sentence of a step: the shop's own, else the program's; empty where neither has one.</summary>
    public string SentenceOf(CardStep step) => step.Text.Length > 0 ? Words.Term(step.Text) : step.Kind switch
    {
        CardStepKind.LayUp => Words.Term(catalog.Materials.GetValueOrDefault(spec.Bundle.Material)?.Title ?? spec.Bundle.Material),
        CardStepKind.Tie => Words.Say(PaperWord.CardTails, ("length", write.Setting(spec.Layup.Tail))),
        CardStepKind.Twist => Words[PaperWord.CardBurnish],
        CardStepKind.Rest => Words[PaperWord.CardRest],
        CardStepKind.Serve => Words.Say(
            PaperWord.CardSpool, ("hand", $"{spec.Twist.ServingHand}"), ("direction", write.Direction(spec.Twist.SpoolDirection))),
        CardStepKind.Inspect => Words[PaperWord.CardInspect],
        _ => "",
    };

    /// <summary>Beside the posts' setting: no exact length where the models disagree, and the plain rule where the posts are not given.</summary>
    public IEnumerable<StepFact> Posts()
    {
        var posts = spec.Posts;
        if (spec.IsSettingUncertain)
        {
            var (least, most) = spec.SettingRange();
            yield return new StepFact("", Words[PaperWord.CardMeasureEarly], IsLoud: true);
            yield return new StepFact("", Words.Say(PaperWord.CardRange, ("least", write.Setting(least)), ("most", write.Setting(most))));
        }
        else
        {
            yield return new StepFact(Words[PaperWord.CardExact], write.Exact(posts.Outside));
        }

        yield return new StepFact(Words[PaperWord.CardCenters], write.Setting(posts.CentersTape));
        if (posts.IsPostGiven)
        {
            yield return new StepFact(Words[PaperWord.CardPosts], write.Setting(posts.PostDiameter));
            yield return new StepFact(Words[PaperWord.CardPins], write.Setting(posts.PinDiameter));
        }
        else
        {
            yield return new StepFact("", Words.Say(PaperWord.CardPlainRule, ("pin", write.Setting(posts.PinDiameter))));
        }
    }

    /// <summary>What is tied at a post; its name ends with a colon.</summary>
    public StepFact Tie(EndTag tag) => new(
        Words.Say(PaperWord.CardAtPost, ("post", tag.Leg > 0 ? $"{tag.Post}{tag.Leg}" : $"{tag.Post}")),
        tag.IsDummy ? Words[PaperWord.CardDummyTag]
            : spec.Layup.Colors.Count == 1 ? Words[PaperWord.CardTieEnds]
            : Words.Say(PaperWord.CardTieEndsOf, ("colors", string.Join(", ", tag.Colors.Select(write.Color)))));

    /// <summary>The strands on either side of a separator.</summary>
    public static string Sides(BuildSpec spec, CardWriter write)
    {
        var halves = spec.Layup.Halves();
        return $"{write.Colors(halves.First)} | {write.Colors(halves.Second)}";
    }

    public string Turns() => $"{write.Turns(CardWriter.TurnsToPutIn(spec))}, {spec.Twist.Hand}";

    public string Hook() => Words.Say(PaperWord.CardHook, ("direction", write.Direction(spec.Twist.Direction)));

    /// <summary>Null for a piece without legs.</summary>
    public string? LegTurns() => spec.Yoke is { } yoke ? Words.Say(PaperWord.CardLegTurns, ("turns", write.Turns($"{yoke.LegTurns}"))) : null;

    public string Load() => write.Load(spec.Stretch.Load);

    public string Minutes() => Words.Say(PaperWord.Minutes, ("count", $"{spec.Stretch.Minutes}"));

    /// <summary>Null where the material's stretch is not known.</summary>
    public string? UnderLoad() => spec.Stretch.Reading is { } reading ? Words.Say(PaperWord.CardUnderLoad, ("length", write.Mark(reading))) : null;

    public string Finished() => write.Mark(spec.FinishedLength);

    public string Tolerance() => $"± {write.Mark(spec.Tolerance)}";

    public string OverPins() =>
        Words.Say(PaperWord.CardOverPins, ("pin", write.Setting(spec.Posts.PinDiameter)), ("load", write.Load(Stretch.MeasuringLoad)));

    /// <summary>That the nock does not go on; null where it does, or nothing is known of it.</summary>
    public string? TightNock() => spec.NockFit is { } fit && fit.Clearance < Length.Zero
        ? Words.Say(PaperWord.CardNockTight, ("amount", write.Fine(Length.Abs(fit.Clearance))))
        : null;

    /// <summary>That the end loops are served first; null where they are not.</summary>
    public string? LoopsServed() => spec.EndLoops?.Serving is { } loops
        ? Words.Say(PaperWord.CardLoopsServed, ("thread", write.Thread(loops.Thread, loops.Color)))
        : null;
}
