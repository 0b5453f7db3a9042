using Tagend.Measures;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Specs;

public class StretchTests
{
    [Theory]
    [InlineData(72.3, 0.97, 0.0745)] // HMPE
    [InlineData(100, 1.40, 0.0714)] // LCP
    [InlineData(158.6, 1.38, 0.1149)] // polyester
    public void FibreSection_HandbookDensity_IsWhatAHandCalculationSays(double tex, double density, double squareMillimeters) =>
        // Densities: textile handbooks. 1 km of T tex weighs T g and fills T/ρ cm³: over its 100,000 cm, in mm².
        Assert.Equal(squareMillimeters, Stretch.FibreSection(tex, density), 0.00005);

    [Fact]
    public void ReadingUnder_300Pounds_IsHookesLaw()
    {
        // By hand: 200 lbf is 889.64 N over 24 × 0.074536 = 1.78887 mm² is 497.32 N/mm²; over 100,000 N/mm² (100 GPa)
        // that is 0.0049732 of 60 in: 0.29839 in.
        var reading = Stretch.ReadingUnder(Force.FromPounds(300), Length.FromInches(60), 24, 100, 72.3, 0.97);
        Assert.Equal(60.29839, reading!.Value.Inches, 0.00001);
    }

    [Fact]
    public void ReadingUnder_MeasuringLoad_IsFinishedLength() => // 100 lbf: AMO Standards FP-3, 2000
        Assert.Equal(
            Length.FromInches(60), Stretch.ReadingUnder(Force.FromPounds(100), Length.FromInches(60), 24, 100, 72.3, 0.97));

    [Theory]
    [InlineData(1, 2, 1, 1, 0.5)] // twice the strands
    [InlineData(1, 1, 2, 1, 0.5)] // twice as stiff
    [InlineData(1, 1, 1, 2, 0.5)] // twice the section
    [InlineData(2, 1, 1, 1, 2)] // twice the length
    public void ReadingUnder_OneTimesMore_ElongatesInProportion(int length, int strands, int modulus, int section, double elongation)
    {
        var load = Force.FromPounds(250);
        var plain = Stretch.ReadingUnder(load, Length.FromInches(40), 16, 50, 80, 1.2)!.Value - Length.FromInches(40);
        var scaled = Stretch.ReadingUnder(load, Length.FromInches(40 * length), 16 * strands, 50 * modulus, 80 * section, 1.2)!.Value
            - Length.FromInches(40 * length);
        Assert.Equal(elongation, scaled / plain, 1e-6);
    }

    [Theory]
    [InlineData(null, 72.3, 0.97)]
    [InlineData(100.0, null, 0.97)]
    [InlineData(100.0, 72.3, null)]
    public void ReadingUnder_AValueNotGiven_IsNotTold(double? modulus, double? linearDensity, double? density) => Assert.Null(
        Stretch.ReadingUnder(Force.FromPounds(300), Length.FromInches(60), 24, modulus, linearDensity, density));
}
