namespace Tagend.Qr.Read;

/// <summary>The light of each module, and how dark that makes it against its neighbors.</summary>
internal static class ModuleLight
{
    /// <summary>Looks a module's side.</summary>
    private const int Looks = 3;

    /// <summary>Between looks, in modules.</summary>
    private const float Apart = 0.22f;

    public static float[] Read(GrayPicture picture, ModuleGrid grid)
    {
        var light = new float[grid.Size * grid.Size];
        for (var y = 0; y < grid.Size; y++)
        {
            for (var x = 0; x < grid.Size; x++)
            {
                var middle = grid.At(x + 0.5f, y + 0.5f);
                var across = grid.At(x + 0.5f + Apart, y + 0.5f) - middle;
                var down = grid.At(x + 0.5f, y + 0.5f + Apart) - middle;
                var sum = 0f;
                for (var i = 0; i < Looks * Looks; i++)
                {
                    sum += picture.At(middle + (across * ((i % Looks) - 1)) + (down * ((i / Looks) - 1)));
                }

                light[(y * grid.Size) + x] = sum / (Looks * Looks);
            }
        }

        return light;
    }

    /// <summary>Each module's difference from the mean of the four beside it is added again, so many times.</summary>
    public static float[] Sharpened(float[] light, int size, float across, float down)
    {
        var sharp = new float[light.Length];
        for (var y = 0; y < size; y++)
        {
            for (var x = 0; x < size; x++)
            {
                var i = (y * size) + x;
                var beside = (light[x > 0 ? i - 1 : i] + light[x < size - 1 ? i + 1 : i]) / 2;
                var above = (light[y > 0 ? i - size : i] + light[y < size - 1 ? i + size : i]) / 2;
                sharp[i] = light[i] + (across * (light[i] - beside)) + (down * (light[i] - above));
            }
        }

        return sharp;
    }

    /// <summary>Darkness from -1 to 1 or so, against the middle between the darkest and the lightest module around.</summary>
    /// <param name="reach">Of the surroundings, in modules.</param>
    public static float[] Darkness(float[] light, int size, int reach)
    {
        var (low, high) = (Lightest(Negated(light), size, reach), Lightest(light, size, reach));
        low = Mean(Negated(low), size, reach);
        high = Mean(high, size, reach);
        // Where all is nearly alike, glare or dirt has taken what was there: such modules are doubtful.
        var ranges = new float[light.Length];
        for (var i = 0; i < ranges.Length; i++)
        {
            ranges[i] = high[i] - low[i];
        }

        Array.Sort(ranges);
        var usual = ranges[ranges.Length / 2];
        var darkness = new float[light.Length];
        for (var i = 0; i < light.Length; i++)
        {
            darkness[i] = (low[i] + high[i] - (2 * light[i])) / Math.Max(high[i] - low[i], 0.6f * usual + 0.01f);
        }

        return darkness;
    }

    /// <summary>Darkness against the mean around.</summary>
    public static float[] AgainstMean(float[] light, int size, int reach)
    {
        var mean = Mean(light, size, reach);
        var spread = 0.0;
        for (var i = 0; i < light.Length; i++)
        {
            spread += Math.Abs(light[i] - mean[i]);
        }

        var unit = (float)(spread / light.Length) + 0.01f;
        for (var i = 0; i < light.Length; i++)
        {
            mean[i] = (mean[i] - light[i]) / unit;
        }

        return mean;
    }

    public static float[] Transposed(float[] light, int size)
    {
        var transposed = new float[light.Length];
        for (var i = 0; i < light.Length; i++)
        {
            transposed[(i % size * size) + (i / size)] = light[i];
        }

        return transposed;
    }

    private static float[] Negated(float[] light)
    {
        var negated = new float[light.Length];
        for (var i = 0; i < light.Length; i++)
        {
            negated[i] = -light[i];
        }

        return negated;
    }

    /// <summary>Of each module and those around.</summary>
    private static float[] Lightest(float[] light, int size, int reach)
    {
        return Pass(Pass(light, 1), size);

        float[] Pass(float[] from, int stride)
        {
            var lightest = new float[from.Length];
            for (var i = 0; i < from.Length; i++)
            {
                var at = i / stride % size;
                var (first, last, most) = (Math.Max(-reach, -at), Math.Min(reach, size - 1 - at), from[i]);
                for (var d = first; d <= last; d++)
                {
                    var value = from[i + (d * stride)];
                    most = value > most ? value : most;
                }

                lightest[i] = most;
            }

            return lightest;
        }
    }

    private static float[] Mean(float[] light, int size, int reach)
    {
        return Pass(Pass(light, 1), size);

        float[] Pass(float[] from, int stride)
        {
            var means = new float[from.Length];
            for (var i = 0; i < from.Length; i++)
            {
                var at = i / stride % size;
                var (first, last, sum) = (Math.Max(-reach, -at), Math.Min(reach, size - 1 - at), 0f);
                for (var d = first; d <= last; d++)
                {
                    sum += from[i + (d * stride)];
                }

                means[i] = sum / (last - first + 1);
            }

            return means;
        }
    }
}
