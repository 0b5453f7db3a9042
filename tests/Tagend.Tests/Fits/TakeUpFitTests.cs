using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearRegression;
using Tagend.Catalog;
using Tagend.Fits;
using Tagend.Measures;
using Xunit;

namespace Tagend.Tests.Fits;

public class TakeUpFitTests
{
    [Fact]
    public void Of_TwoUnknowns_IsWhatMathNetFinds()
    {
        // MathNet.Numerics 5.0: QR on the design matrix, and s² (XᵀX)⁻¹ for the variances.
        for (var seed = 1; seed <= 20; seed++)
        {
            var builds = SimulatedLog.Of(25, seed, 0.5, 0.75, 0.9);
            var x = Matrix<double>.Build.DenseOfRows(builds.Select(b => new[] { b.LaidUpLength.Inches, -b.Turns }));
            var y = Vector<double>.Build.DenseOfEnumerable(builds.Select(b => (b.Measured - b.LaidUpLength).Inches));
            var solved = MultipleRegression.QR(x, y);
            var residuals = y - (x * solved);
            var covariance = (x.Transpose() * x).Inverse() * (residuals.DotProduct(residuals) / (builds.Count - 2));
            var (s, c) = (solved[0], solved[1]);
            var u = c / (1 + s);
            // By the delta method from s and c = (1 + s)·u.
            var slopes = Vector<double>.Build.Dense([-u / (1 + s), 1 / (1 + s)]);

            var fit = TakeUpFit.Of(builds, catalogSettle: 0).Fit!;
            Assert.True(fit.IsSettleFitted);
            Assert.Equal(s, fit.Settle, 1e-9);
            Assert.Equal(u, fit.PerTurn.Inches, 1e-7);
            Assert.Equal(Math.Sqrt(covariance[0, 0]), fit.SettleError, 1e-9);
            Assert.Equal(Math.Sqrt(slopes * covariance * slopes), fit.PerTurnError.Inches, 1e-7);
            Assert.Equal((slopes * covariance)[0], fit.Variance.Both, 1e-10);
            Assert.Equal(Math.Sqrt(residuals.DotProduct(residuals) / (builds.Count - 2)), fit.Scatter.Inches, 1e-7);
        }
    }

    [Theory]
    [InlineData(0.285, 0.75)] // posts half an inch thicker than the shop says
    [InlineData(-0.285, 0.75)]
    [InlineData(0.4, 0.5, 0.75, 0.9)]
    public void Of_JigThatIsOff_IsWhatMathNetFinds(double offset, params double[] rates)
    {
        for (var seed = 1; seed <= 20; seed++)
        {
            var builds = SimulatedLog.Of(25, seed, offset, rates);
            var isSettleFitted = rates.Length > 1;
            var known = isSettleFitted ? 0 : SimulatedLog.Settle;
            var x = Matrix<double>.Build.DenseOfRows(builds.Select(b => isSettleFitted ? new[] { b.LaidUpLength.Inches, -b.Turns, 1 } : [-b.Turns, 1]));
            var y = Vector<double>.Build.DenseOfEnumerable(builds.Select(b => (b.Measured - (b.LaidUpLength * (1 + known))).Inches));
            var solved = MultipleRegression.QR(x, y);
            var residuals = y - (x * solved);
            var covariance = (x.Transpose() * x).Inverse() * (residuals.DotProduct(residuals) / (builds.Count - x.ColumnCount));
            var s = isSettleFitted ? solved[0] : known;
            var (u, k) = (solved[^2] / (1 + s), solved[^1] / (1 + s));

            // By the delta method from s, c = (1 + s)·u and d = (1 + s)·k, and the laid-up length F/(1 + s) + u·T − k of a piece.
            var (finished, turns) = (60.0, 45);
            double[] bySettle = isSettleFitted ? [(-finished / ((1 + s) * (1 + s))) - (u * turns / (1 + s)) + (k / (1 + s))] : [];
            var slopes = Vector<double>.Build.DenseOfEnumerable([.. bySettle, turns / (1 + s), -1 / (1 + s)]);

            var fit = TakeUpFit.Of(builds, SimulatedLog.Settle).Fit!;
            Assert.Equal(isSettleFitted, fit.IsSettleFitted);
            Assert.Equal((s, u, k), (fit.Settle, fit.PerTurn.Inches, fit.Offset.Inches), new Near(1e-7));
            Assert.Equal(Math.Sqrt(slopes * covariance * slopes), fit.For(turns, Length.FromInches(finished)).Error.Inches, 1e-7);
            double[] slopesOfK = isSettleFitted ? [-k / (1 + s), 0, 1 / (1 + s)] : [0, 1 / (1 + s)];
            var ofK = Vector<double>.Build.Dense(slopesOfK);
            Assert.Equal(Math.Sqrt(ofK * covariance * ofK), fit.OffsetError.Inches, 1e-7);
            Assert.Equal((u * turns) - k, fit.For(turns, Length.FromInches(finished)).Amount.Inches, 1e-6);
        }
    }

    private sealed class Near(double tolerance) : IEqualityComparer<(double, double, double)>
    {
        public bool Equals((double, double, double) a, (double, double, double) b) =>
            Math.Abs(a.Item1 - b.Item1) <= tolerance && Math.Abs(a.Item2 - b.Item2) <= tolerance && Math.Abs(a.Item3 - b.Item3) <= tolerance;

        public int GetHashCode((double, double, double) numbers) => 0;
    }

    [Fact]
    public void Of_JigThatIsOff_HoldsItWithinTwoStandardErrorsAsOftenAsItSays()
    {
        const int Logs = 1500;
        var within = Enumerable.Range(1, Logs).Count(seed =>
        {
            var fit = TakeUpFit.Of(SimulatedLog.Of(12, seed, 0.4, [0.75]), SimulatedLog.Settle).Fit!;
            return Math.Abs(fit.Offset.Inches - 0.4) <= 2 * fit.OffsetError.Inches;
        });
        var expected = 1 - (2 * MathNet.Numerics.Distributions.StudentT.CDF(0, 1, 10, -2));
        var allowed = 3 * Math.Sqrt(expected * (1 - expected) / Logs);
        Assert.InRange(within / (double)Logs, expected - allowed, expected + allowed);
    }

    [Theory]
    [InlineData(7, 0.4, false)] // one build short
    [InlineData(8, 0.4, true)]
    [InlineData(8, 0, false)]
    [InlineData(8, 1.55, true)]
    [InlineData(8, 1.8, false)] // no post does that
    public void Of_BuildsAndOffset_AreEnoughAndMakeSense(int builds, double offset, bool isFound) =>
        Assert.Equal(isFound, TakeUpFit.Of(SimulatedLog.Of(builds, 11, offset, [0.75]), SimulatedLog.Settle).Fit!.Offset != Length.Zero);

    [Fact]
    public void Of_LengthsThatHardlyDiffer_HasTheOffsetInTheTakeUp()
    {
        var builds = SimulatedLog.Of(60, 4, 0.4, [0.75]).Where(b => b.LaidUpLength.Inches is > 50 and < 56).ToList();
        Assert.InRange(builds.Count, 8, 30);
        var fit = TakeUpFit.Of(builds, SimulatedLog.Settle).Fit!;
        Assert.Equal(Length.Zero, fit.Offset);
        Assert.All(builds, b => Assert.Equal(b.Measured.Inches, fit.FinishedLength(b.Turns, b.LaidUpLength).Inches, 0.1));
    }

    [Fact]
    public void Of_JigThatIsRight_FindsAnOffsetInHardlyAnyLog() => Assert.InRange(
        Enumerable.Range(1, 500).Count(seed => TakeUpFit.Of(SimulatedLog.Of(12, seed, 0.75), SimulatedLog.Settle).Fit!.Offset != Length.Zero), 0, 15);

    [Fact]
    public void Serves_TakeUpLessThanTheOffset_DoesNot()
    {
        var fit = TakeUpFit.Of(SimulatedLog.Of(20, 2, 0.4, [0.75]), SimulatedLog.Settle).Fit!;
        var rate = 45 / fit.LaidUpLength(45, Length.FromInches(60)).Inches;
        Assert.True(fit.Serves(45, Length.FromInches(60), Length.FromInches(0.0625)));
        Assert.False((fit with { Offset = fit.PerTurn * 45.1 }).Serves(45, Length.FromInches(60), Length.FromInches(0.0625)));
        Assert.InRange(rate, fit.LeastRate, fit.MostRate);
    }

    [Fact]
    public void Of_OneUnknown_IsWhatMathNetFinds()
    {
        var builds = SimulatedLog.Of(8, 7, 0.75);
        var turns = builds.Select(b => b.Turns).ToArray();
        var taken = builds.Select(b => (b.LaidUpLength - (b.Measured * (1 / (1 + SimulatedLog.Settle)))).Inches).ToArray();
        var fit = TakeUpFit.Of(builds, SimulatedLog.Settle).Fit!;
        Assert.False(fit.IsSettleFitted);
        Assert.Equal(SimpleRegression.FitThroughOrigin(turns, taken), fit.PerTurn.Inches, 1e-7);
    }

    [Theory]
    [InlineData(30, 0.5, 0.75, 0.9)]
    [InlineData(30, 0.75)]
    [InlineData(12, 0.5, 0.75, 0.9)]
    public void Of_ManyLogsOfAKnownTruth_HoldsItWithinTwoStandardErrorsAsOftenAsItSays(int builds, params double[] rates)
    {
        const int Logs = 1500;
        var freedom = builds - (rates.Length > 1 ? 2 : 1);
        var finished = Length.FromInches(60);
        var laidUp = Length.FromInches((60 / (1 + SimulatedLog.Settle)) + (SimulatedLog.PerTurn * 45));
        var (perTurn, settle, whole) = (0, 0, 0);
        for (var seed = 1; seed <= Logs; seed++)
        {
            var fit = TakeUpFit.Of(SimulatedLog.Of(builds, seed, rates), SimulatedLog.Settle).Fit!;
            Assert.Equal(rates.Length > 1, fit.IsSettleFitted);
            perTurn += Math.Abs(fit.PerTurn.Inches - SimulatedLog.PerTurn) <= 2 * fit.PerTurnError.Inches ? 1 : 0;
            settle += Math.Abs(fit.Settle - SimulatedLog.Settle) <= 2 * fit.SettleError + 1e-12 ? 1 : 0;
            whole += Length.Abs(fit.LaidUpLength(45, finished) - laidUp) <= fit.For(45, finished).Error * 2 ? 1 : 0;
        }

        // Student's t with the residuals' degrees of freedom, from MathNet.Numerics; three standard deviations of a share of the logs.
        var expected = 1 - (2 * MathNet.Numerics.Distributions.StudentT.CDF(0, 1, freedom, -2));
        var allowed = 3 * Math.Sqrt(expected * (1 - expected) / Logs);
        Assert.InRange(perTurn / (double)Logs, expected - allowed, expected + allowed);
        Assert.InRange(whole / (double)Logs, expected - allowed, expected + allowed);
        if (rates.Length > 1)
        {
            Assert.InRange(settle / (double)Logs, expected - allowed, expected + allowed);
        }
    }

    [Fact]
    public void Of_OneTwistAndAWrongSettle_StillPredictsThatTwist()
    {
        // Settle is 0.0031 and the catalog says none: at one twist the take-up takes in what it is off.
        var fit = TakeUpFit.Of(SimulatedLog.Of(40, 3, 0.75), catalogSettle: 0).Fit!;
        var build = SimulatedLog.Point(1, Length.FromInches(50), 38, error: 0);
        Assert.Equal(build.Measured.Inches, fit.FinishedLength(38, build.LaidUpLength).Inches, 0.02);
        Assert.NotEqual(SimulatedLog.PerTurn, fit.PerTurn.Inches, 0.002);
    }

    [Fact]
    public void Of_OneBuildFarOff_NamesItAndLeavesTheChoice()
    {
        var builds = SimulatedLog.Of(9, 5, 0.75);
        builds[3] = builds[3] with { Measured = builds[3].Measured + Length.FromInches(0.3) };
        var with = TakeUpFit.Of(builds, SimulatedLog.Settle);
        Assert.Equal([4L], with.Points.Where(p => p.IsOutlier).Select(p => p.Build.Number));
        Assert.Equal(9, with.Fit!.Builds);

        builds[3] = builds[3] with { IsLeftOut = true };
        var without = TakeUpFit.Of(builds, SimulatedLog.Settle);
        Assert.Equal((8, 9), (without.Fit!.Builds, without.Points.Count));
        Assert.True(Math.Abs(without.Fit.PerTurn.Inches - SimulatedLog.PerTurn) < Math.Abs(with.Fit.PerTurn.Inches - SimulatedLog.PerTurn));
        Assert.Equal(0.3, without.Points[3].Difference.Inches, 0.06);
    }

    [Fact]
    public void Of_GoodBuilds_NamesHardlyAnyAsOutliers()
    {
        var named = Enumerable.Range(1, 300).Count(seed => TakeUpFit.Of(SimulatedLog.Of(10, seed, 0.75), SimulatedLog.Settle).Points.Any(p => p.IsOutlier));
        Assert.InRange(named, 0, 6);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Of_FewerThanTwoBuildsLeftIn_HasNoResult(int leftIn)
    {
        var builds = SimulatedLog.Of(3, 1, 0.75).Select((b, i) => b with { IsLeftOut = i >= leftIn }).ToList();
        Assert.Null(TakeUpFit.Of(builds, 0).Fit);
    }

    [Fact]
    public void Of_BuildsWithoutTwist_HasNoResult() => Assert.Null(TakeUpFit.Of(SimulatedLog.Of(6, 1, 0), 0).Fit);

    [Theory]
    [InlineData(4, 45, false)] // one build short
    [InlineData(5, 45, true)]
    [InlineData(5, 60, false)] // 0.98 turns per inch, beyond 0.75 and a quarter
    [InlineData(5, 30, false)] // 0.5 turns per inch
    [InlineData(5, 0, false)]
    public void Serves_BuildsAndTwist_AreEnoughAndNear(int builds, int turns, bool serves)
    {
        var fit = TakeUpFit.Of(SimulatedLog.Of(builds, 2, 0.75), SimulatedLog.Settle).Fit!;
        Assert.Equal(serves, fit.Serves(turns, Length.FromInches(60), Length.FromInches(0.0625)));
    }

    [Fact]
    public void Serves_ErrorBeyondTheTolerance_DoesNot()
    {
        var fit = TakeUpFit.Of(SimulatedLog.Of(5, 2, 0.75), SimulatedLog.Settle).Fit!;
        var error = fit.For(45, Length.FromInches(60)).Error;
        Assert.False(fit.Serves(45, Length.FromInches(60), error - Length.FromNanometers(1)));
        Assert.True(fit.Serves(45, Length.FromInches(60), error));
    }

    [Fact]
    public void FewestBuilds_AsDocumented_IsFive() => Assert.Equal(5, FittedTakeUp.FewestBuilds);
}
