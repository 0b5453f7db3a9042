using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Output;

namespace Tagend.Pages.Sheet;

/// <summary>A safety message: the symbol in a field at the left, and beside it the signal word and the message.</summary>
/// <remarks>
/// Told apart by the word and by its field, black, heavily or lightly framed: no color and no gray, which cheap
/// printers turn into dots behind the symbol.
/// NOTICE has no safety alert symbol, for it is not about injury; elsewhere the symbol goes before the word, stands on
/// its line and is no lower than its letters (ANSI Z535.6).
/// </remarks>
internal sealed record CautionPanel(SignalWord Word, PaperLanguage Language, IReadOnlyList<Span> Message, SheetStyle Style) : Block
{
    private const float Border = 1;

    private float Padding => Style.PanelPadding;

    private byte Gray => Word == SignalWord.Danger ? (byte)0 : (byte)255;

    /// <summary>Of the line around the field.</summary>
    private float FieldBorder => Word == SignalWord.Warning ? 2.5f : Border;

    private float Symbol => Style.Size * 1.25f;

    private float Field => Word == SignalWord.Notice ? 0 : Symbol + (2 * Padding);

    public override Placement Place(Fonts fonts, Room room)
    {
        var text = new Paragraph([new Span(Word.In(Language), Style.Signal), new Span("\u00A0 ", Style.Text), .. Message]);
        var placement = text.Place(fonts, new Room(room.Width - Field - (2 * Padding), room.Height - (2 * Padding)));
        if (placement is not Placed message)
        {
            return placement;
        }

        var height = message.Height + (2 * Padding);
        var frame = new BoxInk(0, 0, room.Width, height, Border);
        var symbol = AlertSymbol.InkAt(
            Padding, Padding + message.Baseline - AlertSymbol.HeightOf(Symbol), Symbol, (byte)(255 - Gray));
        IReadOnlyList<Ink> inks = Word == SignalWord.Notice
            ? [frame]
            : [new BoxInk(0, 0, Field, height, FieldBorder, Gray), .. symbol, frame];
        return new Placed(room.Width, height, inks, [new PlacedChild(Field + Padding, Padding, message)]);
    }
}

/// <summary>The safety alert symbol: an exclamation mark in a triangle of equal sides.</summary>
internal static class AlertSymbol
{
    /// <param name="width">Of the triangle, in points.</param>
    public static float HeightOf(float width) => width * MathF.Sqrt(3) / 2;

    /// <summary>The triangle in one shade, the mark in its opposite.</summary>
    public static IEnumerable<Ink> InkAt(float x, float y, float width, byte gray)
    {
        var height = HeightOf(width);
        var center = x + (width / 2);
        var mark = (byte)(255 - gray);
        yield return new ShapeInk([(center, y), (x + width, y + height), (x, y + height)], Fill: gray);
        yield return new ShapeInk(
            [
                (center - (width * 0.065f), y + (height * 0.32f)),
                (center + (width * 0.065f), y + (height * 0.32f)),
                (center + (width * 0.035f), y + (height * 0.70f)),
                (center - (width * 0.035f), y + (height * 0.70f)),
            ],
            Fill: mark);
        yield return new OvalInk(center, y + (height * 0.83f), width * 0.06f, width * 0.06f, Fill: mark);
    }
}
