using Tagend.Measures;
using Tagend.Orders;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Specs;

public class MeasurementTests
{
    [Theory]
    [InlineData(60.1875, true)] // 60 1/4 ± 1/16 in, limits included
    [InlineData(60.3125, true)]
    [InlineData(60.1874, false)]
    [InlineData(60.3126, false)]
    public void IsWithin_AtTheLimitsAndJustPast_IsSaid(double inches, bool isWithin) =>
        Assert.Equal(isWithin, Measured(inches).IsWithin(SpecFixture.Good()));

    [Fact]
    public void Pairs_OfTwinCables_AreComparedWhereBothWereMeasured()
    {
        var pair = Assert.Single(Pairs(Cable("cable 1", 39.25), Cable("cable 2", 39.3125), Cable("cable 3", null), new Build(SpecFixture.Good(), OrderSlip.Blank)));
        Assert.Equal(("cable 1", "cable 2", Length.FromInches(0.0625), true), (pair.First, pair.Second, pair.Difference, pair.IsWithin));
        Assert.False(Assert.Single(Pairs(Cable("cable 1", 39.3125), Cable("cable 2", 39.2499))).IsWithin);
    }

    [Theory]
    [InlineData(0.0625, 0.03125)]
    [InlineData(0.03125, 0.0625)]
    public void Pairs_OfTwoTolerances_AreHeldToTheLesser(double first, double second) => Assert.Equal(
        Length.FromInches(0.03125),
        Assert.Single(Pairs(Allowed(Cable("cable 1", 39.25), first), Allowed(Cable("cable 2", 39.25), second))).Tolerance);

    [Fact]
    public void Pairs_OfPiecesThatAreNone_AreNotCompared() => Assert.Empty(Pairs(
        new Build(SpecFixture.Good(), OrderSlip.Blank) { Measured = Measured(60) }, new Build(SpecFixture.Good(("piece", "spare")), OrderSlip.Blank) { Measured = Measured(61) }));

    private static IEnumerable<MeasuredPair> Pairs(params Build[] builds) =>
        MeasuredPair.Of(new BuildSet("D-101", [.. builds]), SpecFixture.Catalog.Plans);

    private static Build Cable(string name, double? inches) =>
        new(SpecFixture.Good() with { Piece = name, Kind = "twin-cam-cable", FinishedLength = Length.FromInches(39.25) }, OrderSlip.Blank)
        {
            Measured = inches is { } length ? Measured(length) : null,
        };

    private static Build Allowed(Build build, double tolerance) => build with { Spec = build.Spec with { Tolerance = Length.FromInches(tolerance) } };

    private static Measurement Measured(double inches) =>
        new(Length.FromInches(inches), 45, Force.FromPounds(300), 20, ["H88-4"], SpecFixture.Date, "AB");
}
