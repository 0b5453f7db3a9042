using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Specs;

namespace Tagend.Pages.Card;

/// <summary>One end of a piece over its measuring pin, at true size, with a scale from the outside of the pin. In points.</summary>
/// <param name="loop">The loop's geometry.</param>
/// <param name="length">From the outside of the pin to where the legs meet; zero where the loop is left open.</param>
internal sealed class CardEnd(BuildSpec spec, string name, EndLoop loop, Length length, CardWriter write)
{
    /// <summary>Of the title, which may be wider than the picture.</summary>
    public const float TitleHeight = 10;

    private const float Line = 0.6f;
    private const float ScaleHeight = 13;
    private const int ArcSteps = 12;

    private bool IsB => name == "B";

    private Length Window => write.Unit == LengthUnit.Inch ? Length.FromInches(1.5) : Length.FromMillimeters(40);

    private float HalfLeg => Points.Of(loop.HalfLeg);

    private float Outside => Points.Of(loop.Radius) + HalfLeg;

    private float HalfBundle => Points.Of(spec.Bundle.Diameter) / 2;

    /// <summary>Where the legs meet, or the edge of the picture.</summary>
    private float Closed => loop.IsOpen ? Points.Of(Window) : Math.Min(Points.Of(length), Points.Of(Window));

    /// <summary>Of the strands beyond the outside of the pin.</summary>
    private float Over => (2 * HalfLeg) + Line;

    public float Width => Over + Points.Of(Window) + 4;

    private float Height => TitleHeight + (2 * Math.Max(Outside, HalfBundle)) + (2 * Line) + ScaleHeight;

    public Block Block => new Drawing(
        Height,
        (fonts, room) => room.HoldsWidth(Width)
            ? new Placed(Width, Height, [.. Inks(fonts)])
            : new Misfit($"an end at true size of {Width:0.#} pt has {room.Width:0.#} pt of width"));

    private IEnumerable<Ink> Inks(Fonts fonts)
    {
        var scale = Height - ScaleHeight;
        var middle = (TitleHeight + scale) / 2;
        IEnumerable<Ink> inks =
        [
            .. Loop(middle),
            .. Body(middle),
            new LineInk(X(0), TitleHeight, X(0), scale, Line, Dash: 2),
            .. Places(fonts, middle),
            .. Scale(fonts, scale),
        ];
        var title = loop.IsOpen
            ? write.Language.Say(PaperWord.CardEndOpen, ("end", name))
            : write.Language.Say(PaperWord.CardEndMeet, ("end", name), ("length", write.Setting(length)));
        var type = TypeScale.Heading with { Tracking = 0 };
        return inks.Prepend(new TextInk(IsB ? Width - fonts.WidthOf(title, type) : 0, type.BaselineFrom(0), title, type));
    }

    /// <summary>A distance from the end, in the picture: end B is drawn the other way around.</summary>
    private float X(float fromEnd) => IsB ? Width - Over - fromEnd : Over + fromEnd;

    private Length FromEnd(Length fromA) => IsB ? spec.FromB(fromA) : fromA;

    private bool IsServed(float fromEnd) => spec.Servings.Any(s =>
    {
        var (from, to) = (Points.Of(FromEnd(s.From)), Points.Of(FromEnd(s.To)));
        return Math.Min(from, to) <= fromEnd && Math.Max(from, to) > fromEnd;
    });

    private IEnumerable<Ink> Loop(float middle)
    {
        var isServed = loop.Thread > Length.Zero;
        yield return new ShapeInk(Contour(Outside, HalfLeg, middle), isServed ? 0 : Line, isServed ? (byte)0 : (byte)255);
        yield return new ShapeInk(Contour(Outside - (2 * HalfLeg), -HalfLeg, middle), isServed ? 0 : Line, 255);
        var pin = Points.Of(spec.Posts.PinDiameter) / 2;
        yield return new OvalInk(X(pin), middle, pin, pin, Line, 255);
    }

    /// <summary>Around the pin at a radius, and along both legs at a distance from their axes.</summary>
    private List<(float X, float Y)> Contour(float radius, float fromAxis, float middle)
    {
        var arc = (float)(loop.IsOpen ? Math.PI / 2 : loop.Arc);
        var axis = Points.Of(spec.Posts.PinDiameter) / 2;
        var end = loop.IsOpen
            ? (X: Closed, Y: radius)
            : (X: Closed - (fromAxis * MathF.Cos(arc)), Y: HalfLeg + (fromAxis * MathF.Sin(arc)));
        var half = Enumerable.Range(0, ArcSteps + 1)
            .Select(i => arc * i / ArcSteps)
            .Select(angle => (X: axis - (radius * MathF.Cos(angle)), Y: radius * MathF.Sin(angle)))
            .Append(end)
            .ToList();
        return
        [
            .. half.Select(p => (X(p.X), middle - p.Y)).Reverse(),
            .. half.Skip(1).Select(p => (X(p.X), middle + p.Y)),
        ];
    }

    /// <summary>From where the legs meet to the edge of the picture.</summary>
    private IEnumerable<Ink> Body(float middle)
    {
        var edge = Points.Of(Window);
        var cuts = spec.Servings.SelectMany(s => new[] { Points.Of(FromEnd(s.From)), Points.Of(FromEnd(s.To)) })
            .Where(x => x > Closed && x < edge)
            .Append(Closed)
            .Append(edge)
            .Order()
            .ToList();
        foreach (var (from, to) in cuts.Zip(cuts.Skip(1)).Where(c => c.Second > c.First))
        {
            var left = Math.Min(X(from), X(to));
            yield return IsServed(from)
                ? new BoxInk(left, middle - HalfBundle, to - from, 2 * HalfBundle, Fill: 0)
                : new BoxInk(left, middle - HalfBundle, to - from, 2 * HalfBundle, Line, 255);
        }
    }

    /// <summary>Separators and marks with their letters in the card's table.</summary>
    private IEnumerable<Ink> Places(Fonts fonts, float middle)
    {
        var type = TypeScale.Heading with { Tracking = 0 };
        var last = float.MinValue;
        foreach (var place in CardPlaces.PlacesOf(spec, write).Where(p => FromEnd(p.Position) <= Window))
        {
            var x = X(Points.Of(FromEnd(place.Position)));
            var below = middle + HalfBundle + 3;
            yield return new LineInk(x, middle - HalfBundle - 3, x, below, 1.2f);
            var key = place.Key;
            var width = fonts.WidthOf(key, type);
            if (x - (width / 2) > last + 2)
            {
                yield return new TextInk(x - (width / 2), below + 1 + type.CapHeight, key, type);
                last = x + (width / 2);
            }
        }
    }

    private IEnumerable<Ink> Scale(Fonts fonts, float top)
    {
        var (step, steps, numbered, perNumber) = write.Unit == LengthUnit.Inch
            ? (Length.FromInches(1.0 / 8), 12, 8, 1)
            : (Length.FromMillimeters(5), 8, 2, 10);
        yield return new LineInk(X(0), top, X(Points.Of(Window)), top, PieceLabels.Leader);
        for (var i = 0; i <= steps; i++)
        {
            var x = X(Points.Of(step * i));
            yield return new LineInk(x, top, x, top + (i % numbered == 0 ? 4.5f : 2.5f), PieceLabels.Leader);
            if (i % numbered == 0)
            {
                var number = $"{i / numbered * perNumber}";
                var width = fonts.WidthOf(number, TypeScale.Caption);
                yield return new TextInk(x - (width / 2), TypeScale.Caption.BaselineFrom(top + 4.5f), number, TypeScale.Caption);
            }
        }
    }
}
