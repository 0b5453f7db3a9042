using MathNet.Numerics.Integration;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Specs;

/// <summary>Source: Hearle, Grosberg and Backer, Structural Mechanics of Fibers, Yarns, and Fabrics, 1969.</summary>
public class HelixTests
{
    public static TheoryData<double> Angles => [.. Enumerable.Range(0, 41).Select(a => (double)a)];

    [Theory]
    [MemberData(nameof(Angles))]
    public void Contraction_AnyAngle_IsMeanLengthOfStrandsOverTheSection(double degrees)
    {
        // On the unit section, strands at radius r run at an angle θ with tan θ = r tan α and are sec θ long for each
        // unit of the axis. A ring 2r dr holds strands in proportion to its area times cos θ, for they cross it
        // aslant. The mean length, integrated by Gauss-Legendre of a general-purpose library:
        var tangent = Math.Tan(degrees * Math.PI / 180);
        double Cosine(double r) => 1 / Math.Sqrt(1 + Math.Pow(r * tangent, 2));
        var strands = GaussLegendreRule.Integrate(r => 2 * r * Cosine(r), 0, 1, 64);
        var lengths = GaussLegendreRule.Integrate(r => 2 * r, 0, 1, 64);

        Assert.Equal(lengths / strands, Helix.Contraction(degrees * Math.PI / 180), 1e-12);
    }

    [Theory]
    [MemberData(nameof(Angles))]
    public void Contraction_AnyAngle_LosesTheRetractionOfTheBook(double degrees)
    {
        // Retraction, the share of the untwisted length that twisting takes up: tan²(α/2), Hearle, Grosberg and Backer 1969.
        var alpha = degrees * Math.PI / 180;
        Assert.Equal(Math.Pow(Math.Tan(alpha / 2), 2), 1 - (1 / Helix.Contraction(alpha)), 1e-12);
    }

    [Fact]
    public void TakeUp_24StrandsOf145_Is116TenThousandthsATurn()
    {
        var bundle = Bundle.DiameterOf(Length.FromInches(0.0145), 24, StrandMaterial.AssumedPacking);
        var takeUp = Helix.TakeUp(bundle, 45, Length.FromInches(60));
        Assert.Equal(0.0116, takeUp.Inches / 45, 0.00005);
    }

    [Fact]
    public void TakeUp_28StrandsOf18_Is207TenThousandthsATurn()
    {
        var bundle = Bundle.DiameterOf(Length.FromInches(0.018), 28, StrandMaterial.AssumedPacking);
        var takeUp = Helix.TakeUp(bundle, 45, Length.FromInches(60));
        Assert.Equal(0.0207, takeUp.Inches / 45, 0.00005);
    }

    [Fact]
    public void TakeUp_NoTurns_IsZero() =>
        Assert.Equal(Length.Zero, Helix.TakeUp(Length.FromInches(0.08), 0, Length.FromInches(60)));
}
