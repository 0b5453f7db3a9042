namespace Tagend.Pages.Fit;

/// <summary>Numbers along an edge of a plot.</summary>
/// <param name="Least">The number at <paramref name="Start"/>.</param>
/// <param name="Most">The number at <paramref name="End"/>.</param>
/// <param name="Step">From one tick to the next: 1, 2 or 5 times a power of ten.</param>
/// <param name="Start">In points; more than <paramref name="End"/> on an axis that points up.</param>
internal sealed record PlotAxis(double Least, double Most, double Step, float Start, float End)
{
    /// <summary>The margin beyond the numbers on either side, as a share of their span.</summary>
    private const double Margin = 0.06;

    private const int MostTicks = 9;

    private static readonly int[] Steps = [1, 2, 5, 10];

    public IEnumerable<double> Ticks
    {
        get
        {
            var (first, last) = ((long)Math.Ceiling((Least / Step) - 1e-9), (long)Math.Floor((Most / Step) + 1e-9));
            for (var i = first; i <= last; i++)
            {
                yield return i * Step;
            }
        }
    }

    /// <summary>From a whole tick to a whole tick, with a margin beyond both numbers.</summary>
    /// <param name="leastSpan">Taken where the numbers lie closer together.</param>
    public static PlotAxis Covering(double least, double most, float start, float end, double leastSpan)
    {
        var span = Math.Max(most - least, leastSpan);
        var middle = (least + most) / 2;
        var (low, high) = (middle - (span * (0.5 + Margin)), middle + (span * (0.5 + Margin)));
        var step = StepFor((high - low) / MostTicks);
        return new PlotAxis(Math.Floor(low / step) * step, Math.Ceiling(high / step) * step, step, start, end);
    }

    /// <summary>The least of 1, 2 and 5 times a power of ten that is no less than a number.</summary>
    private static double StepFor(double number)
    {
        var power = Math.Pow(10, Math.Floor(Math.Log10(number)));
        return Array.Find(Steps, times => times * power >= number * (1 - 1e-9)) * power;
    }

    public float At(double number) => (float)(Start + ((number - Least) / (Most - Least) * (End - Start)));
}
