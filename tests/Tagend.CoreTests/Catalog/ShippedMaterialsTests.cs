using Tagend.Catalog;
using Tagend.Tests.Specs;
using Xunit;

namespace Tagend.Tests.Catalog;

/// <summary>
/// The demo shop's materials and threads are what their comments say: computed from handbook densities. The shipped ones have the
/// same strengths, and nothing that only a shop's spools tell.
/// </summary>
public class ShippedMaterialsTests
{
    private const double Fill = 0.70; // an assumption, said in materials.toml

    [Theory]
    [InlineData("hmpe-0145", 0.97)] // HMPE: textile handbooks
    [InlineData("hmpe-0180", 0.97)]
    [InlineData("hmpe-lcp-0145", 1 / ((0.8 / 0.97) + (0.2 / 1.40)))] // 80 % HMPE, 20 % LCP by mass
    [InlineData("polyester-0180", 1.38)] // polyester: textile handbooks
    public void LinearDensity_EveryMaterial_IsItsFibresSectionTimesDensity(string name, double density)
    {
        var material = SpecFixture.Catalog.Materials[name];
        Assert.Equal(density, material.Density!.Value, 0.0006); // three digits are shipped
        Assert.Equal(Tex(material.Diameter.Millimeters, material.Density.Value), material.LinearDensity!.Value, 0.051);
    }

    [Theory]
    [InlineData("t017", 0.97)]
    [InlineData("t019", 0.97)]
    [InlineData("t021", 0.97)]
    [InlineData("t025", 0.97)]
    [InlineData("t030", 1.38)]
    public void LinearDensity_EveryThread_IsItsFibresSectionTimesDensity(string name, double density)
    {
        var thread = SpecFixture.Catalog.Threads[name];
        Assert.Equal(Tex(thread.Diameter.Millimeters, density), thread.LinearDensity!.Value, 0.51);
    }

    [Fact]
    public void Strength_EveryMaterial_IsLinearDensityTimesTenacity()
    {
        // Low handbook values, said in materials.toml: HMPE 2.7, HMPE/LCP 2.5, polyester 0.8 N/tex.
        double Tenacity(string name) => name.StartsWith("polyester", StringComparison.Ordinal) ? 0.8
            : name.StartsWith("hmpe-lcp", StringComparison.Ordinal) ? 2.5 : 2.7;
        Assert.All(SpecFixture.Catalog.Materials.Values, m =>
            Assert.Equal(m.LinearDensity!.Value * Tenacity(m.Name) / 4.4482216, m.Strength.Pounds, 0.7));
    }

    [Fact]
    public void Shipped_MaterialsAndThreads_SayNothingThatOnlySpoolsTell()
    {
        var shipped = CatalogReader.Read(TestFiles.Templates, [])!;
        Assert.All(shipped.Materials.Values, m =>
        {
            Assert.Equal((null, null, null, null), (m.Spool, m.LinearDensity, m.Density, m.Modulus));
            Assert.Equal(SpecFixture.Catalog.Materials[m.Name].Strength, m.Strength);
            Assert.Equal(SpecFixture.Catalog.Materials[m.Name].Diameter, m.Diameter);
        });
        Assert.All(shipped.Threads.Values, t => Assert.Equal((null, null), (t.Spool, t.LinearDensity)));
    }

    /// <summary>g/km of a round strand: mm² × g/cm³ is g/m.</summary>
    private static double Tex(double diameterMillimeters, double density) =>
        Fill * density * Math.PI / 4 * diameterMillimeters * diameterMillimeters * 1000;
}
