using Tagend.Output;

namespace Tagend.Blocks;

/// <summary>A length in a column: wholes stand under wholes and fractions under fractions.</summary>
/// <param name="Text">A whole number, a fraction, both with a space between, or a decimal.</param>
/// <param name="WidestFraction">Of the column, with the space before it; empty where it has none.</param>
public sealed record Reading(string Text, string WidestFraction, TextStyle Style) : Block
{
    /// <summary>The readings of one column, in its order.</summary>
    public static IReadOnlyList<Reading> Column(IReadOnlyList<string> texts, TextStyle style, Fonts fonts)
    {
        var widest = texts.Select(t => Split(t).Fraction).MaxBy(f => fonts.WidthOf(f, style)) ?? "";
        return [.. texts.Select(t => new Reading(t, widest, style))];
    }

    public override Placement Place(Fonts fonts, Room room)
    {
        var width = NaturalWidth(fonts);
        if (!room.HoldsWidth(width) || !room.HoldsHeight(Style.LineHeight))
        {
            return new Misfit($"\"{Text}\" takes {width:0.#} × {Style.LineHeight:0.#} pt and has {room.Width:0.#} × {room.Height:0.#} pt");
        }

        var (whole, fraction) = Split(Text);
        var edge = room.Width - fonts.WidthOf(WidestFraction, Style);
        var text = whole.Length == 0 ? fraction.TrimStart() : whole + fraction;
        var left = whole.Length == 0 ? edge + fonts.WidthOf(" ", Style) : edge - fonts.WidthOf(whole, Style);
        var baseline = Style.BaselineFrom(0);
        return new Placed(room.Width, Style.LineHeight, [new TextInk(left, baseline, text, Style)], [], baseline);
    }

    public override float NaturalWidth(Fonts fonts) => fonts.WidthOf(Split(Text).Whole + WidestFraction, Style);

    private static (string Whole, string Fraction) Split(string text)
    {
        var parts = text.Split(' ');
        return parts[^1].Contains('/', StringComparison.Ordinal)
            ? (string.Concat(parts[..^1]), " " + parts[^1])
            : (text, "");
    }
}
