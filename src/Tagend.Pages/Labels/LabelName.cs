using Tagend.Blocks;
using Tagend.Output;

namespace Tagend.Pages.Labels;

/// <summary>The name of a label, its words in bold after a lighter order number: on one line, else one under the other.</summary>
/// <param name="Piece">Empty on a bag.</param>
/// <param name="MayBreak">Whether a word is broken rather than refused where it does not fit.</param>
internal sealed record LabelName(string Order, string Piece, TextStyle Style, bool MayBreak) : Block
{
    private const float LeastSize = 8;

    /// <summary>In which a size is lessened, in points.</summary>
    private const float Step = 0.5f;

    private TextStyle OrderStyle => Piece.Length == 0 ? Style : Style with { Weight = Weight.Regular };

    public override Placement Place(Fonts fonts, Room room)
    {
        var order = new Span(Order, OrderStyle);
        var piece = new Span(Piece.Replace(' ', '\u00A0'), Style);
        if (room.HoldsWidth(WidthOf(order) + WidthOf(piece) + fonts.WidthOf(" ", Style)))
        {
            Paragraph oneLine = Piece.Length == 0 ? new([order]) : new([order with { Text = $"{Order}\u00A0" }, piece]);
            return oneLine.Place(fonts, room);
        }

        if (!MayBreak && !room.HoldsWidth(Math.Max(WidthOf(order), WidthOf(piece))))
        {
            return new Misfit($"\"{Order} {Piece}\" is wider than {room.Width:0.#} pt at {Style.Size:0.#} pt");
        }

        IEnumerable<Span> lines = Piece.Length == 0 ? [order] : [order, new Span(Piece, Style)];
        return new Stack([.. lines.Select(l => new Paragraph([Narrowed(l)]))]).Place(fonts, room);

        // A word that is too wide at the smallest size of a name is smaller still before it is broken.
        Span Narrowed(Span line)
        {
            var narrow = line;
            while (narrow.Style.Size > LeastSize && !room.HoldsWidth(line.Text.Split(' ').Max(word => fonts.WidthOf(word, narrow.Style))))
            {
                narrow = line with { Style = narrow.Style with { Size = narrow.Style.Size - Step } };
            }

            return narrow;
        }

        float WidthOf(Span span) => fonts.WidthOf(span.Text, span.Style);
    }
}
