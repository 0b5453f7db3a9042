using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Output;
using Tagend.Pages.Parts;

namespace Tagend.Pages.Card;

/// <summary>Bottom of a card: what was measured, and the cautions of the bench.</summary>
internal static class CardFoot
{
    /// <summary>Less height than this is left empty, in points.</summary>
    private const float LeastNotes = 13;

    public static IReadOnlyList<Block> Of(CardStyle style, CardWriter write)
    {
        var words = write.Language;
        var boxes = Row.Equal(
            [
                new FillIn(words[PaperWord.CardPostsSet], write.UnitSymbol, style.BoxHeight),
                new FillIn(words[PaperWord.CardTurnsIn], "", style.BoxHeight),
                new FillIn(words[PaperWord.CardStretchLoad], write.LoadSymbol, style.BoxHeight),
                new FillIn(words[PaperWord.CardStretchTime], words.Say(PaperWord.Minutes, ("count", "")).Trim(), style.BoxHeight),
                new FillIn(words[PaperWord.CardMeasured], write.UnitSymbol, style.BoxHeight),
                new FillIn(words[PaperWord.CardInitials], "", style.BoxHeight),
            ],
            gap: 4);
        return
        [
            style.IsClose ? boxes : CardStyle.Part(words[PaperWord.CardAsBuilt], words[PaperWord.CardAsBuiltRemark], boxes),
            new Grow(new Drawing(0, (fonts, room) => Notes(words, fonts, room))),
            Cautions(style, words),
        ];
    }

    private static Placement Notes(PaperLanguage words, Fonts fonts, Room room) => room.Height < LeastNotes
        ? new Placed(room.Width, 0)
        : new FillIn(words[PaperWord.CardNotesBox], "", room.Height).Place(fonts, room);

    /// <summary>Hazard, what it could do, how to avoid it; shorter where the card is full.</summary>
    private static Box Cautions(CardStyle style, PaperLanguage words) => new(
        new Paragraph(
        [
            new Span($"⚠\u00A0{words[PaperWord.Warning]}  ", TypeScale.Heading),
            new Span(words[style.IsTight ? PaperWord.CardWarningShort : PaperWord.CardWarning] + "  ", TypeScale.Caption),
            new Span($"⚠\u00A0{words[PaperWord.Caution]}  ", TypeScale.Heading),
            new Span(words[style.IsTight ? PaperWord.CardCautionShort : PaperWord.CardCaution], TypeScale.Caption),
        ]),
        Padding: 3,
        Border: 0.8f);
}
