using CsCheck;
using MathNet.Numerics.Integration;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Specs;

public class StockTests
{
    private static readonly Shop Shop = SpecFixture.Catalog.Shop;

    [Fact]
    public void Of_TwoColors_IsLoopsAndTailsAndWaste()
    {
        // By hand: a loop is 2 × centers + π × post; 6 loops a color, two tails of 5 in, 3 % waste. Two colors need no dummy tag.
        var spec = SpecFixture.Good();
        var loop = (2 * spec.Posts.Centers.Inches) + Math.PI;
        var black = Of(spec, StockKind.Strand, "black");
        Assert.Equal(((6 * loop) + 10) * 1.03, black.Length.Inches, 1e-6);
        Assert.Equal(black.Length, Of(spec, StockKind.Strand, "red").Length);
        Assert.Equal("hmpe-0145", black.Name);
    }

    [Fact]
    public void Of_OneColor_HasOneDummyTag()
    {
        var one = Of(SpecFixture.Good(("colors", "black")), StockKind.Strand, "black").Length;
        var two = SpecFixture.Good();
        var both = Of(two, StockKind.Strand, "black").Length + Of(two, StockKind.Strand, "red").Length;
        // The second color's two tails of 5 in are saved, and a dummy tag of 12 in is added.
        Assert.Equal((12 - 10) * 1.03, (one - both).Inches, 1e-6);
    }

    [Theory]
    [InlineData(1568, 1)]
    [InlineData(1568.001, 2)]
    [InlineData(3137, 3)]
    public void Spools_OfMaterialWhoseSpoolHolds1568Meters_AreWhole(double meters, int spools)
    {
        var need = new StockNeed(StockKind.Strand, "hmpe-0145", "black", Length.FromMillimeters(meters * 1000));
        Assert.Equal(spools, Stock.Spools(need, SpecFixture.Catalog));
        Assert.Null(Stock.Spools(need with { Name = "bought elsewhere" }, SpecFixture.Catalog));
    }

    [Fact]
    public void Of_Servings_AreSummedByThreadAndColor()
    {
        var spec = SpecFixture.Good();
        var threads = Stock.Of(spec, Shop).Where(n => n.Kind == StockKind.Thread).ToList();
        Assert.Equal([("t021", "black"), ("t019", "red")], threads.Select(t => (t.Name, t.Color)));
        var wound = spec.Servings.Where(s => s.Thread == "t021").Select(s => ServingWork.Of(s, spec.Bundle.Diameter).Thread.Inches);
        Assert.Equal((wound.Sum() + 24) * 1.03, threads[0].Length.Inches, 1e-6);
    }

    [Fact]
    public void Of_AnyLayupAndWaste_IsNeverBelowWhatTheLayupUses() =>
        Gen.Select(Gen.Double[14, 130], Gen.Double[0.25, 3], Gen.Int[1, 20].Array[1, 4], Gen.Double[0, 0.2]).Sample(
            (outside, post, loops, waste) =>
            {
                var spec = Laid(outside, post, loops);
                // Way around the posts: straight to straight, and half a circle at each, integrated numerically.
                var halfCircle = GaussLegendreRule.Integrate(
                    a => Math.Sqrt(Math.Pow(post / 2 * Math.Sin(a), 2) + Math.Pow(post / 2 * Math.Cos(a), 2)), 0, Math.PI, 16);
                var around = (2 * (outside - post)) + (2 * halfCircle);
                var stock = Stock.Of(spec, Shop with { Waste = waste });
                for (var i = 0; i < loops.Length; i++)
                {
                    var used = (around * loops[i]) + (2 * spec.Layup.Tail.Inches);
                    Assert.True(stock.Single(n => n.Color == $"c{i}").Length.Inches >= used - 1e-5);
                }
            },
            seed: "0000KOIPe036");

    [Fact]
    public void Of_AsManyTimesTheLoops_ScalesBeyondTailsAndDummies() =>
        Gen.Select(Gen.Double[14, 130], Gen.Int[1, 10], Gen.Int[2, 5]).Sample(
            (outside, loops, factor) =>
            {
                double Inches(int count) => Stock.Of(Laid(outside, 1, count), Shop with { Waste = 0, DummyTag = Length.Zero })
                    .Single(n => n.Kind == StockKind.Strand).Length.Inches - (2 * Shop.Jig.Tail.Inches);
                Assert.Equal(Inches(loops) * factor, Inches(loops * factor), 1e-5);
            },
            seed: "0000KOIPe036");

    [Fact]
    public void Of_Batch_IsTheSumOfItsPiecesBySpool()
    {
        BuildSpec[] specs = [SpecFixture.Good(), SpecFixture.Good(("colors", "red")), SpecFixture.Good(("material", "hmpe-0180"))];
        var batch = BatchPull.Of(specs, Shop)!.Stock;
        var pieces = specs.SelectMany(s => Stock.Of(s, Shop)).ToList();
        Assert.Equal(batch.Count, batch.Select(n => (n.Kind, n.Name, n.Color)).Distinct().Count());
        Assert.All(batch, need => Assert.Equal(
            pieces.Where(p => (p.Kind, p.Name, p.Color) == (need.Kind, need.Name, need.Color)).Sum(p => p.Length.Nanometers),
            need.Length.Nanometers));
        Assert.Equal(
            [
                (StockKind.Strand, "hmpe-0145", "black"), (StockKind.Strand, "hmpe-0145", "red"),
                (StockKind.Strand, "hmpe-0180", "black"), (StockKind.Strand, "hmpe-0180", "red"),
                (StockKind.Thread, "t019", "red"), (StockKind.Thread, "t021", "black"),
            ],
            batch.Select(n => (n.Kind, n.Name, n.Color)));
    }

    private static StockNeed Of(BuildSpec spec, StockKind kind, string color) =>
        Stock.Of(spec, Shop).Single(n => n.Kind == kind && n.Color == color);

    private static BuildSpec Laid(double outside, double post, params int[] loops)
    {
        var spec = SpecFixture.Good();
        return spec with
        {
            Posts = spec.Posts with { Outside = Length.FromInches(outside), PostDiameter = Length.FromInches(post) },
            Layup = Layup.Of(loops.Select((l, i) => ($"c{i}", l * 2)), spec.Layup.Tail),
            Servings = [],
        };
    }
}
