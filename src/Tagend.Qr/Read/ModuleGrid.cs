namespace Tagend.Qr.Read;

/// <summary>
/// Where a symbol's modules are in a picture: a plane seen in perspective, and on it a net of nodes that may be pulled
/// aside where the label is bent. Places on the symbol are in modules from its top left corner.
/// </summary>
internal sealed class ModuleGrid
{
    /// <summary>Finder patterns have their middles this far inside the symbol, in modules.</summary>
    public const float FinderInset = 3.5f;

    /// <summary>Between nodes, in modules.</summary>
    public const int Spacing = 4;

    private readonly float[] _pullX;
    private readonly float[] _pullY;
    private readonly float[] _plane = new float[8];
    private readonly bool _isBent;

    /// <param name="corners">Of the middles of the finder patterns and of the place where a fourth would be: top left, top right, bottom left, bottom right; x and y of each in pixels.</param>
    public ModuleGrid(int size, float[] corners)
        : this(size, corners, [], [])
    {
    }

    private ModuleGrid(int size, float[] corners, float[] pullX, float[] pullY)
    {
        (Size, Corners, _pullX, _pullY) = (size, corners, pullX, pullY);
        _isBent = pullX.Length > 0;
        Nodes = ((size + Spacing - 1) / Spacing) + 1;
        Plane(corners);
    }

    public int Size { get; }

    public float[] Corners { get; }

    /// <summary>A side.</summary>
    public int Nodes { get; }

    /// <summary>The mean side of a module, in pixels.</summary>
    public float Module => (Side(0, 2) + Side(0, 4) + Side(2, 6) + Side(4, 6)) / (4 * (Size - (2 * FinderInset)));

    /// <summary>The same net over other pixels, so many times as large.</summary>
    public ModuleGrid Scaled(float factor) => new(Size, [.. Corners.Select(c => c * factor)], _pullX, _pullY);

    /// <summary>A copy whose nodes are pulled aside, by so many modules each.</summary>
    public ModuleGrid Bent(float[] pullX, float[] pullY) => new(Size, Corners, pullX, pullY);

    /// <summary>To pixels.</summary>
    public (float X, float Y) At(float u, float v)
    {
        if (_isBent)
        {
            var (x, y) = Pull(u, v);
            (u, v) = (u + x, v + y);
        }

        return OnPlane(u, v);
    }

    /// <summary>To pixels, as if no node were pulled.</summary>
    public (float X, float Y) OnPlane(float u, float v)
    {
        var p = _plane;
        var w = (p[6] * u) + (p[7] * v) + 1;
        return (((p[0] * u) + (p[1] * v) + p[2]) / w, ((p[3] * u) + (p[4] * v) + p[5]) / w);
    }

    private float Side(int a, int b) =>
        MathF.Sqrt(((Corners[a] - Corners[b]) * (Corners[a] - Corners[b])) + ((Corners[a + 1] - Corners[b + 1]) * (Corners[a + 1] - Corners[b + 1])));

    /// <summary>How far a place is pulled aside, in modules.</summary>
    public (float X, float Y) Pull(float u, float v)
    {
        var (gu, gv) = (Math.Clamp(u / Spacing, 0, Nodes - 1.001f), Math.Clamp(v / Spacing, 0, Nodes - 1.001f));
        var (column, row) = ((int)gu, (int)gv);
        var (fu, fv) = (gu - column, gv - row);
        var i = (row * Nodes) + column;
        float Mix(float[] pull)
        {
            var upper = pull[i] + ((pull[i + 1] - pull[i]) * fu);
            var lower = pull[i + Nodes] + ((pull[i + Nodes + 1] - pull[i + Nodes]) * fu);
            return upper + ((lower - upper) * fv);
        }

        return (Mix(_pullX), Mix(_pullY));
    }

    /// <summary>Square to quadrilateral: Heckbert, Fundamentals of Texture Mapping and Image Warping, 1989.</summary>
    private void Plane(float[] c)
    {
        double x0 = c[0], y0 = c[1], x1 = c[2], y1 = c[3], x2 = c[6], y2 = c[7], x3 = c[4], y3 = c[5];
        var (dx1, dx2, sx) = (x1 - x2, x3 - x2, x0 - x1 + x2 - x3);
        var (dy1, dy2, sy) = (y1 - y2, y3 - y2, y0 - y1 + y2 - y3);
        var det = (dx1 * dy2) - (dx2 * dy1);
        var g = det == 0 ? 0 : ((sx * dy2) - (dx2 * sy)) / det;
        var h = det == 0 ? 0 : ((dx1 * sy) - (sx * dy1)) / det;
        var (a, b, d, e) = (x1 - x0 + (g * x1), x3 - x0 + (h * x3), y1 - y0 + (g * y1), y3 - y0 + (h * y3));
        // From modules to the unit square first.
        double span = Size - (2 * FinderInset), inset = FinderInset;
        double[] plane =
        [
            a / span, b / span, x0 - ((a + b) * inset / span),
            d / span, e / span, y0 - ((d + e) * inset / span),
            g / span, h / span,
        ];
        var unit = 1 - ((g + h) * inset / span);
        for (var i = 0; i < plane.Length; i++)
        {
            _plane[i] = (float)(plane[i] / unit);
        }
    }
}
