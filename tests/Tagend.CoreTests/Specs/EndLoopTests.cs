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

    /// <summary>The same taut line with thread between pin and strand and between the legs: by the convex hull again.</summary>
    [Theory]
    [InlineData(0.75, 0.0794, 0.021)]
    [InlineData(1, 0.1065, 0.025)]
    public void Closing_ServedLoop_IsTautPathAroundThePinAndItsThread(double loopInches, double bundleInches, double threadInches)
    {
        var halfLeg = bundleInches / Math.Sqrt(2) / 2;
        var (radius, bare, toPinAxis) = (0.125 + threadInches + halfLeg, 0.125 + halfLeg, loopInches - 0.125);
        var circle = Enumerable.Range(0, 200_000).Select(i => i * 2 * Math.PI / 200_000)
            .Select(angle => (X: radius * Math.Cos(angle), Y: radius * Math.Sin(angle)));
        var apart = halfLeg + threadInches;
        var taut = HullPerimeter([.. circle, (toPinAxis, apart), (toPinAxis, -apart)]) - (2 * apart);
        var loop = new EndLoop(Length.FromInches(loopInches), Pin, Length.FromInches(bundleInches), Length.FromInches(threadInches));
        Assert.Equal((taut - (2 * toPinAxis) - (Math.PI * bare)) / 2, loop.Closing.Inches, 1e-6);
        Assert.Equal(taut, loop.Around.Inches, 1e-6);
    }

    [Fact]
    public void Closing_ServedOpenLoop_IsWhatTheThreadLiftsItOffThePin() => Assert.Equal(
        0.021 * Math.PI / 2,
        new EndLoop(Length.Zero, Pin, Length.FromInches(0.08), Length.FromInches(0.021)).Closing.Inches,
        1e-7);

    /// <summary>Both loops served with 0.021 in thread: each leg goes about a quarter circle of a radius one thread larger, twice.</summary>
    [Fact]
    public void Posts_OfServedLoops_StandFartherApart()
    {
        var served = SpecFixture.Build(
            SpecFixture.WithPlan("compound-string", p => p with { LoopThread = "t021" }), LengthUnit.Inch).Spec!;
        var bare = SpecFixture.Good();
        Assert.Equal(0.021 * Math.PI, (served.Posts.Outside - bare.Posts.Outside).Inches, 0.0005);
        Assert.Equal(bare.LaidUpLength, served.LaidUpLength);
        Assert.Equal(new LoopServing("t021", Length.FromInches(0.021), "black"), served.EndLoops!.Serving);
        Assert.True(served.Mass!.Value.Milligrams > bare.Mass!.Value.Milligrams);
    }

    /// <summary>By hand: two loops, each two tails' worth of thread more, wound on half of the strands around its whole way.</summary>
    [Fact]
    public void Stock_OfServedLoops_TakesTheirThread()
    {
        var served = SpecFixture.Build(
            SpecFixture.WithPlan("compound-string", p => p with { LoopThread = "t021" }), LengthUnit.Inch).Spec!;
        var way = served.EndLoops!.AtB(Pin, served.Bundle).Around.Inches;
        var wound = way / 0.021 * Math.Sqrt(Math.Pow(Math.PI * ((0.0794198 / Math.Sqrt(2)) + 0.021), 2) + (0.021 * 0.021));
        var shop = SpecFixture.Catalog.Shop;
        Length Black(BuildSpec spec) => Stock.Of(spec, shop).Single(n => n is { Name: "t021", Color: "black" }).Length;
        Assert.Equal(2 * (wound + 12) * 1.03, (Black(served) - Black(SpecFixture.Good())).Inches, 1e-3);
    }

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
