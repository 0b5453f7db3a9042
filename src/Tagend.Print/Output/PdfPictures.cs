using System.Runtime.InteropServices;
using SkiaSharp;
using Tagend.Pdf;

namespace Tagend.Output;

/// <summary>The pictures of a document, each in it once: dots as an image without loss, outlines as a form.</summary>
/// <remarks>ISO 32000-1: images 8.9.5, forms 8.10, transparency groups 11.4.7, soft masks 11.6.5.3.</remarks>
internal sealed class PdfPictures(PdfObjects objects, int resources)
{
    private const byte Opaque = 255;

    private readonly Dictionary<Picture, int> _drawn = [];
    private readonly SortedSet<int> _numbers = [];
    private readonly SortedSet<byte> _opacities = [];

    /// <summary>The picture's object, written where it is the first time: an image of one by one, or a form of its own measure.</summary>
    public int NumberOf(Picture picture)
    {
        if (!_drawn.TryGetValue(picture, out var number))
        {
            number = picture switch
            {
                DotPicture dots => ImageOf(dots),
                VectorPicture vector => FormOf(vector.Drawing, vector.Box, isGroup: false),
                _ => throw new InvalidOperationException($"no way to write {picture.GetType().Name}"),
            };
            _drawn.Add(picture, number);
        }

        return number;
    }

    /// <summary>Entries of the resource dictionary: 7.8.3.</summary>
    public void AddResources(PdfBuffer buffer)
    {
        if (_numbers.Count > 0)
        {
            buffer.Add("/XObject<<"u8);
            foreach (var number in _numbers)
            {
                buffer.Add("/X"u8).Add(number).Reference(number);
            }

            buffer.Add(">>"u8);
        }

        if (_opacities.Count > 0)
        {
            buffer.Add("/ExtGState<<"u8);
            foreach (var opacity in _opacities)
            {
                buffer.Add("/G"u8).Add((int)opacity).Add("<</ca "u8).Add((double)opacity / Opaque).Add("/CA "u8).Add((double)opacity / Opaque).Add(">>"u8);
            }

            buffer.Add(">>"u8);
        }
    }

    private int ImageOf(DotPicture picture)
    {
        using var bitmap = new SKBitmap(new SKImageInfo(picture.Image.Width, picture.Image.Height, SKColorType.Rgba8888, SKAlphaType.Unpremul));
        picture.Image.ReadPixels(bitmap.Info, bitmap.GetPixels());
        var dots = MemoryMarshal.Cast<byte, (byte Red, byte Green, byte Blue, byte Alpha)>(bitmap.GetPixelSpan());
        var (isGray, isOpaque) = (true, true);
        foreach (var (red, green, blue, alpha) in dots)
        {
            isGray &= red == green && green == blue;
            isOpaque &= alpha == Opaque;
        }

        var (colors, alphas) = (new byte[dots.Length * (isGray ? 1 : 3)], new byte[isOpaque ? 0 : dots.Length]);
        for (var i = 0; i < dots.Length; i++)
        {
            var (red, green, blue, alpha) = dots[i];
            if (isGray)
            {
                colors[i] = red;
            }
            else
            {
                (colors[3 * i], colors[(3 * i) + 1], colors[(3 * i) + 2]) = (red, green, blue);
            }

            if (!isOpaque)
            {
                alphas[i] = alpha;
            }
        }

        var number = Named();
        var head = Head(bitmap.Width, bitmap.Height).Add(isGray ? "/DeviceGray"u8 : "/DeviceRGB"u8);
        if (!isOpaque)
        {
            var mask = objects.Reserve();
            objects.AddStream(mask, Head(bitmap.Width, bitmap.Height).Add("/DeviceGray"u8).Bytes, alphas);
            head.Add("/SMask "u8).Reference(mask);
        }

        objects.AddStream(number, head.Bytes, colors);
        return number;
    }

    private static PdfBuffer Head(int width, int height) => new PdfBuffer().Add("/Type/XObject/Subtype/Image/Width "u8).Add(width)
        .Add("/Height "u8).Add(height).Add("/BitsPerComponent 8/ColorSpace"u8);

    private int FormOf(VectorGroup group, SKRect box, bool isGroup)
    {
        var content = new PdfContent();
        content.BeginForm();
        Draw(group, box, content);
        var number = Named();
        var head = new PdfBuffer().Add("/Type/XObject/Subtype/Form/BBox["u8).Add(box.Left).Add(box.Top).Add(box.Right).Add(box.Bottom)
            .Add("]/Resources "u8).Reference(resources).Add(isGroup ? "/Group<</S/Transparency>>"u8 : []);
        objects.AddStream(number, head.Bytes, content.Bytes);
        return number;
    }

    private void Draw(VectorGroup group, SKRect box, PdfContent content)
    {
        foreach (var part in group.Parts)
        {
            content.Save();
            if (part is VectorShape shape)
            {
                Draw(shape, content);
            }
            else
            {
                var inner = (VectorGroup)part;
                var transform = inner.Transform;
                if (!transform.IsIdentity)
                {
                    content.Transform(transform.ScaleX, transform.SkewY, transform.SkewX, transform.ScaleY, transform.TransX, transform.TransY);
                }

                if (inner.Opacity == 1)
                {
                    Draw(inner, box, content);
                }
                else if (transform.TryInvert(out var inverse))
                {
                    Fade(inner.Opacity * Opaque, content);
                    content.Draw((byte)'X', FormOf(inner, inverse.MapRect(box), isGroup: true));
                }
            }

            content.Restore();
        }
    }

    private void Draw(VectorShape shape, PdfContent content)
    {
        var paint = shape.Paint;
        var (color, isFilled, isEvenOdd) = (paint.Color, paint.Style == SKPaintStyle.Fill, shape.Path.FillType == SKPathFillType.EvenOdd);
        if (color.Alpha < Opaque)
        {
            Fade(color.Alpha, content);
        }

        if (isFilled)
        {
            content.Fill(color.Red, color.Green, color.Blue);
        }
        else
        {
            content.Stroke(color.Red, color.Green, color.Blue);
            content.Pen(paint.StrokeWidth);
            content.Corners((int)paint.StrokeCap, (int)paint.StrokeJoin, paint.StrokeMiter);
        }

        content.Outline(shape.Path, SKMatrix.Identity);
        content.Paint(isFilled ? isEvenOdd ? "f*"u8 : "f"u8 : "S"u8);
    }

    private void Fade(float opacity, PdfContent content)
    {
        var rounded = (byte)MathF.Round(opacity);
        _opacities.Add(rounded);
        content.Opacity(rounded);
    }

    private int Named()
    {
        var number = objects.Reserve();
        _numbers.Add(number);
        return number;
    }
}
