using Tagend.Measures;
using Xunit;

namespace Tagend.Tests.Measures;

public class ForceReaderTests
{
    [Theory]
    [InlineData("70")]
    [InlineData("70 lb")]
    [InlineData("70 lbs")]
    [InlineData("70 lbf")]
    [InlineData("70#")]
    [InlineData("70.0 LB")]
    [InlineData("70,0")]
    [InlineData("70 lb.")]
    [InlineData("70 lbs.")]
    [InlineData("70 pound")]
    [InlineData("70 pounds")]
    public void TryRead_Pounds_AgreesWithUnitsNet(string text)
    {
        Assert.True(ForceReader.TryRead(text, out var force));
        Assert.Equal(UnitsNet.Force.FromPoundsForce(70).Micronewtons, force.Micronewtons, 1.0);

        // NIST SP 811, appendix B.8: 1 lbf = 4.448 221 615 2605 N.
        Assert.Equal(311_375_513, force.Micronewtons);
    }

    [Theory]
    [InlineData("311 N")]
    [InlineData("311n")]
    [InlineData("311 newton")]
    [InlineData("311 newtons")]
    public void TryRead_Newtons_IsExact(string text)
    {
        Assert.True(ForceReader.TryRead(text, out var force));
        Assert.Equal(311_000_000, force.Micronewtons);
    }

    [Theory]
    [InlineData("")]
    [InlineData("lb")]
    [InlineData("-70")]
    [InlineData("70 kg")]
    [InlineData("7O")]
    [InlineData("60-70")]
    [InlineData("70 lb 2")]
    [InlineData("1,000")]
    public void TryRead_AnythingElse_IsRefused(string text) => Assert.False(ForceReader.TryRead(text, out _));
}
