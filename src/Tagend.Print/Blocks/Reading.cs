using Tagend.Output;

namespace Tagend.Blocks;

/// <summary>A length in a column: wholes stand under wholes and fractions under fractions.</summary>
/// <param name="Text">A whole number, a fraction, both with a space between, or a decimal.</param>
public sealed record Reading(string Text, TextStyle Style) : Block
{
    private const string WidestFraction = "00/00";
    private const float GapInEms = 0.22f;

    public override Placement Place(Fonts fonts, Room room)
    {
        var width = NaturalWidth(fonts);
        if (!room.HoldsWidth(width) || !room.HoldsHeight(Style.LineHeight))
        {
            return new Misfit($"\"{Text}\" takes {width:0.#} × {Style.LineHeight:0.#} pt and has {room.Width:0.#} × {room.Height:0.#} pt");
        }

        var baseline = Style.BaselineFrom(0);
        if (Text.Contains('.', StringComparison.Ordinal))
        {
            var left = room.Width - fonts.WidthOf(Text, Style);
            return new Placed(room.Width, Style.LineHeight, [new TextInk(left, baseline, Text, Style)], [], baseline);
        }

        var parts = Text.Split(' ');
        var whole = parts[0].Contains('/', StringComparison.Ordinal) ? "" : parts[0];
        var fraction = parts[^1].Contains('/', StringComparison.Ordinal) ? parts[^1] : "";
        var edge = room.Width - fonts.WidthOf(WidestFraction, Style);
        var inks = new List<Ink>();
        if (whole.Length > 0)
        {
            inks.Add(new TextInk(edge - (Style.Size * GapInEms) - fonts.WidthOf(whole, Style), baseline, whole, Style));
        }

        if (fraction.Length > 0)
        {
            inks.Add(new TextInk(edge, baseline, fraction, Style));
        }

        return new Placed(room.Width, Style.LineHeight, inks, [], baseline);
    }

    public override float NaturalWidth(Fonts fonts) => Text.Contains('.', StringComparison.Ordinal)
        ? fonts.WidthOf(Text, Style)
        : fonts.WidthOf("000" + WidestFraction, Style) + (Style.Size * GapInEms);
}
