using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Pages.Parts;
using Tagend.Specs;

namespace Tagend.Pages.Card;

/// <summary>What the work rests on, one value a row, in columns side by side.</summary>
internal static class CardNumbers
{
    public static Stack Of(BuildSpec spec, int columns, CardStyle style, CardWriter write)
    {
        List<Block> facts = [.. Facts(spec, style, write)];
        var perColumn = (facts.Count + columns - 1) / columns;
        return CardStyle.Section(
            write.Language[PaperWord.CardNumbers],
            "",
            [Row.Equal(facts.Chunk(perColumn).Select(c => new Stack(c)), gap: 14, Level.Top)]);
    }

    private static IEnumerable<Block> Facts(BuildSpec spec, CardStyle style, CardWriter write)
    {
        yield return Line(PaperWord.CardLaidUp, spec.IsSettingUncertain ? write.Mark(spec.Posts.NearestMark(spec.LaidUpLength)) : write.Exact(spec.LaidUpLength));
        var takeUp = spec.Twist.TakeUp;
        if (takeUp.Fitted is { } fitted)
        {
            yield return Line(PaperWord.CardTakeUpFitted, write.Exact(fitted.Amount));
            yield return style.Line(write.Language.Say(PaperWord.CardFitError, ("builds", $"{fitted.Builds}")), $"± {write.Exact(fitted.Error)}");
        }
        else
        {
            yield return style.Line(write.TakeUp(TakeUpModel.Rule), write.Exact(takeUp.Rule));
            yield return style.Line(write.TakeUp(TakeUpModel.Helix), write.Exact(takeUp.Helix));
        }

        if (spec.Settle > Length.Zero)
        {
            yield return Line(PaperWord.CardSettles, write.Exact(spec.Settle));
        }

        yield return Line(PaperWord.CardOneTurn, write.Fine(spec.TurnSensitivity));
        yield return Line(PaperWord.CardStrength, write.Load(spec.Strength.Breaking));
        if (spec.Strength.Floor is { } floor)
        {
            yield return Line(PaperWord.CardFloor, write.Load(floor));
        }

        if (spec.NockFit is { } fit)
        {
            yield return Line(PaperWord.CardCenterDiameter, write.Fine(fit.Diameter));
            yield return Line(PaperWord.CardNock, write.Fine(fit.Groove));
        }

        Row Line(PaperWord name, string value) => style.Line(write.Language[name], value);
    }
}
