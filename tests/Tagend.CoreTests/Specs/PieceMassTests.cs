using Tagend.Measures;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Specs;

public class PieceMassTests
{
    [Fact]
    public void Mass_FullString_IsWhatAHandCalculationSays()
    {
        // Strands: 60.79 in is 1.544066 m, of 24 × 72.3 tex 2.6793 g. Servings over 0.07942 in:
        // 16 1/2 in of t021 take 785.71 wraps of 0.316176 in: 248.42 in, 6.3099 m of 152 tex, 0.9591 g;
        // 4 3/4 in of t019 take 250 wraps of 0.309778 in: 77.44 in, 1.9671 m of 124 tex, 0.2439 g.
        var spec = SpecFixture.Good();
        Assert.Equal(2.6793 + 0.9591 + 0.2439, spec.Mass!.Value.Grams, 0.002);
        Assert.Equal(59.91, spec.Mass!.Value.Grains, 0.03); // 1 gr = 64.79891 mg: NIST SP 811
    }

    [Fact]
    public void ArrowShare_AnyString_IsAThird()
    {
        // Hickman and Klopsteg, in Archery: The Technical Side, 1947.
        Assert.Equal(Mass.FromMilligrams(1_300), PieceMass.ArrowShare(Mass.FromMilligrams(3_900)));
    }
}
