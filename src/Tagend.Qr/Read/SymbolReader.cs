using Tagend.Qr.Symbol;

namespace Tagend.Qr.Read;

/// <summary>Reads the symbol that three finder patterns belong to.</summary>
internal sealed class SymbolReader(PicturePyramid pyramid, PixelBudget budget, SymbolDecoder decoder)
{
    /// <summary>Below this, finder, timing and alignment patterns are not there: some other three things.</summary>
    private const float LeastFit = 0.42f;

    /// <summary>From here on the patterns are where the grid has them, and searching for the fourth corner is needless.</summary>
    private const float GoodFit = 0.8f;

    /// <summary>How far the fourth corner may be from where it is without perspective, as a share of a side.</summary>
    private const float FarCorner = 0.42f;

    /// <summary>Whether reading is worth it: 1 where the finder patterns are as they should be, 0 where they are none.</summary>
    /// <param name="triple">In pixels of the whole picture.</param>
    public float Promise(FinderTriple triple)
    {
        var (picture, scaled) = Near(triple);
        budget.Spend(FinderCheck.Looks);
        return FinderCheck.Score(picture, scaled);
    }

    /// <param name="triple">In pixels of the whole picture.</param>
    /// <returns>The text; null where none can be read.</returns>
    public string? Read(FinderTriple triple)
    {
        var (picture, scaled) = Near(triple);
        var grids = Sizes(picture, scaled)
            .Select(size => Fit(picture, scaled, size))
            .Where(g => g.Score > LeastFit)
            .OrderByDescending(g => g.Score)
            .Select(g => g.Grid)
            .ToList();
        foreach (var grid in grids)
        {
            if (Decode(picture, grid, thorough: false) is { } text)
            {
                return text;
            }
        }

        foreach (var grid in grids)
        {
            if (Decode(picture, grid, thorough: true) is { } text)
            {
                return text;
            }
        }

        return ReadBent(picture, scaled, grids);
    }

    private string? ReadBent(GrayPicture picture, FinderTriple triple, List<ModuleGrid> grids)
    {
        var waiting = new Queue<ModuleGrid>(grids.Take(3));
        var sizes = grids.Take(3).Select(g => g.Size).ToHashSet();
        while (waiting.TryDequeue(out var grid) && !budget.IsSpent)
        {
            var bent = GridBend.Fit(picture, grid, triple.Corners, out var looks);
            budget.Spend(looks);
            if (Decode(picture, bent, thorough: true) is { } text)
            {
                return text;
            }

            // Version information is beside two of the finder patterns, so it is right even in a grid of a wrong size.
            var darkness = ModuleLight.Darkness(ModuleLight.Read(picture, bent), grid.Size, 3);
            foreach (var size in VersionInformation.Read(darkness, grid.Size).Where(sizes.Add))
            {
                waiting.Enqueue(Fit(picture, triple, size).Grid);
            }
        }

        return null;
    }

    /// <summary>The level to sample in, and the same finder patterns there.</summary>
    private (GrayPicture Picture, FinderTriple Triple) Near(FinderTriple triple)
    {
        var level = pyramid.LevelFor((triple.Corner.Module + triple.Right.Module + triple.Below.Module) / 3);
        return (pyramid.Level(level), triple.Scaled(PicturePyramid.Scale(level)));
    }

    /// <summary>Sizes the symbol may have, the likeliest first.</summary>
    private static IEnumerable<int> Sizes(GrayPicture picture, FinderTriple triple)
    {
        var (corner, right, below) = (triple.Corner, triple.Right, triple.Below);
        var span = triple.Guessed is { } guessed
            ? guessed == corner ? Span(picture, right, below) : Span(picture, corner, guessed == right ? below : right)
            : (Span(picture, corner, right) + Span(picture, corner, below)) / 2;
        var measured = span + (2 * ModuleGrid.FinderInset);
        var nearest = ((int)Math.Round((measured - 17) / 4) * 4) + 17;
        var (next, other) = measured > nearest ? (nearest + 4, nearest - 4) : (nearest - 4, nearest + 4);
        int[] sizes = nearest > 60 ? [nearest, next, other, nearest + Math.Sign(next - nearest) * 8] : [nearest, next, other];
        return sizes.Where(SymbolLayout.IsSize);
    }

    /// <summary>Modules between two finder patterns, by the size of their own along the line between them.</summary>
    private static float Span(GrayPicture picture, FinderPattern a, FinderPattern b)
    {
        var line = b.Middle - a.Middle;
        return a.DistanceTo(b) * 2 / (FinderCheck.Module(picture, a, line) + FinderCheck.Module(picture, b, line));
    }

    private (ModuleGrid Grid, float Score) Fit(GrayPicture picture, FinderTriple triple, int size)
    {
        var fit = new PatternFit(picture, size);
        var corners = triple.Corners;
        var module = new ModuleGrid(size, corners).Module;
        var best = fit.Improved(corners, module, from: Quadrilateral.OfBottomRight);
        best = best.Score > LeastFit / 2 ? fit.Improved(best.Corners, module / 2) : best;
        if (best.Score < GoodFit)
        {
            var tilted = fit.Improved(Tilted(fit, corners, size), module / 2);
            best = tilted.Score > best.Score ? tilted : best;
        }

        budget.Spend(fit.Looks);
        return (new ModuleGrid(size, best.Corners), best.Score);
    }

    /// <summary>The corners with the fourth where it fits best, looked for far and wide.</summary>
    private static Quadrilateral Tilted(PatternFit fit, in Quadrilateral corners, int size)
    {
        var (best, bestScore) = (corners, float.MinValue);
        var steps = (int)Math.Ceiling(FarCorner * (size - (2 * ModuleGrid.FinderInset)) / 1.5f);
        for (var i = -steps; i <= steps; i++)
        {
            for (var j = -steps; j <= steps; j++)
            {
                var (p, q) = (FarCorner * i / steps, FarCorner * j / steps);
                var moved = corners with
                {
                    BottomRight = corners.BottomRight + ((corners.TopRight - corners.TopLeft) * p) + ((corners.BottomLeft - corners.TopLeft) * q),
                };
                var score = fit.Score(moved);
                if (score > bestScore)
                {
                    (best, bestScore) = (moved, score);
                }
            }
        }

        return best;
    }

    private string? Decode(GrayPicture picture, ModuleGrid grid, bool thorough)
    {
        var layout = SymbolLayout.Of(grid.Size);
        var light = ModuleLight.Read(picture, grid);
        budget.Spend(light.Length * 9L);
        foreach (var darkness in thorough ? ThoroughLooks(layout, light) : QuickLooks(layout, light))
        {
            budget.Spend(light.Length);
            if (decoder.Decode(layout, darkness) is { } text)
            {
                return text;
            }
        }

        return null;
    }

    private static IEnumerable<float[]> QuickLooks(SymbolLayout layout, float[] light)
    {
        yield return ModuleLight.Darkness(light, layout.Size, 3);
        yield return ModuleLight.Darkness(ModuleLight.Sharpened(light, layout.Size, 0.5f, 0.5f), layout.Size, 3);
    }

    private static IEnumerable<float[]> ThoroughLooks(SymbolLayout layout, float[] light)
    {
        var size = layout.Size;
        yield return ModuleLight.Darkness(light, size, 3);
        yield return ModuleLight.Darkness(ModuleLight.Sharpened(light, size, 0.4f, 0.4f), size, 2);
        yield return ModuleLight.AgainstMean(light, size, 4);
        yield return ModuleLight.AgainstMean(light, size, 1);
        foreach (var seen in new[] { ModuleLight.AgainstMean(light, size, 8), ModuleLight.AgainstMean(light, size, 4) })
        {
            if (BlurModel.Undo(layout, seen, ModuleLight.AgainstMean(light, size, 1)) is { } clear)
            {
                yield return clear;
            }
        }

        yield return ModuleLight.Darkness(ModuleLight.Sharpened(light, size, 1, 1), size, 2);
        yield return ModuleLight.AgainstMean(ModuleLight.Sharpened(light, size, 1, 0), size, 3);
        yield return ModuleLight.AgainstMean(ModuleLight.Sharpened(light, size, 0, 1), size, 3);
        yield return ModuleLight.Darkness(ModuleLight.Transposed(light, size), size, 3);
    }
}
