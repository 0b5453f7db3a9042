using Tagend.Catalog;
using Tagend.Qr.Encode;

namespace Tagend.Output;

/// <summary>Something drawn at a place. Coordinates and widths are points; see <see cref="Points"/>.</summary>
public abstract record Ink
{
    public abstract Ink Moved(float dx, float dy);
}

/// <summary>One line of text, from its left end on its baseline.</summary>
public sealed record TextInk(float X, float Baseline, string Text, TextStyle Style) : Ink
{
    public override Ink Moved(float dx, float dy) => this with { X = X + dx, Baseline = Baseline + dy };
}

/// <summary>A straight line with flat ends.</summary>
/// <param name="Dash">Length of dashes and of the gaps between them; 0 for a solid line.</param>
/// <param name="Color">In place of the gray.</param>
public sealed record LineInk(
    float X1, float Y1, float X2, float Y2, float Width, byte Gray = 0, float Dash = 0, InkColor? Color = null) : Ink
{
    public override Ink Moved(float dx, float dy) =>
        this with { X1 = X1 + dx, Y1 = Y1 + dy, X2 = X2 + dx, Y2 = Y2 + dy };
}

/// <summary>A rectangle: filled, outlined (the line lies inside its edges), or both.</summary>
public sealed record BoxInk(
    float X, float Y, float Width, float Height, float Stroke = 0, byte? Fill = null, float Radius = 0, byte Gray = 0) : Ink
{
    public override Ink Moved(float dx, float dy) => this with { X = X + dx, Y = Y + dy };
}

/// <summary>A closed shape: filled, outlined (the line lies on its edges), or both.</summary>
public sealed record ShapeInk(IReadOnlyList<(float X, float Y)> Corners, float Stroke = 0, byte? Fill = null) : Ink
{
    public override Ink Moved(float dx, float dy) =>
        this with { Corners = [.. Corners.Select(c => (c.X + dx, c.Y + dy))] };
}

/// <summary>An ellipse around its center: filled, outlined (the line lies on its edge), or both.</summary>
public sealed record OvalInk(
    float CenterX, float CenterY, float RadiusX, float RadiusY, float Stroke = 0, byte? Fill = null) : Ink
{
    public override Ink Moved(float dx, float dy) => this with { CenterX = CenterX + dx, CenterY = CenterY + dy };
}

/// <summary>Black bars on a grid of squares, such as a code's modules.</summary>
/// <param name="Unit">Side of a square, in points.</param>
public sealed record BarsInk(float X, float Y, float Unit, IReadOnlyList<Bar> Bars) : Ink
{
    public override Ink Moved(float dx, float dy) => this with { X = X + dx, Y = Y + dy };
}

/// <summary>A picture scaled into a place.</summary>
public sealed record PictureInk(float X, float Y, float Width, float Height, Picture Picture) : Ink
{
    public override Ink Moved(float dx, float dy) => this with { X = X + dx, Y = Y + dy };
}
