using SkiaSharp;

namespace Tagend.Logos;

/// <summary>The part of the drawing that is the picture: SVG 1.1, 7.7.</summary>
internal static class SvgBox
{
    private static readonly SKRect StandIn = SKRect.Create(0, 0, 1, 1);

    /// <summary>The view box, without the margins that another shape of width and height would add; or else from 0, 0.</summary>
    public static SKRect Of(SvgElement root)
    {
        if (root.Attribute("viewBox") is { } text)
        {
            if (SvgNumbers.TryReadAll(text, out var box) && box.Length == 4 && box[2] > 0 && box[3] > 0)
            {
                return SKRect.Create(box[0], box[1], box[2], box[3]);
            }

            root.Report("viewBox", text, SvgWording.AViewBox);
            return StandIn;
        }

        var (width, height) = (root.Length("width", 0), root.Length("height", 0));
        if (width > 0 && height > 0)
        {
            return SKRect.Create(0, 0, width, height);
        }

        root.Report("viewBox", null, SvgWording.NoSize);
        return StandIn;
    }
}
