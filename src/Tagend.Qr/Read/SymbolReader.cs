using Tagend.Qr.Symbol;

namespace Tagend.Qr.Read;

/// <summary>Reads the symbol that three finder patterns belong to.</summary>
/// <param name="pyramid">That a symbol's place is found in, and its modules.</param>
/// <param name="asSeen">The same before it was treated, where it was: modules are looked for there too.</param>
internal sealed class SymbolReader(PicturePyramid pyramid, PixelBudget budget, SymbolDecoder decoder, PicturePyramid? asSeen = null)
{
    /// <summary>Below this, finder, timing and alignment patterns are not there: some other three things.</summary>
    private const float LeastFit = 0.42f;

    /// <summary>From here on the patterns are where the grid has them, and searching for the fourth corner is needless.</summary>
    private const float GoodFit = 0.8f;

    /// <summary>In modules, by the finder patterns: from 45 on a symbol tells its version and has alignment patterns enough to bend the grid by.</summary>
    private const float LeastSideOfVersion = 38;

    /// <summary>What a try to decode takes, a module, as if so many pixels were looked at.</summary>
    private const long LooksOfTry = 8;

    /// <summary>The same of undoing a blur before it.</summary>
    private const long LooksOfUndoing = 64;

    /// <summary>Of the grids on planes, the best that are nudged, and how often.</summary>
    private const int GridsNudged = 1;

    private const int Nudges = 2;

    /// <summary>Of a bent symbol, the most sizes that are tried.</summary>
    private const int SizesBent = 3;

    /// <summary>Looks closer at three finder patterns.</summary>
    /// <param name="triple">In pixels of the whole picture.</param>
    /// <param name="leastPatterns">How well each must look like a finder pattern.</param>
    /// <returns>Null where one is something else.</returns>
    public SymbolCandidate? Candidate(FinderTriple triple, float leastPatterns)
    {
        var (picture, scaled, _) = Near(triple);
        var candidate = SymbolCandidate.Of(picture, scaled, triple, leastPatterns, out var looks);
        budget.Spend(looks);
        return candidate;
    }

    /// <summary>The cheap way: the likeliest sizes on a plane, and the light as it is.</summary>
    /// <returns>The code; null where none can be read.</returns>
    public FoundCode? ReadPlain(SymbolCandidate candidate)
    {
        var (picture, _, scale) = Near(candidate.Triple);
        foreach (var size in candidate.Sizes().Take(candidate.HasTiming ? 1 : 2))
        {
            var (grid, score) = FitPlain(picture, candidate, size);
            if (score > LeastFit && Decode(picture, grid, QuickLooks) is { } text)
            {
                return Found(text, grid, scale);
            }

        }

        return ReadByAlignment(picture, candidate) is var (large, bent) ? Found(large, bent, scale) : null;
    }

    /// <summary>The costly way: more sizes, far perspectives, all looks at the light.</summary>
    /// <returns>The code, null where none can be read; and the grids it was looked for on, the best first.</returns>
    public (FoundCode? Code, IReadOnlyList<ModuleGrid> Grids) Read(SymbolCandidate candidate)
    {
        var (picture, _, scale) = Near(candidate.Triple);
        var seen = asSeen?.Level(pyramid.LevelFor(candidate.Triple.Module));
        var grids = candidate.Sizes()
            .Select(size => Fit(picture, candidate, size))
            .Where(g => g.Score > LeastFit)
            .OrderByDescending(g => g.Score)
            .Select(g => g.Grid)
            .ToList();
        foreach (var looks in (Func<SymbolLayout, float[], IEnumerable<float[]>>[])[QuickLooks, ThoroughLooks])
        {
            foreach (var grid in grids)
            {
                if ((seen is null ? null : Decode(seen, grid, looks)) is { } unblurred)
                {
                    return (Found(unblurred, grid, scale), grids);
                }

                if (Decode(picture, grid, looks) is { } text)
                {
                    return (Found(text, grid, scale), grids);
                }
            }
        }

        return (null, grids);
    }

    /// <summary>The costliest way: a label that is round or crumpled.</summary>
    /// <param name="candidate">That was not read on a plane.</param>
    /// <param name="grids">On planes, the best first.</param>
    /// <returns>The code; null where none can be read.</returns>
    public FoundCode? ReadBent(SymbolCandidate candidate, IReadOnlyList<ModuleGrid> grids)
    {
        var (picture, triple, scale) = Near(candidate.Triple);
        var seen = asSeen?.Level(pyramid.LevelFor(candidate.Triple.Module)) ?? picture;
        foreach (var grid in grids.Take(GridsNudged))
        {
            var nudged = grid;
            for (var n = 0; n < Nudges && !budget.IsSpent && GridNudge.Of(seen, nudged, out var looks) is { } moved; n++)
            {
                budget.Spend(looks);
                nudged = moved;
                if (Decode(seen, nudged, ThoroughLooks) is { } text)
                {
                    return Found(text, nudged, scale);
                }
            }
        }

        if (candidate.Triple.Guessed is null)
        {
            var finders = Fitted(picture, candidate);
            foreach (var size in VersionSizes(picture, candidate, finders).Concat(grids.Select(g => g.Size)).Distinct().Take(SizesBent).TakeWhile(_ => !budget.IsSpent))
            {
                var plane = grids.FirstOrDefault(g => g.Size == size) ?? new ModuleGrid(size, candidate.CornersFor(size));
                foreach (var flat in (ModuleGrid[])[plane, new ModuleGrid(size, triple.Corners)])
                {
                    var bent = AlignmentFit.Bent(picture, flat, finders, out var looks);
                    budget.Spend(looks);
                    bent = GridBend.Settled(picture, bent, out looks);
                    budget.Spend(looks);
                    if (Decode(picture, bent, ThoroughLooks) is { } text)
                    {
                        return Found(text, bent, scale);
                    }
                }
            }
        }

        foreach (var grid in grids.Take(candidate.Triple.Guessed is null ? SizesBent : 1).TakeWhile(_ => !budget.IsSpent))
        {
            var bent = GridBend.Rounded(picture, grid, triple.Corners, out var looks);
            budget.Spend(looks);
            if (Decode(picture, bent, ThoroughLooks) is { } text)
            {
                return Found(text, bent, scale);
            }
        }

        return null;
    }

    /// <summary>Sizes that a symbol says it has; none where it is too small to say.</summary>
    private static IEnumerable<int> VersionSizes(GrayPicture picture, SymbolCandidate candidate, FinderShape[] finders) =>
        candidate.Side < LeastSideOfVersion ? [] : VersionBlocks.Sizes(picture, finders[1], finders[2]);

    private FinderShape[] Fitted(GrayPicture picture, SymbolCandidate candidate)
    {
        budget.Spend(candidate.Shapes.Length * FinderShape.LooksToFit);
        return [.. candidate.Shapes.Select(s => s.Fitted(picture))];
    }

    /// <summary>A large symbol, however its label is bent: its version says how large, its alignment patterns where its modules are.</summary>
    private (string Text, ModuleGrid Grid)? ReadByAlignment(GrayPicture picture, SymbolCandidate candidate)
    {
        if (candidate.Side < LeastSideOfVersion || candidate.Triple.Guessed is not null)
        {
            return null;
        }

        var finders = Fitted(picture, candidate);
        foreach (var size in VersionSizes(picture, candidate, finders))
        {
            var bent = AlignmentFit.Bent(picture, new ModuleGrid(size, candidate.CornersFor(size)), finders, out var looks);
            budget.Spend(looks);
            if (Decode(picture, bent, QuickLooks) is { } text)
            {
                return (text, bent);
            }
        }

        return null;
    }

    private static FoundCode Found(string text, ModuleGrid grid, float scale) => new(text, grid.Outline.Scaled(1 / scale));

    /// <summary>The level to sample in, and the same finder patterns there.</summary>
    private (GrayPicture Picture, FinderTriple Triple, float Scale) Near(FinderTriple triple)
    {
        var level = pyramid.LevelFor(triple.Module);
        var scale = PicturePyramid.Scale(level);
        return (pyramid.Level(level), triple.Scaled(scale), scale);
    }

    private (ModuleGrid Grid, float Score) FitPlain(GrayPicture picture, SymbolCandidate candidate, int size)
    {
        var fit = new PatternFit(picture, size);
        var best = FourthCorner(fit, candidate, size);
        if (best.Score > LeastFit / 2)
        {
            best = fit.Improved(best.Corners, new ModuleGrid(size, best.Corners).Module / 2);
        }

        budget.Spend(fit.Looks);
        return (new ModuleGrid(size, best.Corners), best.Score);
    }

    private (ModuleGrid Grid, float Score) Fit(GrayPicture picture, SymbolCandidate candidate, int size)
    {
        var (grid, score) = FitPlain(picture, candidate, size);
        if (score >= GoodFit)
        {
            return (grid, score);
        }

        var fit = new PatternFit(picture, size);
        var corners = candidate.CornersFor(size);
        var tilted = fit.Improved(
            fit.Tilted(corners with { BottomRight = corners.TopRight + corners.BottomLeft - corners.TopLeft }), grid.Module / 2);
        budget.Spend(fit.Looks);
        return tilted.Score > score ? (new ModuleGrid(size, tilted.Corners), tilted.Score) : (grid, score);
    }

    /// <summary>The best of no perspective, the one that the finder patterns show and, for a guess, of a square, moved to where the patterns fit best.</summary>
    private static (Quadrilateral Corners, float Score) FourthCorner(PatternFit fit, SymbolCandidate candidate, int size)
    {
        var corners = candidate.CornersFor(size);
        var start = ((Quadrilateral[])[corners, corners with { BottomRight = corners.TopRight + corners.BottomLeft - corners.TopLeft }, candidate.Corners])
            .MaxBy(c => fit.Score(c));
        return fit.Improved(start, new ModuleGrid(size, start).Module, from: candidate.Triple.Guessed is null ? Quadrilateral.OfBottomRight : 0);
    }

    private string? Decode(GrayPicture picture, ModuleGrid grid, Func<SymbolLayout, float[], IEnumerable<float[]>> looks)
    {
        var layout = SymbolLayout.Of(grid.Size);
        var light = ModuleLight.Read(picture, grid);
        budget.Spend(light.Length * 9L);
        foreach (var darkness in looks(layout, light))
        {
            budget.Spend(light.Length * LooksOfTry);
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

    private IEnumerable<float[]> ThoroughLooks(SymbolLayout layout, float[] light)
    {
        var size = layout.Size;
        yield return ModuleLight.Darkness(light, size, 3);
        yield return ModuleLight.Darkness(ModuleLight.Sharpened(light, size, 0.4f, 0.4f), size, 2);
        yield return ModuleLight.AgainstMean(light, size, 4);
        yield return ModuleLight.AgainstMean(light, size, 1);
        foreach (var seen in new[] { ModuleLight.AgainstMean(light, size, 8), ModuleLight.AgainstMean(light, size, 4) })
        {
            budget.Spend(light.Length * LooksOfUndoing);
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
