namespace Tagend.Qr.Read;

/// <summary>Looks closer at three finder patterns: each must have its own shape, turned as the lines between them say.</summary>
internal static class FinderCheck
{
    /// <summary>Pixels looked at, about.</summary>
    public const long Looks = 1200;

    /// <summary>1 where all that were seen are finder patterns of one symbol; about 0 where one is none.</summary>
    public static float Score(GrayPicture picture, FinderTriple triple)
    {
        var (a, b, c) = (triple.Corner, triple.Right, triple.Below);
        var (across, down) = (b.Middle - a.Middle, c.Middle - a.Middle);
        var least = 1f;
        foreach (var finder in (ReadOnlySpan<FinderPattern>)[a, b, c])
        {
            least = finder == triple.Guessed ? least : Math.Min(least, Shape(picture, finder, across, down));
        }

        return least;
    }

    /// <summary>A module's length at a finder pattern, in a direction.</summary>
    public static float Module(GrayPicture picture, FinderPattern finder, Point direction)
    {
        var unit = direction * (1 / direction.Length);
        var (best, bestModule) = (float.MinValue, finder.Module);
        for (var factor = 0.55f; factor < 1.6f; factor *= 1.05f)
        {
            var module = finder.Module * factor;
            var contrast = Profile(picture, finder, unit * module);
            if (contrast > best)
            {
                (best, bestModule) = (contrast, module);
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

        float Both(float at) =>
            picture.At(finder.Middle + (module * at)) + picture.At(finder.Middle - (module * at));
    }

    private static float Shape(GrayPicture picture, FinderPattern finder, Point across, Point down)
    {
        var (u, v) = (Step(picture, finder, across), Step(picture, finder, down));
        float sum = 0, squares = 0, dark = 0;
        for (var y = -4; y <= 4; y++)
        {
            for (var x = -4; x <= 4; x++)
            {
                var light = picture.At(finder.Middle + (u * x) + (v * y));
                sum += light;
                squares += light * light;
                dark += IsDark(x, y) ? light : 0;
            }
        }

        const int All = 81;
        const int Dark = 33;
        var variance = squares - (sum * sum / All);
        var difference = ((sum - dark) / (All - Dark)) - (dark / Dark);
        return variance < 1 ? 0 : difference * MathF.Sqrt((float)Dark * (All - Dark) / All / variance);
    }

    private static Point Step(GrayPicture picture, FinderPattern finder, Point direction) =>
        direction * (Module(picture, finder, direction) / direction.Length);

    private static bool IsDark(int x, int y) => Math.Max(Math.Abs(x), Math.Abs(y)) is 0 or 1 or 3;
}
