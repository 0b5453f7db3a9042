namespace Tagend.Qr.Read;

/// <summary>What is done to the picture before finder patterns are looked for.</summary>
internal enum Treatment
{
    AsIs,
    Smoothed,
    Sharpened,
    Deblurred,
    Doubled,
    Inverted,
}

/// <summary>One way to look for finder patterns.</summary>
/// <param name="Round">All passes of a round are made; later rounds only if nothing was found.</param>
/// <param name="Finer">Levels above the coarsest that is worth it; each has four times the pixels of the one below.</param>
/// <param name="Treatment">Of the picture, before.</param>
/// <param name="Radius">Of the surroundings that decide what is dark, in pixels.</param>
/// <param name="Guesses">Whether two finder patterns are enough, the third having been lost.</param>
/// <param name="LeastModule">In pixels of the level.</param>
/// <param name="LargestModule">In pixels of the level.</param>
/// <param name="LeastRings">The share of directions that must show a finder pattern's rings.</param>
/// <param name="Matched">Whether patterns are looked for by their light instead of their edges.</param>
internal sealed record ReadingPass(
    int Round, int Finer, Treatment Treatment, int Radius, bool Guesses = false, float LeastModule = 0, float LargestModule = float.MaxValue, float LeastRings = 0, bool Matched = false)
{
    /// <summary>The coarsest level that is worth a costly look has at least so many pixels, a quarter of that in pictures as small.</summary>
    private const long CoarsePixels = 200_000;

    /// <summary>A level as small has room for one small symbol.</summary>
    private const int CoarseSide = 48;

    /// <summary>Pictures of fewer pixels are also looked at in double size, for modules of one pixel.</summary>
    private const long SmallPixels = 1_500_000;

    /// <summary>Of a pass over one of all levels; what is larger is found in the coarser one.</summary>
    private const float ModuleOfLevel = 6;

    /// <summary>Of the same; what is smaller is found in the finer one, and noise is full of it.</summary>
    private const float LeastModuleOfLevel = 1.6f;

    /// <summary>The same of the finest one, below which there is nothing to find.</summary>
    private const float LeastModuleOfFinest = 1.2f;

    private const float ClearRings = 0.6f;

    /// <summary>Dearer ones, cheapest first within what is likely to help. More ways to look are more rows here.</summary>
    public static IReadOnlyList<ReadingPass> Costly { get; } =
    [
        new(1, 1, Treatment.AsIs, 14, Guesses: true, LeastRings: ClearRings),
        new(1, 0, Treatment.AsIs, 14, Guesses: true, LeastRings: ClearRings),
        new(1, 0, Treatment.AsIs, 0, Matched: true),
        new(1, 0, Treatment.Deblurred, 0, Matched: true),
        new(1, -1, Treatment.AsIs, 0, Matched: true),
        new(1, -1, Treatment.Deblurred, 0, Matched: true),
        new(1, 0, Treatment.AsIs, 14),
        new(1, 1, Treatment.AsIs, 14),
        new(2, 1, Treatment.AsIs, 0, Matched: true),
        new(2, 1, Treatment.Deblurred, 0, Matched: true),
        new(2, 2, Treatment.AsIs, 14),
        new(2, -1, Treatment.AsIs, 10),
        new(2, -2, Treatment.AsIs, 10),
        new(2, 0, Treatment.AsIs, 6),
        new(2, 1, Treatment.AsIs, 7),
        new(3, 0, Treatment.Smoothed, 14),
        new(3, 1, Treatment.Smoothed, 20),
        new(3, 0, Treatment.AsIs, 40),
        new(3, 1, Treatment.Sharpened, 10),
        new(4, 1, Treatment.AsIs, 14, Guesses: true, LeastRings: 0.4f),
        new(4, 0, Treatment.AsIs, 14, Guesses: true, LeastRings: 0.4f),
        new(5, 0, Treatment.Inverted, 14),
        new(5, 1, Treatment.Inverted, 14),
        new(6, 3, Treatment.AsIs, 14),
        new(6, 0, Treatment.Doubled, 14),
        new(6, 1, Treatment.Doubled, 14),
        new(7, 0, Treatment.Doubled, 0, Matched: true),
        new(7, 1, Treatment.Doubled, 0, Matched: true),
        new(7, 2, Treatment.Doubled, 14),
    ];

    /// <summary>A plain look at every level, from the coarsest to the finest.</summary>
    public static IEnumerable<ReadingPass> Plain(PicturePyramid pyramid)
    {
        var coarsest = Coarsest(pyramid);
        var last = coarsest;
        while (pyramid.Has(last + 1) && Math.Min(pyramid.Level(last + 1).Width, pyramid.Level(last + 1).Height) >= CoarseSide)
        {
            last++;
        }

        foreach (var treatment in (Treatment[])[Treatment.AsIs, Treatment.Inverted])
        {
            for (var level = last; level >= 0; level--)
            {
                yield return new ReadingPass(
                    0, coarsest - level, treatment, 14, LeastModule: level == 0 ? LeastModuleOfFinest : LeastModuleOfLevel,
                    LargestModule: level == last ? float.MaxValue : ModuleOfLevel, LeastRings: ClearRings);
            }
        }

        if (pyramid.Level(0).Area < SmallPixels)
        {
            yield return new ReadingPass(0, coarsest, Treatment.Doubled, 14, LeastModule: LeastModuleOfLevel, LargestModule: ModuleOfLevel, LeastRings: ClearRings);
        }
    }

    /// <summary>The level of the pyramid this pass looks at; null where the picture has no such level.</summary>
    public int? LevelIn(PicturePyramid pyramid)
    {
        var level = Coarsest(pyramid) - Finer;
        return level >= 0 && pyramid.Has(level) ? level : null;
    }

    private static int Coarsest(PicturePyramid pyramid)
    {
        var coarsest = 0;
        while (pyramid.Level(coarsest).Area >= 4 * CoarsePixels)
        {
            coarsest++;
        }

        return coarsest;
    }
}
