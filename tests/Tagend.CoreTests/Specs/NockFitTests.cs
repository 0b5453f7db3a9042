using CsCheck;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Specs;

public class NockFitTests
{
    [Fact]
    public void Of_ServingOverBundle_LeavesTheRestOfTheGroove()
    {
        var fit = NockFit.Of(Length.FromInches(0.122), "t019", Length.FromInches(0.019), Length.FromInches(0.0794));
        Assert.Equal(Length.FromInches(0.1174), fit.Diameter);
        Assert.Equal(Length.FromInches(0.0046), fit.Clearance);
    }

    [Fact]
    public void Best_AnyThreads_IsNearestOfAll() => Gen
        .Select(Gen.Int[60, 160], Gen.Int[-5, 8], Gen.Int[40, 110], Gen.Int[10, 40].Array[1, 8])
        .Sample(
            (groove, wanted, bundle, threads) =>
            {
                var onHand = threads.Select((t, i) => new ServingThread($"t{i}", "", Thousandths(t), 100, Spool: null)).ToList();
                var best = NockFit.Best(Thousandths(groove), Thousandths(wanted), Thousandths(bundle), onHand);
                var least = threads.Min(t => Math.Abs(groove - bundle - (2 * t) - wanted)); // in whole thousandths, by hand
                Assert.Equal(Thousandths(least), Length.Abs(
                    Thousandths(groove) - Thousandths(bundle) - (best.Diameter * 2) - Thousandths(wanted)));
            },
            iter: 2_000,
            seed: "0000nockFit1");

    [Fact]
    public void Best_NoThreads_IsAFaultOfTheCaller() =>
        Assert.Throws<ArgumentException>(() => NockFit.Best(Thousandths(120), Thousandths(2), Thousandths(80), []));

    [Fact]
    public void Build_NockGrooveWithoutThread_TakesTheNearestThreadOnHand()
    {
        var spec = SpecFixture.Good(("nock_groove", "0.118 in"), ("center_serving", "26 1/4 in..31 in"));
        Assert.Equal("t019", spec.Servings.Single(s => s.Role == ServingRole.Center).Thread); // leaves 0.0006, wanted 0.002; t017 leaves 0.0046, t021 is 0.0034 too thick
    }

    [Theory]
    [InlineData("0.116 in", "0.0014 in tighter than the groove of 0.1160 in: t017 is the nearest thread on hand")]
    [InlineData("0.1275 in", "0.0101 in looser than the groove of 0.1275 in: t025 is the nearest thread on hand")]
    public void Build_NockTighterThanNothingOrTooLoose_IsWarnedOf(string groove, string warning)
    {
        // Over 24 strands of 0.0145 in at 0.80 packing, 0.0794 in thick, t019 makes 0.1174 in.
        var (spec, problems) = SpecFixture.Build(("nock_groove", groove));
        Assert.NotNull(spec);
        Assert.EndsWith(warning, Assert.Single(problems).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0.1175 in")]
    [InlineData("0.1272 in")]
    public void Build_NockThatFits_IsNotWarnedOf(string groove) => SpecFixture.Good(("nock_groove", groove));

    private static Length Thousandths(int number) => Length.FromInches(number / 1000.0);
}
