using Tagend.Blocks;
using Tagend.Output;

namespace Tagend.Pages.Card;

/// <summary>A length at the size that is read at arm's length: the fraction smaller and slanted, so that it is not taken for digits.</summary>
/// <param name="Text">A whole number or decimal, a fraction or both, and the unit, with spaces between.</param>
internal sealed record BigReading(string Text) : Block
{
    private const float FractionSize = 0.55f;
    private const float SlashSize = 0.78f;
    private const float UnitSize = 0.3f;

    public override Placement Place(Fonts fonts, Room room)
    {
        var whole = TypeScale.Post;
        var small = whole with { Size = whole.Size * FractionSize, Tracking = 0 };
        var slash = whole with { Weight = Weight.SemiBold, Size = whole.Size * SlashSize, Tracking = 0 };
        var unit = whole with { Size = whole.Size * UnitSize, Tracking = 0 };
        var height = whole.CapHeight * 1.1f;
        var baseline = whole.CapHeight * 1.05f;
        var inks = new List<Ink>();
        var x = 0f;
        foreach (var part in Text.Split(' '))
        {
            if (part.Contains('/', StringComparison.Ordinal))
            {
                var (top, bottom) = (part.Split('/')[0], part.Split('/')[1]);
                x += inks.Count > 0 ? whole.Size * 0.08f : 0;
                Put(top, small, baseline - whole.CapHeight + small.CapHeight);
                x -= whole.Size * 0.05f;
                Put("/", slash, baseline - (whole.CapHeight * 0.1f));
                x -= whole.Size * 0.05f;
                Put(bottom, small, baseline);
            }
            else if (char.IsLetter(part[0]))
            {
                x += whole.Size * 0.14f;
                Put(part, unit, baseline);
            }
            else
            {
                Put(part, whole, baseline);
            }
        }

        return room.HoldsWidth(x) && room.HoldsHeight(height)
            ? new Placed(x, height, inks)
            : new Misfit($"\"{Text}\" takes {x:0.#} × {height:0.#} pt and has {room.Width:0.#} × {room.Height:0.#} pt");

        void Put(string text, TextStyle style, float at)
        {
            inks.Add(new TextInk(x, at, text, style));
            x += fonts.WidthOf(text, style);
        }
    }
}
