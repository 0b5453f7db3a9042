using Xunit;

namespace Tagend.PaperTests;

/// <summary>Looks for the check bars of 4 in and 100 mm in a picture of a page.</summary>
internal static class CheckBars
{
    /// <param name="stretches">Dark stretches across the bars' height, so many that each bar is met.</param>
    public static void AssertAmong(IEnumerable<Dark> stretches, int dotsPerInch)
    {
        // Half a dot at either end.
        var lengths = stretches.Select(d => d.Length).Distinct().ToList();
        Assert.Contains(lengths, l => Math.Abs(l - (4.0 * dotsPerInch)) <= 1);
        Assert.Contains(lengths, l => Math.Abs(l - (100 / 25.4 * dotsPerInch)) <= 1);
    }
}
