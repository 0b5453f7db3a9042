namespace Tagend.Qr.Read;

/// <summary>Three finder patterns that may belong to one symbol.</summary>
/// <param name="Corner">Top left of the symbol.</param>
/// <param name="Right">Top right.</param>
/// <param name="Below">Bottom left.</param>
/// <param name="Oddness">How far from a square seen straight on: 0 is none.</param>
/// <param name="Guessed">The one of the three that was not seen; null where all were.</param>
internal sealed record FinderTriple(FinderPattern Corner, FinderPattern Right, FinderPattern Below, float Oddness, FinderPattern? Guessed = null)
{
    /// <summary>Between the middles of two finder patterns of the smallest and the largest symbol, with room for tilt: modules.</summary>
    private const float Nearest = 8;
    private const float Farthest = 230;

    /// <summary>Of two finder patterns of one symbol, the farther one's module is as much smaller at the most.</summary>
    private const float ModuleRatio = 2.4f;

    private const float SideRatio = 3.4f;

    /// <summary>Of the angle at the corner: 30 degrees or more.</summary>
    private const float MostCosine = 0.87f;

    /// <summary>Neighbors of a corner that are looked at, the nearest of all and of clear ones: on a sheet of labels its own two are among them.</summary>
    private const int Neighbors = 14;

    private const float ClearRings = 0.6f;

    /// <summary>Of one corner, the least odd with the clearest rings that are kept.</summary>
    private const int KeptOfCorner = 10;

    private const float RingsWeight = 2;

    /// <summary>The finder patterns' middles, and the fourth corner as it is without perspective.</summary>
    public Quadrilateral Corners => new(Corner.Middle, Right.Middle, Below.Middle, Right.Middle + Below.Middle - Corner.Middle);

    /// <summary>The mean of the three, in pixels.</summary>
    public float Module => (Corner.Module + Right.Module + Below.Module) / 3;

    /// <summary>The likeliest threes with each pattern as the corner.</summary>
    public static IEnumerable<FinderTriple> Among(IReadOnlyList<FinderPattern> finders)
    {
        foreach (var corner in finders)
        {
            var all = finders.Where(f => f != corner && IsOfOneSymbol(corner, f)).OrderBy(corner.DistanceTo).ToList();
            var near = all.Take(Neighbors).Union(all.Where(f => f.Rings >= ClearRings).Take(Neighbors)).ToList();
            var triples = new List<FinderTriple>();
            for (var i = 0; i < near.Count; i++)
            {
                for (var j = i + 1; j < near.Count; j++)
                {
                    if (Of(corner, near[i], near[j]) is { } triple)
                    {
                        triples.Add(triple);
                    }
                }
            }

            foreach (var triple in triples.OrderBy(t => t.Oddness - (RingsWeight * (t.Right.Rings + t.Below.Rings))).Take(KeptOfCorner))
            {
                yield return triple;
            }
        }
    }

    /// <summary>Threes with one that was not seen, for two that were: where it would be in a symbol seen straight on.</summary>
    public static IEnumerable<FinderTriple> Guesses(IReadOnlyList<FinderPattern> finders)
    {
        for (var i = 0; i < finders.Count; i++)
        {
            for (var j = i + 1; j < finders.Count; j++)
            {
                var (p, q) = (finders[i], finders[j]);
                if (!IsOfOneSymbol(p, q))
                {
                    continue;
                }

                var (dx, dy) = q.Middle - p.Middle;
                var module = (p.Module + q.Module) / 2;
                FinderPattern At(FinderPattern from, float x, float y) => new(from.Middle + new Point(x, y), module, 1);
                FinderPattern[] corners =
                [
                    At(p, (dx - dy) / 2, (dy + dx) / 2), At(p, (dx + dy) / 2, (dy - dx) / 2),
                ];
                foreach (var corner in corners)
                {
                    if (Of(corner, p, q) is { } triple)
                    {
                        yield return triple with { Guessed = corner };
                    }
                }

                foreach (var (from, to) in ((FinderPattern, FinderPattern)[])[(p, q), (q, p)])
                {
                    foreach (var arm in (FinderPattern[])[At(from, -dy, dx), At(from, dy, -dx)])
                    {
                        if (Of(from, to, arm) is { } triple)
                        {
                            yield return triple with { Guessed = arm };
                        }
                    }
                }
            }
        }
    }

    public bool IsSameAs(FinderTriple other) => Corner.IsAt(other.Corner) && Right.IsAt(other.Right) && Below.IsAt(other.Below);

    public FinderTriple Scaled(float factor) => new(Corner.Scaled(factor), Right.Scaled(factor), Below.Scaled(factor), Oddness, Guessed?.Scaled(factor));

    private static bool IsOfOneSymbol(FinderPattern a, FinderPattern b)
    {
        var (smaller, larger) = (Math.Min(a.Module, b.Module), Math.Max(a.Module, b.Module));
        var distance = a.DistanceTo(b);
        return larger < ModuleRatio * smaller && distance > Nearest * smaller && distance < Farthest * larger;
    }

    private static FinderTriple? Of(FinderPattern corner, FinderPattern b, FinderPattern c)
    {
        var (toB, toC) = (b.Middle - corner.Middle, c.Middle - corner.Middle);
        var (p, q) = (toB.Length, toC.Length);
        var (shorter, longer) = (Math.Min(p, q), Math.Max(p, q));
        var cosine = Math.Abs(toB.Dot(toC) / (p * q));
        var smallest = Math.Min(corner.Module, Math.Min(b.Module, c.Module));
        var largest = Math.Max(corner.Module, Math.Max(b.Module, c.Module));
        if (longer > SideRatio * shorter || cosine > MostCosine || largest > ModuleRatio * smallest)
        {
            return null;
        }

        if (toB.Cross(toC) < 0)
        {
            (b, c) = (c, b);
        }

        return new FinderTriple(corner, b, c, MathF.Log(longer / shorter) + cosine + MathF.Log(largest / smallest));
    }
}
