using CsCheck;
using Tagend.Measures;
using Xunit;

namespace Tagend.Tests.Measures;

/// <summary>NIST SP 811's factors, against a reference units library over random values.</summary>
public class UnitFactorsTests
{
    private const string Seed = "0000factors1";

    [Fact]
    public void Force_RandomPounds_AgreesWithUnitsNet() => Gen.Double[0, 2_000].Sample(
        pounds => Assert.Equal(UnitsNet.Force.FromPoundsForce(pounds).Newtons, Force.FromPounds(pounds).Newtons, 1e-6),
        iter: 2_000,
        seed: Seed);

    [Fact]
    public void Force_RandomNewtons_AgreesWithUnitsNet() => Gen.Double[0, 9_000].Sample(
        newtons => Assert.Equal(UnitsNet.Force.FromNewtons(newtons).PoundsForce, Force.FromNewtons(newtons).Pounds, 1e-6),
        iter: 2_000,
        seed: Seed);

    [Fact]
    public void Mass_RandomGrams_AgreesWithUnitsNet() => Gen.Double[0, 50].Sample(
        grams => Assert.Equal(UnitsNet.Mass.FromGrams(grams).Grains, Mass.FromGrams(grams).Grains, 0.008), // held to 1 mg, 0.0154 gr
        iter: 2_000,
        seed: Seed);

    [Fact]
    public void Length_RandomInches_AgreesWithUnitsNet() => Gen.Double[0, 400].Sample(
        inches => Assert.Equal(UnitsNet.Length.FromInches(inches).Millimeters, Length.FromInches(inches).Millimeters, 1e-6),
        iter: 2_000,
        seed: Seed);

    [Fact]
    public void Grain_Exactly_Is6479891HundredNanograms() => // NIST SP 811, appendix B.8: 64.79891 mg
        Assert.Equal(6_479_891 / 1e5, Mass.FromMilligrams(1_000_000).Milligrams / Mass.FromMilligrams(1_000_000).Grains, 1e-9);
}
