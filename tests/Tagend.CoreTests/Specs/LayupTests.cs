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
    public void Of_OddStrands_EndInHalfALoopAtTheOtherPost()
    {
        var layup = Layup.Of([("black", 13), ("red", 10), ("white", 1)], Length.FromInches(5));
        Assert.Equal(["6 1/2", "5", "1/2"], layup.Colors.Select(c => c.LoopCount()));
        Assert.Equal(
            [(PieceEnd.A, PieceEnd.B), (PieceEnd.B, PieceEnd.B), (PieceEnd.A, PieceEnd.B)], layup.Colors.Select(c => (c.Post, c.EndPost)));
        Assert.Equal([new EndTag(PieceEnd.A, ["black", "white"]), new EndTag(PieceEnd.B, ["black", "red", "white"])], layup.EndTags());
    }

    [Theory]
    [InlineData("12 black|12 red", 12, 12)]
    [InlineData("12 black|1 black, 11 red", 13, 11)]
    [InlineData("1 black, 11 red|12 red", 1, 23)]
    public void Halves_OfTwoColors_AreTheFirstHalfThatIsLaidAndTheSecond(string expected, int black, int red)
    {
        var (first, second) = Layup.Of([("black", black), ("red", red)], Length.Zero).Halves();
        Assert.Equal(expected, $"{first.Words()}|{second.Words()}");
    }

    [Fact]
    public void Build_ColorsOfOddStrands_AreHalfLoopsOfStockToo()
    {
        var spec = SpecFixture.Good(("colors", "black:13 red:11"));
        var (loop, shop) = ((2 * spec.Posts.Centers.Inches) + Math.PI, SpecFixture.Catalog.Shop);
        Assert.Equal(
            [((6.5 * loop) + 10) * 1.03, ((5.5 * loop) + 10) * 1.03],
            Stock.Of(spec, shop).Where(n => n.Kind == StockKind.Strand).Select(n => n.Length.Inches),
            (a, b) => Math.Abs(a - b) < 1e-6);
        Assert.Equal(11, SpecFixture.Good(("strands", "22"), ("colors", "black red")).Layup.Colors[0].Strands);
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
