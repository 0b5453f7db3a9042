using System.Text;
using System.Text.RegularExpressions;

namespace Tagend.Catalog;

/// <summary>The words that the program writes on paper. Each has a text in every file of words, under <see cref="PaperWords.KeyOf"/>.</summary>
/// <remarks>What a word says is its text in templates/words/en.toml, and is not said again here.</remarks>
#pragma warning disable CS1591
public enum PaperWord
{
    // Signal words by ANSI Z535.6.
    Danger, Warning, Caution, Notice,

    // Units, turns and names that several papers have.
    Inches, Millimeters, Minutes, TurnOne, TurnMany, Clockwise, Counterclockwise, Rev, Superseded, RoleEndA, RoleCenter, RoleEndB,
    RoleOther, ServingEndA, ServingCenter, ServingEndB, ServingOther, MarkNockPoint, MarkSpeedNock, Any, PageOf, CheckBars,

    // In the drawing of a customer sheet.
    Peep, NockPoint, Drawing, SpeedNock,

    // Jig card.
    CardTitle, CardCustomer, CardDue, CardBow, CardDrawWeight, CardNotes, CardSetPosts, CardPostsReading, CardExact,
    CardCenters, CardFinishedLength, CardTurns, CardStrands, CardLoops, CardDrawing, CardEndOpen, CardEndMeet,
    CardTrueSize, StepLayUp, CardColor, CardStrandsColumn, CardLoopsColumn, CardStartEnd, CardTails, CardAtPost,
    CardDummyTag, CardTieEnds, CardTieEndsOf, CardLaidUp, CardTakeUpFitted, CardFitError, CardTakeUpRule, CardTakeUpHelix,
    CardSettles, CardOneTurn, CardStrength, CardServings, CardMarks, CardMarksRemark, CardServing, CardFromA, CardTo,
    CardFromB, CardLength, CardThread, CardWhat, CardOnJig, CardAsBuilt, CardPostsSet, CardTurnsIn, CardStretchLoad,
    CardStretchTime, CardMeasured, CardInitials, CardNotesBox, CardTitleBack, CardPosts, CardPins, CardPlainRule,
    CardMeasureEarly, CardRange, CardHook, CardLegTurns, CardLeg, CardBurnish, CardUnderLoad, CardRest, CardSpool,
    CardLoopsServed, CardServingsOnBack, CardMarksOnBack, CardNotesOnBack, CardOverPins, CardInspect, CardNockTight, CardLotStrand,
    CardLotThread, CardNumbers, CardFloor, CardCenterDiameter, CardNock, StepTie, StepSeparators, StepTwist, StepStretch,
    StepRest, StepServe, StepStretchAgain, StepMeasure, StepInspect, CardWarning, CardWarningShort, CardCaution,
    CardCautionShort,

    // Marking strip.
    StripTitle, StripOnJig, StripFinished, StripLayOnJig, StripLayFinished, StripClosing, StripJoining, StripPart,
    StripPartRange, StripGlue, StripServe, StripServing, StripPost, StripPostOutside, StripStarts, StripEnds,
    StripEachLeg, StripLoopServed,

    // Tags.
    TagStrands, TagColors, TagDue, TagTie, TagLots, TagCode, TagCodeInPart, TagPacking, TagMeasured, SpoolTitle, SpoolLot,

    // Pull sheet.
    PullTitle, PullStrand, PullThread, PullOrder, PullSetOne, PullSetMany, PullPieceOne, PullPieceMany, PullChangeOne,
    PullChangeMany, PullSaving, PullNoSaving, PullPage, PullRemark, PullPulled, PullMaterialColumn, PullThreadColumn,
    PullColor, PullLength, PullSpools, PullDescription, PullBuilt, PullOrderColumn, PullPiece, PullCustomer, PullDue, PullPosts, PullLoops, PullChange,
    PullSpoolOne, PullSpoolMany, PullPostsMoved, PullNoChange, PullTake, PullTakeSpool, PullTakeFrom, PullRunsOut,

    // Measured record.
    RecordTitle, RecordOrder, RecordLengths, RecordOrdered, RecordTolerance, RecordMeasured, RecordOff, RecordResult,
    RecordIn, RecordTooLong, RecordTooShort, RecordMissing, RecordBuilds, RecordLoad, RecordTime, RecordTurns, RecordLots,
    RecordDate, RecordPairs, RecordPairSame, RecordPairWithin, RecordPairOutside, RecordHow, RecordAskFirst,
    RecordNoCertificate,

    // Plot of a fit.
    FitTitle, FitFacts, FitSettle, FitSettleGiven, FitBuild, FitBuildNumber, FitOutlier, FitLeftOut, FitTolerance, FitPredicted, FitDifference,

    // Test pages of printers and label sheets.
    RulerTitle, RulerFor, RulerPrint, RulerMeasure, RulerSay, RulerThen, RulerCheck, RulerAgain, RulerAcross, RulerAlong,
    RulerAcrossBox, RulerAlongBox, RulerPrinterBox, RulerEveryPage, OutlinesHowTo,
}
#pragma warning restore CS1591

/// <summary>How words are named in their files, and which fields their texts have.</summary>
public static partial class PaperWords
{
    private static readonly Dictionary<PaperWord, string[]> Fields = new()
    {
        [PaperWord.Minutes] = ["count"],
        [PaperWord.TurnOne] = ["count"],
        [PaperWord.TurnMany] = ["count"],
        [PaperWord.Rev] = ["revision"],
        [PaperWord.Superseded] = ["revision"],
        [PaperWord.PageOf] = ["page", "pages"],
        [PaperWord.Drawing] = ["scale"],
        [PaperWord.CardPostsReading] = ["setting"],
        [PaperWord.CardLoops] = ["count"],
        [PaperWord.CardDrawing] = ["scale", "unit"],
        [PaperWord.CardEndOpen] = ["end"],
        [PaperWord.CardEndMeet] = ["end", "length"],
        [PaperWord.CardTails] = ["length"],
        [PaperWord.CardAtPost] = ["post"],
        [PaperWord.CardTieEndsOf] = ["colors"],
        [PaperWord.CardFitError] = ["builds"],
        [PaperWord.CardMarksRemark] = ["unit"],
        [PaperWord.CardPlainRule] = ["pin"],
        [PaperWord.CardRange] = ["least", "most"],
        [PaperWord.CardHook] = ["direction"],
        [PaperWord.CardLegTurns] = ["turns"],
        [PaperWord.CardUnderLoad] = ["length"],
        [PaperWord.CardSpool] = ["hand", "direction"],
        [PaperWord.CardLoopsServed] = ["thread"],
        [PaperWord.CardServingsOnBack] = ["count"],
        [PaperWord.CardOverPins] = ["pin", "load"],
        [PaperWord.CardNockTight] = ["amount"],
        [PaperWord.StripTitle] = ["which", "unit"],
        [PaperWord.StripLayFinished] = ["load", "pin"],
        [PaperWord.StripClosing] = ["length"],
        [PaperWord.StripJoining] = ["length"],
        [PaperWord.StripPart] = ["part", "parts"],
        [PaperWord.StripPartRange] = ["part", "parts", "from", "to"],
        [PaperWord.StripGlue] = ["part"],
        [PaperWord.StripPost] = ["post"],
        [PaperWord.StripStarts] = ["serving"],
        [PaperWord.StripEnds] = ["serving"],
        [PaperWord.StripLoopServed] = ["thread"],
        [PaperWord.TagStrands] = ["count", "colors"],
        [PaperWord.TagColors] = ["colors"],
        [PaperWord.TagDue] = ["due"],
        [PaperWord.TagTie] = ["end"],
        [PaperWord.TagLots] = ["lots"],
        [PaperWord.TagCode] = ["what"],
        [PaperWord.PullSetMany] = ["count"],
        [PaperWord.PullPieceMany] = ["count"],
        [PaperWord.PullChangeMany] = ["count"],
        [PaperWord.PullSaving] = ["changes", "ordered"],
        [PaperWord.PullNoSaving] = ["changes"],
        [PaperWord.PullPage] = ["page", "pages"],
        [PaperWord.PullRemark] = ["waste"],
        [PaperWord.PullPosts] = ["unit"],
        [PaperWord.PullSpoolOne] = ["colors"],
        [PaperWord.PullSpoolMany] = ["colors"],
        [PaperWord.TagMeasured] = ["length", "date"],
        [PaperWord.SpoolLot] = ["lot"],
        [PaperWord.PullTakeSpool] = ["number", "lot"],
        [PaperWord.PullTakeFrom] = ["spool", "build"],
        [PaperWord.PullRunsOut] = ["build", "length"],
        [PaperWord.RecordOrder] = ["order"],
        [PaperWord.RecordTooLong] = ["length"],
        [PaperWord.RecordTooShort] = ["length"],
        [PaperWord.RecordPairSame] = ["first", "second"],
        [PaperWord.RecordPairWithin] = ["first", "second", "length", "tolerance"],
        [PaperWord.RecordPairOutside] = ["first", "second", "length", "tolerance"],
        [PaperWord.RecordHow] = ["pin", "load"],
        [PaperWord.FitTitle] = ["material", "strands"],
        [PaperWord.FitFacts] = ["builds", "amount", "error", "settle", "scatter"],
        [PaperWord.FitSettle] = ["settle", "error"],
        [PaperWord.FitSettleGiven] = ["settle"],
        [PaperWord.FitBuildNumber] = ["number"],
        [PaperWord.FitTolerance] = ["amount"],
        [PaperWord.FitPredicted] = ["unit"],
        [PaperWord.FitDifference] = ["unit"],
        [PaperWord.RulerFor] = ["printer"],
        [PaperWord.RulerAcross] = ["length"],
        [PaperWord.RulerAlong] = ["length"],
    };

    /// <summary>All words, in the order in which they are listed.</summary>
    public static IReadOnlyList<PaperWord> All { get; } = Enum.GetValues<PaperWord>();

    /// <summary>As files have it: <c>card_set_posts</c>.</summary>
    public static string KeyOf(PaperWord word)
    {
        var key = new StringBuilder();
        foreach (var c in $"{word}")
        {
            key.Append(char.IsUpper(c) && key.Length > 0 ? "_" : "").Append(char.ToLowerInvariant(c));
        }

        return key.ToString();
    }

    /// <summary>The fields that a word's text has to have, each once or more.</summary>
    public static IReadOnlyList<string> FieldsOf(PaperWord word) => Fields.GetValueOrDefault(word, []);

    /// <summary>The fields in a text: the names in braces.</summary>
    public static IEnumerable<string> FieldsIn(string text) =>
        text.Contains('{', StringComparison.Ordinal) ? Field().Matches(text).Select(m => m.Groups[1].Value) : [];

    [GeneratedRegex(@"\{([^{}]*)\}")]
    private static partial Regex Field();
}
