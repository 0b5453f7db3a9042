using Tagend.Fits;
using Tagend.Measures;
using Tagend.Tests.Specs;
using Xunit;

namespace Tagend.Tests.Fits;

/// <summary>Each limit of the fit, at it and just past it, on builds without an error of their own.</summary>
public class FitLimitTests
{
    private static readonly Length LaidUp = Length.FromInches(60);

    [Theory]
    [InlineData(1, false)]
    [InlineData(2, true)]
    public void Of_FewBuilds_HasAResultFromTwoOn(int builds, bool isFitted) =>
        Assert.Equal(isFitted, Fit([.. Enumerable.Repeat(45.0, builds)]).Fit is not null);

    [Fact]
    public void Of_OneBuildWithoutTwistAmongOthers_HasAResult() => Assert.NotNull(Fit([0, 45, 45]).Fit);

    [Fact]
    public void Of_NothingToFit_NamesNoBuildAsFarOff() => Assert.DoesNotContain(Fit([0, 0]).Points, p => p.IsOutlier);

    [Theory]
    [InlineData(9, 0.2, false)] // one build short
    [InlineData(10, 0.2, true)]
    [InlineData(10, 0.101, true)]
    [InlineData(10, 0.099, false)] // turns per inch that differ by less than a tenth
    public void Of_BuildsAndTwist_TellSettleFromTakeUp(int builds, double spread, bool isTold)
    {
        // Half of an even number of builds above and half below by the same share: that share is their standard deviation.
        var fit = Fit([.. Enumerable.Range(0, builds).Select(i => 45 * (i % 2 == 0 ? 1 + spread : 1 - spread))]).Fit!;
        Assert.Equal(isTold, fit.IsSettleFitted);
        Assert.Equal(SimulatedLog.PerTurn, fit.PerTurn.Inches, 1e-6);
    }

    [Theory]
    [InlineData(-0.001, false)] // strands do not get shorter by settling
    [InlineData(0.001, true)]
    [InlineData(0.049, true)]
    [InlineData(0.051, false)] // more than materials.toml takes
    public void Of_SettleThatMakesNoSense_IsNotFitted(double settle, bool isFitted)
    {
        var builds = Enumerable.Range(1, 12).Select(i => Build(i, i % 2 == 0 ? 30 : 60) with
        {
            Measured = (LaidUp - (Length.FromInches(SimulatedLog.PerTurn) * (i % 2 == 0 ? 30 : 60))) * (1 + settle),
        });
        var fit = TakeUpFit.Of([.. builds], SimulatedLog.Settle).Fit!;
        Assert.Equal((isFitted, isFitted ? settle : SimulatedLog.Settle), (fit.IsSettleFitted, Math.Round(fit.Settle, 6)));
    }

    [Theory]
    [InlineData(4, false)]
    [InlineData(5, true)]
    public void Of_OneBuildFarOff_IsNamedFromFiveBuildsOn(int builds, bool isNamed)
    {
        var points = Enumerable.Range(1, builds).Select(i => Build(i, 45, i == 2 ? 1 : 0)).ToList();
        Assert.Equal(isNamed ? [2L] : [], Named(points));
    }

    [Theory]
    [InlineData(0.07, true)]
    [InlineData(0.03, false)] // within the piece's tolerance of the others
    public void Of_BuildThatBendsTheFitToItself_IsHeldToTheFitOfTheOthers(double error, bool isNamed)
    {
        // Its leverage is 90² / (5 × 30² + 90²) = 0.64, so that its own residual is 0.36 of the error (Cook and Weisberg 1982, deleted residuals).
        List<BuildPoint> points = [.. Enumerable.Range(1, 5).Select(i => Build(i, 30)), Build(6, 90, error)];
        Assert.Equal(isNamed ? [6L] : [], Named(points));
    }

    [Fact]
    public void All_SeveralMaterials_AreInOrderOfNameAndStrandsWithTheirOwnSettle()
    {
        var catalog = SpecFixture.WithMaterial("hmpe-0145", m => m with { Settle = 0.002 });
        var builds = new[] { ("polyester-0180", 14), ("hmpe-0145", 28), ("hmpe-0145", 24), ("unknown", 20) }
            .SelectMany((g, i) => new[] { Build((2 * i) + 1, 45), Build((2 * i) + 2, 45) }.Select(b => b with { Material = g.Item1, Strands = g.Item2 }));
        var fits = TakeUpFit.All(builds, catalog);
        Assert.Equal([("hmpe-0145", 24), ("hmpe-0145", 28), ("polyester-0180", 14), ("unknown", 20)], fits.Select(f => (f.Material, f.Strands)));
        Assert.Equal((0.002, 0.0), (fits[0].Fit!.Settle, fits[3].Fit!.Settle));
    }

    private static BuildPoint Build(int number, double turns, double error = 0) => SimulatedLog.Point(number, LaidUp, turns, error);

    private static TakeUpFit Fit(double[] turns) => TakeUpFit.Of([.. turns.Select((t, i) => Build(i + 1, t))], SimulatedLog.Settle);

    private static IEnumerable<long> Named(List<BuildPoint> builds) =>
        TakeUpFit.Of(builds, SimulatedLog.Settle).Points.Where(p => p.IsOutlier).Select(p => p.Build.Number);
}
