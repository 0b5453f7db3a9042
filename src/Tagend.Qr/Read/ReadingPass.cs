namespace Tagend.Qr.Read;

/// <summary>What is done to the picture before finder patterns are looked for.</summary>
internal enum Treatment
{
    AsIs,
    Smoothed,
    Sharpened,
    Doubled,
    Inverted,
}

/// <summary>One way to look for finder patterns.</summary>
/// <param name="Round">All passes of a round are made; later rounds only if nothing was found.</param>
/// <param name="Finer">Levels above the coarsest that is worth it; each has four times the pixels of the one below.</param>
/// <param name="Radius">Of the surroundings that decide what is dark, in pixels.</param>
/// <param name="Guesses">Whether two finder patterns are enough, the third having been lost.</param>
internal sealed record ReadingPass(int Round, int Finer, Treatment Treatment, int Radius, bool Guesses = false)
{
    /// <summary>The coarsest level that is worth a look has at least so many pixels, a quarter of that in pictures as small.</summary>
    private const long CoarsePixels = 200_000;

    /// <summary>Cheapest first within what is likely to help. More ways to look are more rows here.</summary>
    public static IReadOnlyList<ReadingPass> All { get; } =
    [
        new(1, 0, Treatment.AsIs, 14),
        new(1, 1, Treatment.AsIs, 14),
        new(2, 2, Treatment.AsIs, 14),
        new(2, -1, Treatment.AsIs, 10),
        new(2, -2, Treatment.AsIs, 10),
        new(2, 0, Treatment.AsIs, 6),
        new(2, 1, Treatment.AsIs, 7),
        new(3, 0, Treatment.Smoothed, 14),
        new(3, 1, Treatment.Smoothed, 20),
        new(3, 0, Treatment.AsIs, 40),
        new(3, 1, Treatment.Sharpened, 10),
        new(4, 1, Treatment.AsIs, 14, Guesses: true),
        new(4, 0, Treatment.AsIs, 14, Guesses: true),
        new(5, 0, Treatment.Inverted, 14),
        new(5, 1, Treatment.Inverted, 14),
        new(6, 3, Treatment.AsIs, 14),
        new(6, 0, Treatment.Doubled, 14),
        new(6, 1, Treatment.Doubled, 14),
        new(7, 2, Treatment.Doubled, 14),
    ];

    /// <summary>The level of the pyramid this pass looks at; null where the picture has no such level.</summary>
    public int? LevelIn(PicturePyramid pyramid)
    {
        var coarsest = 0;
        while (pyramid.Level(coarsest).Area >= 4 * CoarsePixels)
        {
            coarsest++;
        }

        var level = coarsest - Finer;
        return level >= 0 && pyramid.Has(level) ? level : null;
    }
}
