using CsCheck;
using Tagend.Pages.Parts;
using Xunit;

namespace Tagend.Tests.Pages;

public sealed class LabelSpreadTests
{
    public static TheoryData<float[], float[], float[]?> Lines => new()
    {
        { [], [], [] },
        { [20, 50, 80], [20, 20, 20], [20, 50, 80] },
        { [50, 50], [20, 20], [40, 60] },
        { [0, 100], [20, 20], [10, 90] },
        { [2, 4, 90], [20, 20, 20], [10, 30, 90] },
        { [10, 50], [60, 60], null },
    };

    [Theory]
    [MemberData(nameof(Lines))]
    public void Centers_WithinAHundredPoints_StandApart(float[] places, float[] widths, float[]? expected) =>
        Assert.Equal(expected, LabelSpread.Spread(places, widths, 100));

    [Fact]
    public void Centers_OfAnyLabels_NeitherOverlapNorLeaveTheLine() =>
        Gen.Select(Gen.Float[0, 100], Gen.Float[1, 20]).Array[1, 12].Sample(
            labels =>
            {
                var places = labels.Select(l => l.Item1).Order().ToArray();
                var widths = labels.Select(l => l.Item2).ToArray();
                var centers = LabelSpread.Spread(places, widths, 100);
                Assert.Equal(widths.Sum() > 100, centers is null);
                for (var i = 0; i < (centers?.Length ?? 0); i++)
                {
                    var before = i == 0 ? 0 : centers![i - 1] + (widths[i - 1] / 2);
                    Assert.True(centers![i] - (widths[i] / 2) >= before - 0.01f);
                    Assert.True(centers[i] + (widths[i] / 2) <= 100.01f);
                }
            },
            seed: "0000KOIPpN33",
            iter: 2000);
}
