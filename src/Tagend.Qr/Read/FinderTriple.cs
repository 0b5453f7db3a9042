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
    private const float Nearest = 9;
    private const float Farthest = 230;

    public static IEnumerable<FinderTriple> Among(IReadOnlyList<FinderPattern> finders)
    {
        var triples = new List<FinderTriple>();
        for (var i = 0; i < finders.Count; i++)
        {
            for (var j = i + 1; j < finders.Count; j++)
            {
                for (var k = j + 1; k < finders.Count; k++)
                {
                    if (Of(finders[i], finders[j], finders[k]) is { } triple)
                    {
                        triples.Add(triple);
                    }
                }
            }
        }

        return triples.OrderBy(t => t.Oddness);
    }

    /// <summary>Threes with one that was not seen, for two that were: where it would be in a symbol seen straight on.</summary>
    public static IEnumerable<FinderTriple> Guesses(IReadOnlyList<FinderPattern> finders)
    {
        for (var i = 0; i < finders.Count; i++)
        {
            for (var j = i + 1; j < finders.Count; j++)
            {
                var (p, q) = (finders[i], finders[j]);
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

                FinderPattern[] arms = [At(p, -dy, dx), At(p, dy, -dx), At(q, -dy, dx), At(q, dy, -dx)];
                foreach (var arm in arms)
                {
                    if (Of(arm, p, q) is { } triple)
                    {
                        yield return triple with { Guessed = arm };
                    }
                }
            }
        }
    }

    /// <summary>The finder patterns' middles, and the fourth corner as it is without perspective.</summary>
    public Quadrilateral Corners => new(Corner.Middle, Right.Middle, Below.Middle, Right.Middle + Below.Middle - Corner.Middle);

    public bool Uses(FinderPattern finder) => Corner.IsAt(finder) || Right.IsAt(finder) || Below.IsAt(finder);

    public bool IsSameAs(FinderTriple other) => Corner.IsAt(other.Corner) && Right.IsAt(other.Right) && Below.IsAt(other.Below);

    public FinderTriple Scaled(float factor) => new(Corner.Scaled(factor), Right.Scaled(factor), Below.Scaled(factor), Oddness, Guessed?.Scaled(factor));

    private static FinderTriple? Of(FinderPattern a, FinderPattern b, FinderPattern c)
    {
        var smallest = Math.Min(a.Module, Math.Min(b.Module, c.Module));
        var largest = Math.Max(a.Module, Math.Max(b.Module, c.Module));
        if (largest > 2.2f * smallest)
        {
            return null;
        }

        var (ab, bc, ca) = (a.DistanceTo(b), b.DistanceTo(c), c.DistanceTo(a));
        (a, b, c) = bc >= ab && bc >= ca ? (a, b, c) : ca >= ab ? (b, c, a) : (c, a, b);
        var (p, q) = (a.DistanceTo(b), a.DistanceTo(c));
        var (shorter, longer) = (Math.Min(p, q), Math.Max(p, q));
        if (longer > 3 * shorter || shorter < Nearest * smallest || longer > Farthest * largest)
        {
            return null;
        }

        var (toB, toC) = (b.Middle - a.Middle, c.Middle - a.Middle);
        var cosine = toB.Dot(toC) / (p * q);
        if (Math.Abs(cosine) > 0.8f)
        {
            return null;
        }

        if (toB.Cross(toC) < 0)
        {
            (b, c) = (c, b);
        }

        var oddness = MathF.Log(longer / shorter) + Math.Abs(cosine) + MathF.Log(largest / smallest)
            + (2f / Math.Min(a.Count, Math.Min(b.Count, c.Count)));
        return new FinderTriple(a, b, c, oddness);
    }
}
