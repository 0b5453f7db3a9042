namespace Tagend.Qr.Read;

/// <summary>A plane seen in perspective: from places on a symbol, in modules, to places in a picture, in pixels.</summary>
internal readonly struct PerspectiveTransform
{
    private readonly float _a, _b, _c, _d, _e, _f, _g, _h;

    private PerspectiveTransform(double a, double b, double c, double d, double e, double f, double g, double h) =>
        (_a, _b, _c, _d, _e, _f, _g, _h) = ((float)a, (float)b, (float)c, (float)d, (float)e, (float)f, (float)g, (float)h);

    /// <summary>The transform of a square to four places.</summary>
    /// <param name="inset">Of the square's left and top sides from the symbol's, in modules.</param>
    /// <param name="side">Of the square, in modules.</param>
    /// <remarks>Square to quadrilateral: Heckbert, Fundamentals of Texture Mapping and Image Warping, 1989.</remarks>
    public static PerspectiveTransform FromSquare(double inset, double side, in Quadrilateral to)
    {
        double x0 = to.TopLeft.X, y0 = to.TopLeft.Y, x1 = to.TopRight.X, y1 = to.TopRight.Y;
        double x2 = to.BottomRight.X, y2 = to.BottomRight.Y, x3 = to.BottomLeft.X, y3 = to.BottomLeft.Y;
        var (dx1, dx2, sx) = (x1 - x2, x3 - x2, x0 - x1 + x2 - x3);
        var (dy1, dy2, sy) = (y1 - y2, y3 - y2, y0 - y1 + y2 - y3);
        var det = (dx1 * dy2) - (dx2 * dy1);
        var g = det == 0 ? 0 : ((sx * dy2) - (dx2 * sy)) / det;
        var h = det == 0 ? 0 : ((dx1 * sy) - (sx * dy1)) / det;
        var (a, b, d, e) = (x1 - x0 + (g * x1), x3 - x0 + (h * x3), y1 - y0 + (g * y1), y3 - y0 + (h * y3));
        // From modules to the unit square first.
        var unit = 1 - ((g + h) * inset / side);
        var perModule = 1 / (side * unit);
        return new PerspectiveTransform(
            a * perModule, b * perModule, (x0 - ((a + b) * inset / side)) / unit,
            d * perModule, e * perModule, (y0 - ((d + e) * inset / side)) / unit,
            g * perModule, h * perModule);
    }

    /// <summary>To pixels.</summary>
    public Point At(float u, float v)
    {
        var w = 1 / ((_g * u) + (_h * v) + 1);
        return new Point(((_a * u) + (_b * v) + _c) * w, ((_d * u) + (_e * v) + _f) * w);
    }

    /// <summary>To modules.</summary>
    public Point From(Point place)
    {
        // The adjugate of the matrix is its inverse but for a factor, which the division takes out.
        var (x, y) = place;
        var u = ((_e - (_f * _h)) * x) + (((_c * _h) - _b) * y) + ((_b * _f) - (_c * _e));
        var v = (((_f * _g) - _d) * x) + ((_a - (_c * _g)) * y) + ((_c * _d) - (_a * _f));
        var w = (((_d * _h) - (_e * _g)) * x) + (((_b * _g) - (_a * _h)) * y) + ((_a * _e) - (_b * _d));
        return new Point(u / w, v / w);
    }
}
