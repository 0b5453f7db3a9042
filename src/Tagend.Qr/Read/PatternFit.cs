using Tagend.Qr.Symbol;

namespace Tagend.Qr.Read;

/// <summary>How well a grid's place agrees with what every symbol of its size has: finder, timing and alignment patterns.</summary>
/// <remarks>Each pattern counts by its correlation with the light there, so shadows and contrast make no difference.</remarks>
internal sealed class PatternFit
{
    /// <summary>How far the fourth corner may be from where it is without perspective, as a share of a side.</summary>
    private const float FarCorner = 0.42f;

    private const int MostSteps = 16;

    private readonly GrayPicture _picture;
    private readonly List<(int X, int Y, sbyte Dark)[]> _patterns = [];
    private readonly List<float> _weights = [];
    private readonly int _size;
    private long _looks;

    public PatternFit(GrayPicture picture, int size)
    {
        (_picture, _size) = (picture, size);
        var layout = SymbolLayout.Of(size);
        Add(layout, 1, -1, -1, 7, 7);
        Add(layout, 1, size - 8, -1, size, 7);
        Add(layout, 1, -1, size - 8, 7, size);
        Add(layout, 0.7f, 8, 6, size - 9, 6);
        Add(layout, 0.7f, 6, 8, 6, size - 9);
        foreach (var (x, y) in layout.AlignmentPatterns)
        {
            Add(layout, layout.AlignmentPatterns.Count > 1 && (x != size - 7 || y != size - 7) ? 0.3f : 0.8f, x - 2, y - 2, x + 2, y + 2);
        }
    }

    /// <summary>Pixels looked at.</summary>
    public long Looks => _looks;

    /// <summary>1 where all patterns are there, about 0 where none is.</summary>
    public float Score(in Quadrilateral corners)
    {
        var grid = new ModuleGrid(_size, corners);
        var (sum, weights) = (0f, 0f);
        for (var i = 0; i < _patterns.Count; i++)
        {
            sum += _weights[i] * Correlation(grid, _patterns[i]);
            weights += _weights[i];
        }

        return sum / weights;
    }

    /// <summary>Moves the corners, ever less, while that makes the fit better.</summary>
    /// <param name="step">The first, in pixels.</param>
    /// <param name="from">The first of the corners' coordinates that may move.</param>
    public (Quadrilateral Corners, float Score) Improved(Quadrilateral corners, float step, int from = 0)
    {
        var best = Score(corners);
        for (; step > 0.12f; step /= 2)
        {
            for (var round = 0; round < 4; round++)
            {
                var before = best;
                for (var i = from; i < Quadrilateral.Coordinates; i++)
                {
                    foreach (var move in (ReadOnlySpan<float>)[step, -step])
                    {
                        var moved = corners.Moved(i, move);
                        var score = Score(moved);
                        if (score > best)
                        {
                            (corners, best) = (moved, score);
                            break;
                        }
                    }
                }

                if (best - before < 0.002f)
                {
                    break;
                }
            }
        }

        return (corners, best);
    }

    /// <summary>The corners with the fourth where it fits best, looked for far and wide.</summary>
    public Quadrilateral Tilted(in Quadrilateral corners)
    {
        var (best, bestScore) = (corners, float.MinValue);
        var (across, down) = (corners.TopRight - corners.TopLeft, corners.BottomLeft - corners.TopLeft);
        var steps = Math.Min(MostSteps, (int)Math.Ceiling(FarCorner * (_size - (2 * ModuleGrid.FinderInset)) / 1.5f));
        for (var i = -steps; i <= steps; i++)
        {
            for (var j = -steps; j <= steps; j++)
            {
                var (p, q) = (FarCorner * i / steps, FarCorner * j / steps);
                var moved = corners with { BottomRight = corners.BottomRight + (across * p) + (down * q) };
                var score = Score(moved);
                if (score > bestScore)
                {
                    (best, bestScore) = (moved, score);
                }
            }
        }

        return best;
    }

    private float Correlation(ModuleGrid grid, (int X, int Y, sbyte Dark)[] pattern)
    {
        float sum = 0, squares = 0, darkSum = 0;
        var dark = 0;
        foreach (var (x, y, isDark) in pattern)
        {
            var light = _picture.At(grid.OnPlane(x + 0.5f, y + 0.5f));
            sum += light;
            squares += light * light;
            if (isDark > 0)
            {
                dark++;
                darkSum += light;
            }
        }

        _looks += pattern.Length;
        var n = pattern.Length;
        var variance = squares - (sum * sum / n);
        var split = (float)dark * (n - dark) / n;
        var difference = ((sum - darkSum) / (n - dark)) - (darkSum / dark);
        return variance < 1 ? 0 : difference * MathF.Sqrt(split / variance);
    }

    private void Add(SymbolLayout layout, float weight, int left, int top, int right, int bottom)
    {
        var modules = new List<(int, int, sbyte)>();
        for (var y = top; y <= bottom; y++)
        {
            for (var x = left; x <= right; x++)
            {
                var outside = x < 0 || y < 0 || x >= _size || y >= _size;
                modules.Add((x, y, outside ? (sbyte)-1 : layout.FunctionPatterns[(y * _size) + x]));
            }
        }

        _patterns.Add([.. modules]);
        _weights.Add(weight);
    }
}
