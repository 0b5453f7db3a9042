namespace Tagend.Qr.Read;

/// <summary>A finder pattern's modules as they are seen: which way they go and how large they are.</summary>
/// <param name="Middle">In pixels.</param>
/// <param name="Across">From a module to the next one across the symbol, in pixels.</param>
/// <param name="Down">From a module to the next one down the symbol, in pixels.</param>
internal readonly record struct FinderShape(Point Middle, Point Across, Point Down)
{
    /// <summary>Pixels looked at for one, about.</summary>
    public const long Looks = 220;

    /// <summary>Pixels looked at to fit one, about.</summary>
    public const long LooksToFit = 5000;

    private const int Side = 9;
    private const int DarkModules = 33;

    /// <summary>Of the middle, of a module across and of one down.</summary>
    private const int Numbers = 6;

    /// <summary>Of a fit, in modules.</summary>
    private const float FirstStep = 0.6f;

    private const float LastStep = 0.03f;

    /// <summary>Its module against what the edges said.</summary>
    private const float LeastFactor = 0.45f;

    private const float MostFactor = 1.9f;

    /// <summary>Between looks along a line, in modules as the edges said.</summary>
    private const float LineStep = 0.25f;

    /// <summary>As far as the light frame of the largest module.</summary>
    private const int LineSamples = 34;

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
            var place = At(-Side / 2, y);
            for (var x = -Side / 2; x <= Side / 2; x++, place += Across)
            {
                var light = picture.At(place);
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

    /// <summary>The same moved, turned and slanted to where the pattern fits best: a bent label's rows go elsewhere than the lines between its patterns.</summary>
    public FinderShape Fitted(GrayPicture picture)
    {
        var (shape, best) = (this, Correlation(picture));
        for (var step = FirstStep; step > LastStep; step /= 2)
        {
            for (var move = 0; move < 2 * Numbers; move++)
            {
                var moved = shape.Moved(move / 2, move % 2 == 0 ? step : -step);
                var correlation = moved.Correlation(picture);
                if (correlation > best)
                {
                    (shape, best) = (moved, correlation);
                }
            }
        }

        return shape;
    }

    /// <summary>To pixels.</summary>
    /// <param name="across">Modules from the middle, along the symbol's rows.</param>
    /// <param name="down">Modules from the middle, along its columns.</param>
    public Point At(float across, float down) => Middle + (Across * across) + (Down * down);

    /// <summary>Half way between the light of its dark modules and that of its light ones.</summary>
    public float Gray(GrayPicture picture)
    {
        var (dark, light) = (picture.At(Middle), 0f);
        foreach (var (x, y) in (ReadOnlySpan<(int, int)>)[(2, 0), (-2, 0), (0, 2), (0, -2)])
        {
            light += picture.At(At(x, y)) / 4;
        }

        return (dark + light) / 2;
    }

    private FinderShape Moved(int number, float by)
    {
        // A pattern's edge is three and a half modules from its middle: its sides move by about as much as its middle.
        var step = (number % 2 == 0 ? Across : Down) * by;
        return (number / 2) switch
        {
            0 => this with { Middle = Middle + step },
            1 => this with { Across = Across + (step * 0.3f) },
            _ => this with { Down = Down + (step * 0.3f) },
        };
    }

    /// <summary>A module's length in a direction: the one that shows the pattern's profile 1 : 1 : 3 : 1 : 1 best.</summary>
    private static float Module(GrayPicture picture, FinderPattern finder, Point direction)
    {
        // The light along the line, of both sides together, from the middle outwards.
        var step = direction * (finder.Module * LineStep / direction.Length);
        Span<float> line = stackalloc float[LineSamples];
        for (var i = 0; i < line.Length; i++)
        {
            line[i] = picture.At(finder.Middle + (step * i)) + picture.At(finder.Middle - (step * i));
        }

        var (best, bestModule) = (float.MinValue, finder.Module);
        for (var factor = LeastFactor; factor < MostFactor; factor *= 1.06f)
        {
            var contrast = Profile(line, factor / LineStep);
            if (contrast > best)
            {
                (best, bestModule) = (contrast, finder.Module * factor);
            }
        }

        return bestModule;
    }

    /// <summary>How much lighter the light parts of the profile are than the dark ones.</summary>
    private static float Profile(ReadOnlySpan<float> line, float samplesAModule)
    {
        ReadOnlySpan<float> dark = [0, 0.6f, 1.2f, 2.75f, 3.25f];
        ReadOnlySpan<float> light = [1.75f, 2.25f, 3.75f, 4.25f];
        var sum = 0f;
        foreach (var at in dark)
        {
            sum -= At(line, at * samplesAModule) / dark.Length;
        }

        foreach (var at in light)
        {
            sum += At(line, at * samplesAModule) / light.Length;
        }

        return sum;

        static float At(ReadOnlySpan<float> line, float at)
        {
            var i = (int)at;
            return line[i] + ((line[i + 1] - line[i]) * (at - i));
        }
    }
}
