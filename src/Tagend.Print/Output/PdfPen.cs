using SkiaSharp;
using Tagend.Catalog;
using Tagend.Pdf;

namespace Tagend.Output;

/// <summary>Draws inks as the content of a PDF's page.</summary>
/// <remarks>
/// The same picture as <see cref="Pen"/> makes. In whole steps (<see cref="Points.Step"/>), lines and boxes in quarters of them: most of a page is numbers, and these are
/// short. Heights count from the page's foot.
/// </remarks>
internal sealed class PdfPen(Fonts fonts, Func<Weight, (PdfFont Font, int Number)> fontOf, PdfPictures pictures, PdfContent content, PdfParts parts)
{
    /// <summary>How far a glyph may be from its place before it is moved there: 0.014 mm, a third of a dot at 600 dpi.</summary>
    private const float LeastKern = 0.04f;

    private int _top;

    /// <summary>Makes the content of a page, instead of what there was.</summary>
    /// <param name="setting">From the inks' places to the page's, both from the top left.</param>
    /// <param name="height">Of the page.</param>
    /// <param name="top">A whole number of steps that no ink is below.</param>
    public void Draw(IReadOnlyList<Ink> inks, SKMatrix setting, double height, int top)
    {
        content.Begin();
        _top = top;
        const double Step = Points.Step;
        content.Transform(
            setting.ScaleX * Step,
            -setting.SkewY * Step,
            -setting.SkewX * Step,
            setting.ScaleY * Step,
            setting.TransX + (setting.SkewX * top * Step),
            height - setting.TransY - (setting.ScaleY * top * Step));
        for (var i = 0; i < inks.Count; i++)
        {
            switch (inks[i])
            {
                case PartStart start:
                    parts.Start(start);
                    break;
                case PartEnd:
                    parts.End();
                    break;
                case TextInk { Text.Length: 0 }:
                    break;
                case TextInk text:
                    var isAlone = parts.BeginText();
                    Draw(text, goesOn: i + 1 < inks.Count && inks[i + 1] is TextInk next && next.Baseline != text.Baseline && !isAlone);
                    if (isAlone)
                    {
                        parts.End();
                    }

                    break;
                default:
                    parts.BeginGraphic();
                    Draw(inks[i]);
                    break;
            }
        }

        parts.EndPage();
    }

    private void Draw(Ink ink)
    {
        switch (ink)
        {
            case LineInk line:
                Draw(line);
                break;
            case BoxInk box:
                Draw(box);
                break;
            case ShapeInk shape:
                Use(shape.Fill, shape.Stroke, 0);
                Outline(shape);
                Paint(shape.Fill, shape.Stroke);
                break;
            case OvalInk oval:
                Use(oval.Fill, oval.Stroke, 0);
                Oval(Steps(oval.CenterX - oval.RadiusX, oval.CenterY - oval.RadiusY, 2 * oval.RadiusX, 2 * oval.RadiusY));
                Paint(oval.Fill, oval.Stroke);
                break;
            case BarsInk bars:
                Draw(bars);
                break;
            case PictureInk picture:
                Draw(picture);
                break;
            default:
                throw new InvalidOperationException($"no way to draw {ink.GetType().Name}");
        }
    }

    /// <param name="goesOn">The next line belongs to the same text: a space is between them, though none is seen.</param>
    private void Draw(TextInk ink, bool goesOn)
    {
        var (style, face) = (ink.Style, fonts[ink.Style.Weight]);
        var (font, number) = fontOf(style.Weight);
        var (red, green, blue) = style.Color ?? new InkColor(style.Gray, style.Gray, style.Gray);
        content.Fill(red, green, blue);
        content.BeginText(number, style.Size / Points.Step, style.Tracking / Points.Step, X(ink.X), Y(ink.Baseline));
        var (thousandths, least) = (1000.0 / face.UnitsPerEm, 1000 * LeastKern / style.Size);
        var (along, start) = (0, 0);
        for (var rest = ink.Text.AsSpan(); !rest.IsEmpty;)
        {
            var word = face.NextWord(rest, out var length);
            var i = 0;
            foreach (var character in rest[..length].EnumerateRunes())
            {
                var away = ((start + word.Places[i]) * thousandths) - along;
                if (Math.Abs(away) > least && Math.Round(away) is not 0 and var kern)
                {
                    content.Kern(-(int)kern);
                    along += (int)kern;
                }

                content.Glyph(font.CodeOf(word.Glyphs[i], character.Value, word.Advances[i]));
                along += font.Width(word.Advances[i]);
                i++;
            }

            start += word.Width;
            rest = rest[length..];
        }

        if (goesOn && !ink.Text.EndsWith(' ') && !ink.Text.EndsWith('-'))
        {
            var space = face.NextWord(" ", out _);
            content.Glyph(font.CodeOf(space.Glyphs[0], ' ', space.Advances[0]));
        }

        content.EndText();
    }

    private void Draw(LineInk line)
    {
        var (red, green, blue) = line.Color ?? new InkColor(line.Gray, line.Gray, line.Gray);
        content.Stroke(red, green, blue);
        content.Pen(line.Width / Points.Step, Points.InSteps(line.Dash));
        content.MoveTo(FineX(line.X1), FineY(line.Y1));
        content.LineTo(FineX(line.X2), FineY(line.Y2));
        content.Paint("S"u8);
    }

    /// <remarks>Filled to the middle of its line, for one outline serves both.</remarks>
    private void Draw(BoxInk box)
    {
        var inset = box.Stroke / 2;
        var edge = new SKRect(
            Points.InFineSteps(box.X + inset),
            Points.InFineSteps(box.Y + inset),
            Points.InFineSteps(box.X + box.Width - inset),
            Points.InFineSteps(box.Y + box.Height - inset));
        Use(box.Fill, box.Stroke, box.Gray);
        if (MathF.Max(0, box.Radius - inset) / Points.Step is > 0 and var radius)
        {
            Round(edge, radius, radius);
        }
        else
        {
            content.Rectangle(edge.Left, _top - edge.Bottom, edge.Width, edge.Height);
        }

        Paint(box.Fill, box.Stroke);
    }

    /// <remarks>
    /// Each bar is filled for itself: renderers move the edges of such a rectangle to whole dots, and blur those of a path of many.
    /// </remarks>
    private void Draw(BarsInk ink)
    {
        var unit = ink.Unit / Points.Step / Pen.PartsOfSquare;
        content.Fill(0, 0, 0);
        content.Save();
        content.Transform(unit, 0, 0, -unit, ink.X / Points.Step, _top - (ink.Y / Points.Step));
        foreach (var bar in ink.Bars)
        {
            var place = Pen.PlaceOf(bar);
            content.Rectangle((int)place.Left, (int)place.Top, (int)place.Width, (int)place.Height);
            content.Paint("f"u8);
        }

        content.Restore();
    }

    private void Draw(PictureInk ink)
    {
        var place = Steps(ink.X, ink.Y, ink.Width, ink.Height);
        content.Save();
        if (ink.Picture is VectorPicture { Box: var box })
        {
            var (across, down) = (place.Width / box.Width, place.Height / box.Height);
            content.Transform(across, 0, 0, -down, place.Left - (across * box.Left), _top - place.Top + (down * box.Top));
        }
        else
        {
            content.Transform(place.Width, 0, 0, place.Height, place.Left, _top - place.Bottom);
        }

        content.Draw((byte)'X', pictures.NumberOf(ink.Picture));
        content.Restore();
    }

    private void Outline(ShapeInk shape)
    {
        content.MoveTo(X(shape.Corners[0].X), Y(shape.Corners[0].Y));
        for (var i = 1; i < shape.Corners.Count; i++)
        {
            content.LineTo(X(shape.Corners[i].X), Y(shape.Corners[i].Y));
        }

        content.Paint("h"u8);
    }

    private void Oval(SKRect edge) => Round(edge, edge.Width / 2, edge.Height / 2);

    /// <summary>A rectangle with elliptic corners, each one curve, in whole steps from its edges: <see cref="RoundPath"/>.</summary>
    private void Round(SKRect edge, float radiusX, float radiusY)
    {
        var (handleX, handleY) = (MathF.Round(radiusX * (1 - RoundPath.Handle)), MathF.Round(radiusY * (1 - RoundPath.Handle)));
        (radiusX, radiusY) = (MathF.Round(radiusX), MathF.Round(radiusY));
        var (left, right, top, bottom) = (edge.Left, edge.Right, _top - edge.Top, _top - edge.Bottom);
        content.MoveTo(left + radiusX, top);
        content.LineTo(right - radiusX, top);
        content.CurveTo(right - handleX, top, right, top - handleY, right, top - radiusY);
        content.LineTo(right, bottom + radiusY);
        content.CurveTo(right, bottom + handleY, right - handleX, bottom, right - radiusX, bottom);
        content.LineTo(left + radiusX, bottom);
        content.CurveTo(left + handleX, bottom, left, bottom + handleY, left, bottom + radiusY);
        content.LineTo(left, top - radiusY);
        content.CurveTo(left, top - handleY, left + handleX, top, left + radiusX, top);
        content.Paint("h"u8);
    }

    /// <summary>Takes up what the next outline is filled and stroked with.</summary>
    private void Use(byte? fill, float stroke, byte gray)
    {
        if (fill is { } inside)
        {
            content.Fill(inside, inside, inside);
        }

        if (stroke > 0)
        {
            content.Stroke(gray, gray, gray);
            content.Pen(stroke / Points.Step);
        }
    }

    private void Paint(byte? fill, float stroke) =>
        content.Paint(stroke > 0 ? fill is null ? "S"u8 : "B"u8 : fill is null ? "n"u8 : "f"u8);

    private static int X(float x) => (int)Points.InSteps(x);

    private int Y(float y) => _top - (int)Points.InSteps(y);

    private static double FineX(float x) => Points.InFineSteps(x);

    private double FineY(float y) => _top - Points.InFineSteps(y);

    /// <summary>The steps nearest to a rectangle's edges.</summary>
    private static SKRect Steps(float x, float y, float width, float height) =>
        new(Points.InSteps(x), Points.InSteps(y), Points.InSteps(x + width), Points.InSteps(y + height));
}
