using Tagend.Measures;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Specs;

public class EndLoopTests
{
    private static readonly Length Pin = Length.FromInches(0.25);

    [Theory]
    [InlineData(0.75, 0.0794)]
    [InlineData(1, 0.0794)]
    [InlineData(3, 0.0806)]
    [InlineData(1, 0.1065)]
    public void Closing_AnyLoop_IsTautPathLessOpenPath(double loopInches, double bundleInches)
    {
        // Source: a taut line around the pin is the convex hull of the leg's circle and the two legs at the closing
        // point; its perimeter is taken numerically from 200,000 points.
        var halfLeg = bundleInches / Math.Sqrt(2) / 2;
        var radius = 0.125 + halfLeg;
        var toPinAxis = loopInches - 0.125;
        var circle = Enumerable.Range(0, 200_000).Select(i => i * 2 * Math.PI / 200_000)
            .Select(angle => (X: radius * Math.Cos(angle), Y: radius * Math.Sin(angle)));
        var taut = HullPerimeter([.. circle, (toPinAxis, halfLeg), (toPinAxis, -halfLeg)]) - (2 * halfLeg);
        var open = (2 * toPinAxis) + (Math.PI * radius);

        var closing = new EndLoop(Length.FromInches(loopInches), Pin, Length.FromInches(bundleInches)).Closing;
        Assert.Equal((taut - open) / 2, closing.Inches, 1e-6);
        Assert.True(closing > Length.Zero);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.25)]
    public void Closing_LoopTooShortForThePin_IsZero(double loopInches) =>
        Assert.Equal(Length.Zero, new EndLoop(Length.FromInches(loopInches), Pin, Length.FromInches(0.08)).Closing);

    private static double HullPerimeter(List<(double X, double Y)> points)
    {
        points.Sort();
        var hull = Half(points);
        points.Reverse();
        hull.AddRange(Half(points));
        return hull.Zip(hull.Skip(1).Append(hull[0])).Sum(p => Math.Sqrt(
            Math.Pow(p.First.X - p.Second.X, 2) + Math.Pow(p.First.Y - p.Second.Y, 2)));
    }

    private static List<(double X, double Y)> Half(List<(double X, double Y)> points)
    {
        var hull = new List<(double X, double Y)>();
        foreach (var p in points)
        {
            while (hull.Count > 1 && Turn(hull[^2], hull[^1], p) <= 0)
            {
                hull.RemoveAt(hull.Count - 1);
            }

            hull.Add(p);
        }

        hull.RemoveAt(hull.Count - 1);
        return hull;
    }

    private static double Turn((double X, double Y) a, (double X, double Y) b, (double X, double Y) c) =>
        ((b.X - a.X) * (c.Y - a.Y)) - ((b.Y - a.Y) * (c.X - a.X));
}
