using CsCheck;
using MathNet.Numerics.Integration;
using Tagend.Measures;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Specs;

public class ServingWorkTests
{
    [Theory]
    [InlineData(8, 0.021, 0.0794)]
    [InlineData(4.75, 0.019, 0.0794)]
    [InlineData(8, 0.030, 0.1065)]
    [InlineData(0.5, 0.017, 0.05)]
    public void Of_AnyServing_WindsAsMuchThreadAsItsHelixIsLong(double lengthInches, double threadInches, double bundleInches)
    {
        // Source: arc length of the thread's axis, a helix of one thread pitch half a thread above the bundle, integrated
        // numerically over its three coordinates' derivatives, taken as differences.
        var radius = (bundleInches + threadInches) / 2;
        var turns = lengthInches / threadInches;
        (double X, double Y, double Z) At(double angle) =>
            (radius * Math.Cos(angle), radius * Math.Sin(angle), threadInches * angle / (2 * Math.PI));
        double Speed(double angle)
        {
            const double Step = 1e-5;
            var (before, after) = (At(angle - Step), At(angle + Step));
            return Math.Sqrt(
                Math.Pow(after.X - before.X, 2) + Math.Pow(after.Y - before.Y, 2) + Math.Pow(after.Z - before.Z, 2)) / (2 * Step);
        }

        var work = ServingWork.Of(Serving(lengthInches, threadInches), Length.FromInches(bundleInches));
        Assert.Equal(SimpsonRule.IntegrateComposite(Speed, 0, turns * 2 * Math.PI, 2_000), work.Thread.Inches, 1e-5);
        Assert.Equal(turns, work.Wraps, 1e-6);
    }

    [Fact]
    public void Of_8InchesOf021Over0794_TakesWhatAHandCalculationSays()
    {
        // 8 / 0.021 = 380.95 wraps of √((π·0.1004)² + 0.021²) = 0.31612 in: 120.42 in; 0.0794 + 0.042 = 0.1214 in.
        var work = ServingWork.Of(Serving(8, 0.021), Length.FromInches(0.0794));
        Assert.Equal((380.95, 120.42), (Math.Round(work.Wraps, 2), Math.Round(work.Thread.Inches, 2)));
        Assert.Equal(Length.FromInches(0.1214), work.Diameter);
    }

    [Fact]
    public void Of_ServingTimesLonger_TakesTimesTheThread() => Gen
        .Select(Gen.Double[0.5, 12], Gen.Double[0.01, 0.05], Gen.Double[0.03, 0.2], Gen.Int[2, 5])
        .Sample(
            (length, thread, bundle, times) =>
            {
                var one = ServingWork.Of(Serving(length, thread), Length.FromInches(bundle));
                var more = ServingWork.Of(Serving(length * times, thread), Length.FromInches(bundle));
                Assert.Equal(one.Thread.Inches * times, more.Thread.Inches, 1e-4);
                Assert.Equal(one.Wraps * times, more.Wraps, 1e-4);
                Assert.Equal(one.Diameter, more.Diameter);
            },
            iter: 500,
            seed: "0000servinW1");

    private static Serving Serving(double length, double thread) => new(
        ServingRole.Other, Length.Zero, Length.FromInches(length), "t", Length.FromInches(thread), "");
}
