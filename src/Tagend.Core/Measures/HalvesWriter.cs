using System.Globalization;

namespace Tagend.Measures;

/// <summary>Writes counts that go by halves, as people do: <c>6</c>, <c>6 1/2</c>, <c>1/2</c>.</summary>
public static class HalvesWriter
{
    /// <summary>Writes a number of halves.</summary>
    /// <param name="halves">0 or more.</param>
    public static string Write(int halves)
    {
        var (whole, rest) = Math.DivRem(halves, 2);
        return (whole, rest) switch
        {
            (_, 0) => whole.ToString(CultureInfo.InvariantCulture),
            (0, _) => "1/2",
            _ => FormattableString.Invariant($"{whole} 1/2"),
        };
    }
}
