using Tagend.Measures;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Specs;

public class StrengthTests
{
    [Fact]
    public void Of_NaglersTests_BreaksWhereFordsAveragesSay()
    {
        // Archery: The Technical Side, 1947 (Nagler's tests, Ford's averages): 17.7 strands of 14.4 lb thread
        // broke at 168.4 lb, so a string carries 0.66 of its strands' sum.
        Assert.Equal(0.66, 168.4 / (17.7 * 14.4), 0.005);
        Assert.Equal(0.66, SpecFixture.Catalog.Shop.TerminationEfficiency);
    }

    [Theory]
    [InlineData(50, 12.5, 16)]
    [InlineData(60, 20, 12)]
    public void IsBelowFloor_StrandsOfTheRule_JustCarryTheFloor(double drawWeight, double strandStrength, int strands)
    {
        // The Traditional Bowyer's Bible: strands = 4 × draw weight / strand strength.
        Assert.Equal(strands, 4 * drawWeight / strandStrength);
        var weight = Force.FromPounds(drawWeight);
        Assert.False(Strength.Of(strands, Force.FromPounds(strandStrength), 1, weight).IsBelowFloor);
        Assert.True(Strength.Of(strands - 1, Force.FromPounds(strandStrength), 1, weight).IsBelowFloor);
    }

    [Fact]
    public void IsBelowFloor_NoDrawWeight_IsFalse() =>
        Assert.False(Strength.Of(2, Force.FromPounds(1), 0.66, null).IsBelowFloor);
}
