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
    public const int Spacing = 2;

    private readonly float[] _pullX;
    private readonly float[] _pullY;
    private readonly PerspectiveTransform _plane;
    private readonly bool _isBent;

    /// <param name="size">Modules a side.</param>
    /// <param name="corners">The middles of the finder patterns and of the place where a fourth would be, in pixels.</param>
    public ModuleGrid(int size, in Quadrilateral corners)
        : this(size, corners, [], [])
    {
    }

    private ModuleGrid(int size, in Quadrilateral corners, float[] pullX, float[] pullY)
    {
        (Size, Corners, _pullX, _pullY) = (size, corners, pullX, pullY);
        _isBent = pullX.Length > 0;
        Nodes = ((size + Spacing - 1) / Spacing) + 1;
        _plane = PerspectiveTransform.FromSquare(FinderInset, size - (2 * FinderInset), corners);
    }

    public int Size { get; }

    public Quadrilateral Corners { get; }

    /// <summary>A side.</summary>
    public int Nodes { get; }

    /// <summary>The mean side of a module, in pixels.</summary>
    public float Module => ((Corners.TopRight - Corners.TopLeft).Length + (Corners.BottomLeft - Corners.TopLeft).Length
        + (Corners.BottomRight - Corners.TopRight).Length + (Corners.BottomRight - Corners.BottomLeft).Length) / (4 * (Size - (2 * FinderInset)));

    /// <summary>The symbol's corners, in pixels.</summary>
    public Quadrilateral Outline => new(At(0, 0), At(Size, 0), At(0, Size), At(Size, Size));

    /// <summary>The same net over other pixels, so many times as large.</summary>
    public ModuleGrid Scaled(float factor) => new(Size, Corners.Scaled(factor), _pullX, _pullY);

    /// <summary>A copy whose nodes are pulled aside, by so many modules each.</summary>
    public ModuleGrid Bent(float[] pullX, float[] pullY) => new(Size, Corners, pullX, pullY);

    /// <summary>To pixels.</summary>
    public Point At(float u, float v)
    {
        var (x, y) = PullAt(u, v);
        return OnPlane(u + x, v + y);
    }

    /// <summary>To pixels, as if no node were pulled.</summary>
    public Point OnPlane(float u, float v) => _plane.At(u, v);

    /// <summary>From pixels to the place on the symbol, as if no node were pulled.</summary>
    public Point FromPlane(Point place) => _plane.From(place);

    /// <summary>How far a place is pulled aside, in modules.</summary>
    public Point PullAt(float u, float v)
    {
        if (!_isBent)
        {
            return default;
        }

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

        return new(Mix(_pullX), Mix(_pullY));
    }
}
