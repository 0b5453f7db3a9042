using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Pages.Parts;
using Tagend.Specs;

namespace Tagend.Pages.Card;

/// <summary>What is written by hand on a card, and the cautions of the bench.</summary>
internal static class CardBoxes
{
    private const float Gap = 3;

    /// <summary>Less height than this is no room to write in, in points.</summary>
    private const float LeastNotes = 30;

    /// <summary>What was measured, and the lots of what it was built of: those the spec has beside the title.</summary>
    public static Stack AsBuilt(BuildSpec spec, CardStyle style, CardWriter write)
    {
        var words = write.Language;
        Row Boxes(params IEnumerable<(PaperWord Name, string Unit)> boxes) =>
            Row.Equal(boxes.Select(b => new FillIn(words[b.Name], b.Unit, style.BoxHeight)), Gap);
        (PaperWord, string)[] first =
        [
            (PaperWord.CardPostsSet, write.UnitSymbol),
            (PaperWord.CardTurnsIn, ""),
            (PaperWord.CardStretchLoad, write.LoadSymbol),
            (PaperWord.CardStretchTime, words.Say(PaperWord.Minutes, ("count", "")).Trim()),
        ];
        (PaperWord, string)[] second =
        [
            (PaperWord.CardMeasured, write.UnitSymbol),
            (PaperWord.CardLotStrand, ""),
            (PaperWord.CardLotThread, ""),
            (PaperWord.CardInitials, ""),
        ];
        return CardStyle.Section(
            words[PaperWord.CardAsBuilt], write.Lots(spec), style.IsSheet ? [Boxes([.. first, .. second])] : [Boxes(first), new Spacer(Gap), Boxes(second)]);
    }

    /// <summary>Takes what the card leaves.</summary>
    public static Grow Notes(CardWriter write) => new(new Drawing(LeastNotes, (fonts, room) =>
        new FillIn(write.Language[PaperWord.CardNotesBox], "", Math.Max(LeastNotes, room.Height)).Place(fonts, room)));

    /// <summary>Hazard, what it could do, how to avoid it; shorter where the card is full.</summary>
    public static Box Cautions(CardStyle style, PaperLanguage words)
    {
        var isShort = style.RowPadding < 1;
        return new Box(
            new Paragraph(
            [
                new Span($"⚠\u00A0{words[PaperWord.Warning]}  ", TypeScale.Heading),
                new Span(words[isShort ? PaperWord.CardWarningShort : PaperWord.CardWarning] + "  ", TypeScale.Caption),
                new Span($"⚠\u00A0{words[PaperWord.Caution]}  ", TypeScale.Heading),
                new Span(words[isShort ? PaperWord.CardCautionShort : PaperWord.CardCaution], TypeScale.Caption),
            ]),
            Padding: 3,
            Border: 0.8f);
    }
}
