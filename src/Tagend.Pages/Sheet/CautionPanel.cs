using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Output;

namespace Tagend.Pages.Sheet;

/// <summary>A safety message: symbol and signal word at the left, the message beside them.</summary>
/// <remarks>
/// Told apart by the word and by its field, black, heavily or lightly framed: no color and no gray, which cheap
/// printers turn into dots behind the word.
/// NOTICE has no safety alert symbol, for it is not about injury; elsewhere the symbol goes before the word, stands on
/// its line and is no lower than its letters (ANSI Z535.6).
/// </remarks>
internal sealed record CautionPanel(SignalWord Word, SheetLanguage Language, Paragraph Message, SheetStyle Style) : Block
{
    private const float Border = 1;

    private float Padding => Style.PanelPadding;

    private byte Field => Word == SignalWord.Danger ? (byte)0 : (byte)255;

    private byte Ink => (byte)(255 - Field);

    /// <summary>Of the line around symbol and word.</summary>
    private float FieldBorder => Word == SignalWord.Warning ? 2.5f : Border;

    private string Label => Word.In(Language);

    private float Symbol => Style.Size * 1.25f;

    public override Placement Place(Fonts fonts, Room room)
    {
        var left = LabelWidth(fonts);
        var placement = Message.Place(fonts, new Room(room.Width - left - (2 * Padding), room.Height - (2 * Padding)));
        if (placement is not Placed message)
        {
            return placement;
        }

        var signal = Style.Signal with { Gray = Ink };
        var height = Math.Max(message.Height, Symbol) + (2 * Padding);
        var middle = height / 2;
        var textLeft = Word == SignalWord.Notice ? Padding : (Padding * 2) + Symbol;
        var baseline = middle + (AlertSymbol.HeightOf(Symbol) / 2);
        List<Ink> inks =
        [
            new BoxInk(0, 0, left, height, FieldBorder, Field),
            new TextInk(textLeft, baseline, Label, signal),
            new BoxInk(0, 0, room.Width, height, Border),
        ];
        if (Word != SignalWord.Notice)
        {
            inks.AddRange(AlertSymbol.InkAt(Padding * 1.2f, baseline - AlertSymbol.HeightOf(Symbol), Symbol, Ink));
        }

        return new Placed(room.Width, height, inks, [new PlacedChild(left + Padding, (height - message.Height) / 2, message)]);
    }

    /// <summary>All panels have the field of the longest word with its symbol, so that their texts stand in line.</summary>
    private float LabelWidth(Fonts fonts) =>
        (Padding * 3.4f) + Symbol + Enum.GetValues<SignalWord>().Max(w => fonts.WidthOf(w.In(Language), Style.Signal));
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
