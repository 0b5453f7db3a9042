using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Specs;

namespace Tagend.Pages.Card;

/// <summary>The piece from end to end, to a stated scale, with everything that sits on it.</summary>
internal sealed class PieceDrawing(BuildSpec spec, (string A, string B) ends, CardWriter write)
{
    private const float EndSquare = 13;
    private const float EndGap = 3;
    private const float HalfServing = 4;
    private const float HalfStrands = 1.1f;
    private const float HalfLegServing = 2.6f;
    private const float LegSpread = 5.5f;
    private const float LoopLength = 11;
    private const float NockHeight = 6;
    private const float KeyHeight = 10;
    private const float LeastLeader = 4;
    private const float LabelsHeight = 20;
    private const float RulerHeight = 13;

    private readonly IReadOnlyList<CardPlace> _places = CardPlaces.PlacesOf(spec, write);

    private static TextStyle Small => TypeScale.Caption;

    private static TextStyle SmallBold => TypeScale.Heading with { Tracking = 0 };

    /// <summary>Where places of the piece are in a drawing of a width, in points.</summary>
    public PieceScale ScaleIn(float width) => PieceScale.ToFit(spec.FinishedLength, width, EndSquare + EndGap);

    public Block Of(CardStyle style) =>
        new Drawing(_places.Count == 0 ? style.DrawingHeight - LabelsHeight : style.DrawingHeight, Draw);

    private Placement Draw(Fonts fonts, Room room)
    {
        var scale = ScaleIn(room.Width);
        var keys = PieceLabels.Keys(spec, fonts, scale);
        var labels = PieceLabels.Names(_places, fonts, scale, write) ?? PieceLabels.Letters(_places, fonts, scale);
        if (keys is null || labels is null)
        {
            return new Misfit(
                $"{spec.Servings.Count} servings and {_places.Count} separators and marks cannot be labeled side by side within {room.Width:0.#} pt");
        }

        var keyTop = Small.LineHeight + 2;
        var labelTop = room.Height - RulerHeight - (_places.Count == 0 ? 0 : LabelsHeight);
        var slack = labelTop - keyTop - KeyHeight - LeastLeader - (2 * HalfServing) - NockHeight;
        var bar = keyTop + KeyHeight + LeastLeader + HalfServing + (slack * 0.4f);
        return new Placed(
            room.Width,
            room.Height,
            [
                .. Titles(fonts, scale),
                .. Ends(fonts, scale, bar),
                .. Strands(scale, bar),
                .. keys.SelectMany(k => KeyInks(fonts, k, keyTop, bar)),
                .. _places.Select(p => Symbol(p, scale.At(p.Position), bar)),
                .. labels.Zip(_places).SelectMany(l => LabelInks(fonts, l.First, l.Second, labelTop, bar)),
                .. Ruler(fonts, scale, room.Height - RulerHeight),
            ]);
    }

    private IEnumerable<Ink> Titles(Fonts fonts, PieceScale scale)
    {
        var baseline = Small.BaselineFrom(0);
        var middle = write.Language.Say(PaperWord.CardDrawing, ("scale", $"{scale.Denominator}"), ("unit", write.UnitWord));
        yield return new TextInk(0, baseline, ends.A, SmallBold);
        yield return new TextInk((scale.Width - fonts.WidthOf(middle, Small)) / 2, baseline, middle, Small);
        yield return new TextInk(scale.Width - fonts.WidthOf(ends.B, SmallBold), baseline, ends.B, SmallBold);
    }

    private static IEnumerable<Ink> Ends(Fonts fonts, PieceScale scale, float bar)
    {
        var style = TypeScale.BodyBold with { Gray = 255 };
        foreach (var (name, x) in new[] { ("A", scale.Left - EndSquare - EndGap), ("B", scale.Right + EndGap) })
        {
            yield return new BoxInk(x, bar - (EndSquare / 2), EndSquare, EndSquare, Fill: 0, Radius: 2);
            yield return Centered(fonts, name, style, x + (EndSquare / 2), bar + (style.CapHeight / 2));
        }
    }

    private IEnumerable<Ink> Strands(PieceScale scale, float bar)
    {
        var (from, to) = (scale.Left + LoopLength - 1, scale.Right - LoopLength + 1);
        var body = spec.Yoke is { } yoke ? scale.At(yoke.Split) : from;
        foreach (var ink in spec.Yoke is null ? [] : LegInks(scale, from, body, bar))
        {
            yield return ink;
        }

        yield return new BoxInk(body, bar - HalfStrands, to - body, 2 * HalfStrands, Fill: 0);
        foreach (var serving in spec.Servings.Where(s => !spec.IsOnLegs(s)))
        {
            var start = Math.Max(scale.At(serving.From), from);
            var end = Math.Min(scale.At(serving.To), to);
            if (end > start)
            {
                yield return new BoxInk(start, bar - HalfServing, end - start, 2 * HalfServing, Fill: 0);
            }
        }

        var isServed = spec.EndLoops?.Serving is not null;
        yield return Loop(scale.Right - (LoopLength / 2), bar, isServed);
        foreach (var leg in Legs(bar))
        {
            yield return Loop(scale.Left + (LoopLength / 2), leg, isServed);
        }
    }

    /// <summary>Where the axes of the legs at end A are; the piece's own where it has none.</summary>
    private IEnumerable<float> Legs(float bar) => spec.Yoke is null ? [bar] : [bar - LegSpread, bar + LegSpread];

    /// <summary>The legs of a yoke from their loops to where they join, with what is served on each of them.</summary>
    private IEnumerable<Ink> LegInks(PieceScale scale, float from, float split, float bar)
    {
        const float Join = 12;
        foreach (var leg in Legs(bar))
        {
            var parallel = Math.Max(from, split - Join);
            yield return new BoxInk(from, leg - HalfStrands, parallel - from, 2 * HalfStrands, Fill: 0);
            yield return new ShapeInk(
                [(parallel, leg - HalfStrands), (split, bar - HalfStrands), (split, bar + HalfStrands), (parallel, leg + HalfStrands)], Fill: 0);
            foreach (var serving in spec.Servings.Where(spec.IsOnLegs))
            {
                var (start, end) = (Math.Max(scale.At(serving.From), from), Math.Min(scale.At(serving.To), parallel));
                if (end > start)
                {
                    yield return new BoxInk(start, leg - HalfLegServing, end - start, 2 * HalfLegServing, Fill: 0);
                }
            }
        }
    }

    private static OvalInk Loop(float center, float bar, bool isServed)
    {
        var stroke = isServed ? 2.6f : 1.3f;
        return new OvalInk(center, bar, (LoopLength - stroke) / 2, HalfServing + 0.6f - (stroke / 2), stroke, 255);
    }

    private static Ink Symbol(CardPlace place, float x, float bar) => place switch
    {
        { Separator: not null } => new OvalInk(x, bar, 4.2f, 3, 1, 255),
        { Mark.Kind: MarkKind.NockPoint } => new ShapeInk(
            [(x, bar + HalfServing + 0.5f), (x + 3.4f, bar + HalfServing + NockHeight), (x - 3.4f, bar + HalfServing + NockHeight)], Fill: 0),
        _ => new BoxInk(x - 1.6f, bar - 3.2f, 3.2f, 6.4f, 0.6f, 255),
    };

    private static IEnumerable<Ink> KeyInks(Fonts fonts, PieceLabel key, float top, float bar)
    {
        yield return new LineInk(key.Center, top + KeyHeight, key.Place, bar - HalfServing, PieceLabels.Leader);
        yield return new BoxInk(key.Center - (key.Width / 2), top, key.Width, KeyHeight, 0.6f, 255, KeyHeight / 2);
        yield return Centered(fonts, key.Name, SmallBold, key.Center, top + ((KeyHeight + SmallBold.CapHeight) / 2));
    }

    private static IEnumerable<Ink> LabelInks(Fonts fonts, PieceLabel label, CardPlace place, float top, float bar)
    {
        var below = place.Mark?.Kind == MarkKind.NockPoint ? HalfServing + NockHeight : HalfServing;
        yield return new LineInk(label.Place, bar + below, label.Center, top, PieceLabels.Leader);
        yield return Centered(fonts, label.Name, SmallBold, label.Center, SmallBold.BaselineFrom(top));
        if (label.Position.Length > 0)
        {
            yield return Centered(fonts, label.Position, Small, label.Center, Small.BaselineFrom(top + SmallBold.LineHeight));
        }
    }

    /// <summary>Ticks at each inch with a number at each tenth, or at each 50 mm with a number at each 250.</summary>
    private IEnumerable<Ink> Ruler(Fonts fonts, PieceScale scale, float top)
    {
        var (step, value, numbered) = write.Unit == LengthUnit.Inch
            ? (Length.FromInches(1), 1, 10)
            : (Length.FromMillimeters(50), 50, 5);
        yield return new LineInk(scale.Left, top, scale.Right, top, PieceLabels.Leader);
        for (var i = 0; step * i <= spec.FinishedLength; i++)
        {
            var x = scale.At(step * i);
            yield return new LineInk(x, top, x, top + (i % numbered == 0 ? 4 : 1.8f), PieceLabels.Leader);
            if (i % numbered == 0)
            {
                yield return Centered(fonts, $"{i * value}", Small, x, Small.BaselineFrom(top + 4));
            }
        }
    }

    private static TextInk Centered(Fonts fonts, string text, TextStyle style, float center, float baseline) =>
        new(center - (fonts.WidthOf(text, style) / 2), baseline, text, style);
}
