namespace Tagend.Qr.Read;

/// <summary>A finder pattern's modules as they are seen: which way they go and how large they are.</summary>
/// <param name="Middle">In pixels.</param>
/// <param name="Across">From a module to the next one across the symbol, in pixels.</param>
/// <param name="Down">From a module to the next one down the symbol, in pixels.</param>
internal readonly record struct FinderShape(Point Middle, Point Across, Point Down)
{
    /// <summary>Pixels looked at for one, about.</summary>
    public const long Looks = 700;

    private const int Side = 9;
    private const int DarkModules = 33;

    /// <param name="picture">That shows it.</param>
    /// <param name="finder">In pixels of the picture.</param>
    /// <param name="across">Any length along the symbol's rows.</param>
    /// <param name="down">Any length along its columns.</param>
    public static FinderShape Of(GrayPicture picture, FinderPattern finder, Point across, Point down) => new(
        finder.Middle,
        across * (Module(picture, finder, across) / across.Length),
        down * (Module(picture, finder, down) / down.Length));

    /// <summary>1 where a finder pattern is there, about 0 where none is: the correlation of light with the pattern and its light frame.</summary>
    public float Correlation(GrayPicture picture)
    {
        float sum = 0, squares = 0, dark = 0;
        for (var y = -Side / 2; y <= Side / 2; y++)
        {
            for (var x = -Side / 2; x <= Side / 2; x++)
            {
                var light = picture.At(Middle + (Across * x) + (Down * y));
                sum += light;
                squares += light * light;
                dark += Math.Max(Math.Abs(x), Math.Abs(y)) is 0 or 1 or 3 ? light : 0;
            }
        }

        const int All = Side * Side;
        var variance = squares - (sum * sum / All);
        var difference = ((sum - dark) / (All - DarkModules)) - (dark / DarkModules);
        return variance < 1 ? 0 : difference * MathF.Sqrt((float)DarkModules * (All - DarkModules) / All / variance);
    }

    /// <summary>A module's length in a direction: the one that shows the pattern's profile best.</summary>
    private static float Module(GrayPicture picture, FinderPattern finder, Point direction)
    {
        var unit = direction * (1 / direction.Length);
        var (best, bestModule) = (float.MinValue, finder.Module);
        for (var factor = 0.45f; factor < 1.9f; factor *= 1.06f)
        {
            var contrast = Profile(picture, finder, unit * (finder.Module * factor));
            if (contrast > best)
            {
                (best, bestModule) = (contrast, finder.Module * factor);
            }
        }

        return bestModule;
    }

    /// <summary>How much lighter the light parts of the profile 1 : 1 : 3 : 1 : 1 are than the dark ones.</summary>
    private static float Profile(GrayPicture picture, FinderPattern finder, Point module)
    {
        ReadOnlySpan<float> dark = [0, 0.6f, 1.2f, 2.75f, 3.25f];
        ReadOnlySpan<float> light = [1.75f, 2.25f, 3.75f, 4.25f];
        var sum = 0f;
        foreach (var at in dark)
        {
            sum -= Both(at) / dark.Length;
        }

        foreach (var at in light)
        {
            sum += Both(at) / light.Length;
        }

        return sum;

        float Both(float at) => picture.At(finder.Middle + (module * at)) + picture.At(finder.Middle - (module * at));
    }
}
