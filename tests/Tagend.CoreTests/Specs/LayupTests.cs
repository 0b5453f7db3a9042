using CsCheck;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Specs;

public class LayupTests
{
    [Fact]
    public void EndTags_OneColor_TiesADummyTagAtB()
    {
        var layup = Layup.Of([("black", 24)], Length.FromInches(5));
        Assert.Equal(
            [new EndTag(PieceEnd.A, ["black"]), new EndTag(PieceEnd.B, [])], layup.EndTags());
        Assert.True(layup.EndTags()[1].IsDummy);
    }

    [Fact]
    public void EndTags_TwoColors_HaveOneEach()
    {
        var layup = Layup.Of([("black", 12), ("red", 12)], Length.FromInches(5));
        Assert.Equal([new EndTag(PieceEnd.A, ["black"]), new EndTag(PieceEnd.B, ["red"])], layup.EndTags());
    }

    [Fact]
    public void Loops_AnyEvenShares_AddUpAndAlternatePosts()
    {
        Gen.Int[1, 20].Select(loops => loops * 2).Array[1, 4].Sample(
            shares =>
            {
                var layup = Layup.Of(shares.Select((s, i) => ($"c{i}", s)), Length.FromInches(5));
                Assert.Equal(shares.Sum(), layup.Strands);
                Assert.Equal(layup.Strands, layup.Loops * 2);
                Assert.Equal(layup.Loops, layup.Colors.Sum(c => c.Loops));
                Assert.All(layup.Colors.Select((c, i) => (c, i)), x =>
                    Assert.Equal(x.i % 2 == 0 ? PieceEnd.A : PieceEnd.B, x.c.Post));
                Assert.Equal(layup.Colors.Count, layup.EndTags().Sum(t => t.Colors.Count));
            },
            seed: "0000KOIPe036");
    }
}
