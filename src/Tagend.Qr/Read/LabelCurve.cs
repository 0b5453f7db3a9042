namespace Tagend.Qr.Read;

/// <summary>A label around something round, seen from afar: how its modules are pulled against a plane through its finder patterns.</summary>
/// <param name="Direction">Across the round thing, in radians from the symbol's rows.</param>
/// <param name="Angle">From the symbol's middle to half a side away, around the round thing, in radians; 0 is flat.</param>
/// <param name="Offset">Of the line nearest to the camera from the symbol's middle, in half sides.</param>
internal sealed record LabelCurve(float Direction, float Angle, float Offset)
{
    public static LabelCurve Flat { get; } = new(0, 0, 0);

    /// <summary>Curves to begin with.</summary>
    public static IEnumerable<LabelCurve> Starts()
    {
        foreach (var angle in (float[])[0.6f, 0.9f, 1.15f])
        {
            for (var turn = 0; turn < 8; turn++)
            {
                foreach (var offset in (float[])[-0.5f, 0, 0.5f])
                {
                    yield return new LabelCurve(turn * MathF.PI / 8, angle, offset);
                }
            }
        }
    }

    /// <summary>Curves a little different.</summary>
    public IEnumerable<LabelCurve> Near(float step) =>
    [
        this with { Direction = Direction + (0.4f * step) },
        this with { Direction = Direction - (0.4f * step) },
        this with { Angle = Angle + (0.25f * step) },
        this with { Angle = Math.Max(0, Angle - (0.25f * step)) },
        this with { Offset = Offset + (0.5f * step) },
        this with { Offset = Offset - (0.5f * step) },
    ];

    /// <summary>The pulls of a grid's nodes, in modules; none at the finder patterns' middles.</summary>
    public (float[] X, float[] Y) Pulls(ModuleGrid grid)
    {
        var (x, y) = (new float[grid.Nodes * grid.Nodes], new float[grid.Nodes * grid.Nodes]);
        if (Angle == 0)
        {
            return (x, y);
        }

        var (cos, sin) = (MathF.Cos(Direction), MathF.Sin(Direction));
        var (near, far) = (ModuleGrid.FinderInset, grid.Size - ModuleGrid.FinderInset);
        // Seen places are turned into places on the plane so that the finder patterns stay: around = a + b · bulge + c · along.
        var (p, q, r) = (Seen(near, near), Seen(far, near), Seen(near, far));
        var (qb, qt, qs) = (q.Bulge - p.Bulge, q.Along - p.Along, q.Around - p.Around);
        var (rb, rt, rs) = (r.Bulge - p.Bulge, r.Along - p.Along, r.Around - p.Around);
        var det = (qb * rt) - (qt * rb);
        var (b, c) = (((qs * rt) - (qt * rs)) / det, ((qb * rs) - (qs * rb)) / det);
        for (var i = 0; i < x.Length; i++)
        {
            var at = Seen(i % grid.Nodes * ModuleGrid.Spacing, i / grid.Nodes * ModuleGrid.Spacing);
            var pull = p.Around + (b * (at.Bulge - p.Bulge)) + (c * (at.Along - p.Along)) - at.Around;
            (x[i], y[i]) = (pull * cos, pull * sin);
        }

        return (x, y);

        (float Around, float Along, float Bulge) Seen(float u, float v)
        {
            var half = grid.Size / 2f;
            var around = ((u - half) * cos) + ((v - half) * sin);
            var radius = half / Angle;
            var bulge = radius * MathF.Sin(Math.Clamp((around - (Offset * half)) / radius, -1.5f, 1.5f));
            return (around, ((v - half) * cos) - ((u - half) * sin), bulge);
        }
    }
}
