using Tagend.Blocks;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Specs;

namespace Tagend.Pages;

/// <summary>The piece from end to end, to a stated scale, with everything that sits on it.</summary>
internal sealed class PieceDrawing(BuildSpec spec, string endA, string endB, CardWriter write)
{
    private const float EndMark = 13;
    private const float HalfServing = 4;
    private const float HalfStrands = 1.1f;
    private const float LoopLength = 11;
    private const float LabelGap = 5;
    private const float Leader = 0.4f;
    private const float KeysHeight = 10;
    private const float RulerHeight = 13;
    private const float LabelsHeight = 20;
    private const float LeastLeader = 4;
    private const float NockHeight = 6;

    private readonly IReadOnlyList<CardPlace> _places = CardPlaces.PlacesOf(spec);

    public Block Of(CardStyle style) => new Drawing(_places.Count == 0 ? style.DrawingHeight - LabelsHeight : style.DrawingHeight, Draw);

    private Placement Draw(Fonts fonts, Room room)
    {
        var span = room.Width - (2 * (EndMark + 3));
        var scale = (int)Math.Ceiling(Points.Of(spec.FinishedLength) / span);
        var drawn = Points.Of(spec.FinishedLength) / scale;
        var left = (room.Width - drawn) / 2;
        var titleHeight = TypeScale.Caption.LineHeight + 2;
        var below = _places.Count == 0 ? 0 : LabelsHeight;
        var slack = room.Height - titleHeight - KeysHeight - LeastLeader - (2 * HalfServing) - NockHeight - below - RulerHeight;
        var bar = titleHeight + KeysHeight + LeastLeader + HalfServing + (slack * 0.4f);
        var labelTop = room.Height - RulerHeight - below;
        var ruler = room.Height - RulerHeight;

        var keys = Spread(fonts, left, scale, room.Width);
        if (keys is null)
        {
            return new Misfit($"{spec.Servings.Count} numbers of servings do not fit side by side into {room.Width:0.#} pt");
        }

        var labels = PlaceLabels(fonts, left, scale, room.Width, named: true) ?? PlaceLabels(fonts, left, scale, room.Width, named: false);
        if (labels is null)
        {
            return new Misfit($"{_places.Count} letters of separators and marks do not fit side by side into {room.Width:0.#} pt");
        }

        return new Placed(
            room.Width,
            room.Height,
            [
                .. Title(fonts, room.Width, scale),
                .. Ends(fonts, room.Width, left, drawn, bar),
                .. Piece(left, drawn, scale, bar),
                .. ServingKeys(fonts, keys, left, scale, bar, titleHeight),
                .. Symbols(left, scale, bar),
                .. Labels(fonts, labels, left, scale, bar, labelTop),
                .. Ruler(fonts, left, scale, ruler),
            ]);
    }

    private static float At(Length place, float left, int scale) => left + (Points.Of(place) / scale);

    private IEnumerable<Ink> Title(Fonts fonts, float width, int scale)
    {
        var style = TypeScale.Caption;
        var baseline = style.BaselineFrom(0);
        var middle = $"drawn 1 : {scale}, ruler in {write.UnitWord} from A";
        yield return new TextInk(0, baseline, endA, NameStyle);
        yield return new TextInk((width - fonts.WidthOf(middle, style)) / 2, baseline, middle, style);
        yield return new TextInk(width - fonts.WidthOf(endB, NameStyle), baseline, endB, NameStyle);
    }

    private static IEnumerable<Ink> Ends(Fonts fonts, float width, float left, float drawn, float bar)
    {
        var style = TypeScale.BodyBold with { Gray = 255 };
        foreach (var (name, x) in new[] { ("A", left - EndMark - 3), ("B", left + drawn + 3) })
        {
            yield return new BoxInk(x, bar - (EndMark / 2), EndMark, EndMark, Fill: 0, Radius: 2);
            yield return new TextInk(
                x + ((EndMark - fonts.WidthOf(name, style)) / 2), bar + (style.CapHeight / 2), name, style);
        }
    }

    private IEnumerable<Ink> Piece(float left, float drawn, int scale, float bar)
    {
        yield return new BoxInk(left + LoopLength - 1, bar - HalfStrands, drawn - (2 * (LoopLength - 1)), 2 * HalfStrands, Fill: 0);
        foreach (var serving in spec.Servings)
        {
            var from = Math.Max(At(serving.From, left, scale), left + LoopLength - 1);
            var to = Math.Min(At(serving.To, left, scale), left + drawn - LoopLength + 1);
            if (to > from)
            {
                yield return new BoxInk(from, bar - HalfServing, to - from, 2 * HalfServing, Fill: 0);
            }
        }

        foreach (var (center, end) in new[] { (left + (LoopLength / 2), PieceEndServed(Length.Zero)), (left + drawn - (LoopLength / 2), PieceEndServed(spec.FinishedLength)) })
        {
            var stroke = end ? 2.6f : 1.3f;
            yield return new OvalInk(center, bar, (LoopLength - stroke) / 2, HalfServing + 0.6f - (stroke / 2), stroke, 255);
        }
    }

    private bool PieceEndServed(Length end) => spec.Servings.Any(s => s.From <= end && end <= s.To);

    private float[]? Spread(Fonts fonts, float left, int scale, float width)
    {
        var centers = spec.Servings.Select(s => At(s.From + (s.Length / 2), left, scale)).ToList();
        return LabelSpread.Spread(centers, [.. centers.Select((_, i) => KeyWidth(fonts, i) + 3)], width);
    }

    private static float KeyWidth(Fonts fonts, int index) =>
        Math.Max(9, fonts.WidthOf(CardPlaces.ServingKey(index), TypeScale.BodyBold) + 5);

    private IEnumerable<Ink> ServingKeys(Fonts fonts, float[] centers, float left, int scale, float bar, float top)
    {
        var style = TypeScale.Heading with { Tracking = 0 };
        for (var i = 0; i < centers.Length; i++)
        {
            var serving = spec.Servings[i];
            var middle = At(serving.From + (serving.Length / 2), left, scale);
            var width = KeyWidth(fonts, i);
            yield return new LineInk(centers[i], top + KeysHeight, middle, bar - HalfServing, Leader);
            yield return new BoxInk(centers[i] - (width / 2), top, width, KeysHeight, 0.6f, 255, KeysHeight / 2);
            var key = CardPlaces.ServingKey(i);
            yield return new TextInk(
                centers[i] - (fonts.WidthOf(key, style) / 2), top + (KeysHeight / 2) + (style.CapHeight / 2), key, style);
        }
    }

    private IEnumerable<Ink> Symbols(float left, int scale, float bar)
    {
        foreach (var place in _places)
        {
            var x = At(place.Position, left, scale);
            yield return place switch
            {
                { Separator: not null } => new OvalInk(x, bar, 4.2f, 3, 1, 255),
                { Mark.Kind: MarkKind.NockPoint } => new ShapeInk([(x, bar + HalfServing + 0.5f), (x + 3.4f, bar + HalfServing + NockHeight), (x - 3.4f, bar + HalfServing + NockHeight)], Fill: 0),
                _ => new BoxInk(x - 1.6f, bar - 3.2f, 3.2f, 6.4f, 0.7f, 255),
            };
        }
    }

    private sealed record Label(string Name, string Position, float Center);

    private IReadOnlyList<Label>? PlaceLabels(Fonts fonts, float left, int scale, float width, bool named)
    {
        var texts = _places.Select((p, i) => (
            Name: named ? $"{CardPlaces.PlaceKey(i)} {p.Name}" : CardPlaces.PlaceKey(i),
            Position: named ? write.Bare(p.Position) : "")).ToList();
        var widths = texts.Select(t =>
            Math.Max(fonts.WidthOf(t.Name, NameStyle), fonts.WidthOf(t.Position, TypeScale.Caption)) + LabelGap).ToList();
        var centers = LabelSpread.Spread([.. _places.Select(p => At(p.Position, left, scale))], widths, width);
        return centers is null ? null : [.. texts.Select((t, i) => new Label(t.Name, t.Position, centers[i]))];
    }

    private static TextStyle NameStyle => TypeScale.Heading with { Tracking = 0 };

    private IEnumerable<Ink> Labels(Fonts fonts, IReadOnlyList<Label> labels, float left, int scale, float bar, float top)
    {
        for (var i = 0; i < labels.Count; i++)
        {
            var (name, position, center) = labels[i];
            var x = At(_places[i].Position, left, scale);
            yield return new LineInk(x, bar + HalfServing + (_places[i].Mark?.Kind == MarkKind.NockPoint ? NockHeight : 0), center, top, Leader);
            yield return new TextInk(center - (fonts.WidthOf(name, NameStyle) / 2), NameStyle.BaselineFrom(top), name, NameStyle);
            if (position.Length > 0)
            {
                yield return new TextInk(
                    center - (fonts.WidthOf(position, TypeScale.Caption) / 2),
                    TypeScale.Caption.BaselineFrom(top + NameStyle.LineHeight),
                    position,
                    TypeScale.Caption);
            }
        }
    }

    /// <summary>Tenths and wholes of a round distance, counted from end A.</summary>
    private IEnumerable<Ink> Ruler(Fonts fonts, float left, int scale, float top)
    {
        var (fine, coarse) = write.Unit == LengthUnit.Inch ? (Length.FromInches(1), 10) : (Length.FromMillimeters(50), 5);
        var style = TypeScale.Caption;
        yield return new LineInk(left, top, At(spec.FinishedLength, left, scale), top, Leader);
        for (var i = 0; fine * i <= spec.FinishedLength; i++)
        {
            var x = At(fine * i, left, scale);
            var isNumbered = i % coarse == 0;
            yield return new LineInk(x, top, x, top + (isNumbered ? 4 : i % coarse == coarse / 2 && coarse == 10 ? 3 : 1.8f), Leader);
            if (isNumbered)
            {
                var number = write.Unit == LengthUnit.Inch ? $"{i}" : $"{i * 50}";
                yield return new TextInk(x - (fonts.WidthOf(number, style) / 2), style.BaselineFrom(top + 4), number, style);
            }
        }
    }
}
