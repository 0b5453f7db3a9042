using Tagend.Fits;
using Tagend.Measures;

namespace Tagend.Tests.Fits;

/// <summary>Builds of a shop whose strings follow laid-up = finished / (1 + settle) + take-up × turns, with an error in the length.</summary>
internal static class SimulatedLog
{
    public const double PerTurn = 0.0172;
    public const double Settle = 0.0031;
    public const double Scatter = 0.02;

    /// <param name="rates">Turns an inch, one after the other.</param>
    public static List<BuildPoint> Of(int builds, int seed, params double[] rates) => Of(builds, seed, 0, rates);

    /// <param name="offset">How much longer loops are than the jig says, inches.</param>
    public static List<BuildPoint> Of(int builds, int seed, double offset, double[] rates)
    {
        var random = new Random(seed);
        return [.. Enumerable.Range(0, builds).Select(i =>
        {
            var laidUp = Length.FromInches(35 + (random.NextDouble() * 40));
            var turns = Math.Round(laidUp.Inches * rates[i % rates.Length]);
            return Point(i + 1, laidUp, turns, (offset * (1 + Settle)) + (Normal(random) * Scatter));
        })];
    }

    /// <param name="error">Of the measured length, inches.</param>
    public static BuildPoint Point(int number, Length laidUp, double turns, double error)
    {
        var finished = (laidUp - (Length.FromInches(PerTurn) * turns)) * (1 + Settle);
        return new BuildPoint
        {
            Number = number,
            Order = $"S-{number}",
            Piece = "string",
            Material = "hmpe-0145",
            Strands = 24,
            LaidUpLength = laidUp,
            Turns = turns,
            Measured = finished + Length.FromInches(error),
            Ordered = finished,
            Tolerance = Length.FromInches(0.0625),
            IsLeftOut = false,
        };
    }

    /// <summary>Box and Muller 1958.</summary>
    public static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
