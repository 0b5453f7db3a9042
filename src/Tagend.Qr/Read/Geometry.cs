using System.Runtime.CompilerServices;

namespace Tagend.Qr.Read;

/// <summary>A place in a picture, in pixels from the top left corner; pixel (0, 0) has its middle at (0.5, 0.5).</summary>
/// <param name="X">Pixels to the right.</param>
/// <param name="Y">Pixels down.</param>
public readonly record struct Point(float X, float Y)
{
    /// <summary>Adds the coordinates.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Point operator +(Point a, Point b) => new(a.X + b.X, a.Y + b.Y);

    /// <summary>Subtracts the coordinates.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Point operator -(Point a, Point b) => new(a.X - b.X, a.Y - b.Y);

    /// <summary>Multiplies both coordinates.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Point operator *(Point a, float factor) => new(a.X * factor, a.Y * factor);

    /// <summary>The distance from (0, 0).</summary>
    internal float Length => MathF.Sqrt((X * X) + (Y * Y));

    /// <summary>Positive where <paramref name="other"/> is clockwise from this one on a picture, whose Y points down.</summary>
    internal float Cross(Point other) => (X * other.Y) - (Y * other.X);

    internal float Dot(Point other) => (X * other.X) + (Y * other.Y);
}

/// <summary>Four corners, as they are named on the symbol and not in the picture, which may show it turned.</summary>
/// <param name="TopLeft">The corner with a finder pattern between two others.</param>
/// <param name="TopRight">The next one clockwise.</param>
/// <param name="BottomLeft">The last one clockwise.</param>
/// <param name="BottomRight">The corner without a finder pattern.</param>
public readonly record struct Quadrilateral(Point TopLeft, Point TopRight, Point BottomLeft, Point BottomRight)
{
    /// <summary>How many numbers it has: two a corner.</summary>
    internal const int Coordinates = 8;

    /// <summary>Of <see cref="Coordinates"/>, the first of the bottom right corner.</summary>
    internal const int OfBottomRight = 6;

    internal Quadrilateral Scaled(float factor) => new(TopLeft * factor, TopRight * factor, BottomLeft * factor, BottomRight * factor);

    internal Quadrilateral Moved(Point by) => new(TopLeft + by, TopRight + by, BottomLeft + by, BottomRight + by);

    /// <summary>A copy with one number changed.</summary>
    /// <param name="coordinate">0 to 7: X and Y of each corner in the order of the parameters.</param>
    internal Quadrilateral Moved(int coordinate, float by)
    {
        var step = coordinate % 2 == 0 ? new Point(by, 0) : new Point(0, by);
        return (coordinate / 2) switch
        {
            0 => this with { TopLeft = TopLeft + step },
            1 => this with { TopRight = TopRight + step },
            2 => this with { BottomLeft = BottomLeft + step },
            _ => this with { BottomRight = BottomRight + step },
        };
    }

    /// <summary>Whether a place is within, of a quadrilateral without dents.</summary>
    internal bool Holds(Point place)
    {
        Span<Point> corners = [TopLeft, TopRight, BottomRight, BottomLeft];
        var (left, right) = (true, true);
        for (var i = 0; i < corners.Length; i++)
        {
            var cross = (corners[(i + 1) % corners.Length] - corners[i]).Cross(place - corners[i]);
            (left, right) = (left && cross >= 0, right && cross <= 0);
        }

        return left || right;
    }
}
