namespace Tagend.Qr.Read;

/// <summary>Counts the modules of a timing pattern, which alternate between two finder patterns.</summary>
internal static class TimingPattern
{
    /// <summary>Modules between the ends of a timing pattern in the finder patterns, less than the symbol has a side.</summary>
    private const int Inset = 13;

    private const int SamplesAModule = 4;

    /// <summary>Modules around a place whose mean parts dark from light: as many dark ones as light ones.</summary>
    private const int Around = 4;

    /// <summary>What light must change by to count, as a share of all change along the pattern.</summary>
    private const float LeastChange = 0.12f;

    private const int MostSamples = 1024;

    /// <summary>The side of a symbol by the timing pattern between two of its finder patterns, in modules; any number where there is none.</summary>
    /// <param name="picture">That shows it.</param>
    /// <param name="from">The middle of the module before its first, which is dark.</param>
    /// <param name="to">The middle of the module after its last, which is dark.</param>
    /// <param name="modules">About how many there are between.</param>
    public static int SideBy(GrayPicture picture, Point from, Point to, float modules)
    {
        var count = Math.Clamp((int)(modules * SamplesAModule), 2 * Around * SamplesAModule, MostSamples);
        Span<float> sums = stackalloc float[count + 1];
        var (lowest, highest) = (float.MaxValue, 0f);
        for (var i = 0; i < count; i++)
        {
            var light = picture.At(from + ((to - from) * ((float)i / (count - 1))));
            sums[i + 1] = sums[i] + light;
            (lowest, highest) = (Math.Min(lowest, light), Math.Max(highest, light));
        }

        var window = Math.Max(2, (int)(Around * count / modules));
        var (turns, dark) = (0, true);
        for (var i = 0; i < count; i++)
        {
            var (first, last) = (Math.Max(0, i - (window / 2)), Math.Min(count, i + (window / 2) + 1));
            var difference = sums[i + 1] - sums[i] - ((sums[last] - sums[first]) / (last - first));
            if (Math.Abs(difference) > LeastChange * (highest - lowest) && difference < 0 != dark)
            {
                turns++;
                dark = !dark;
            }
        }

        return turns + Inset;
    }
}
