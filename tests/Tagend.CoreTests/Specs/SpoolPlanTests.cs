using Tagend.Measures;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Specs;

public class SpoolPlanTests
{
    [Fact]
    public void Of_SpoolThatHoldsAll_IsTakenAlone() => Assert.Equal("1", Planned([Spool(1, 100)], 40, 60));

    [Fact]
    public void Of_SpoolThatEndsBetweenTwoBuilds_IsLeftBeforeTheSecond() =>
        Assert.Equal("1; 2 from 701/b", Planned([Spool(1, 100), Spool(2, 100)], 60, 50, 40));

    [Fact]
    public void Of_WhatIsLeft_HoldsALaterSmallerBuild() => Assert.Equal("1; 2 from 701/b", Planned([Spool(1, 100), Spool(2, 50)], 60, 50));

    [Fact]
    public void Of_NoSpoolThatHoldsABuild_SaysFromWhichAndHowMuch() =>
        Assert.Equal("1; short from 701/b by 120", Planned([Spool(1, 100)], 90, 70, 5, 50));

    [Fact]
    public void Of_NoSpoolAtAll_IsNothing() => Assert.Equal("", Planned([Spool(1, 100) with { Spool = Spool(1, 100).Spool with { Color = "red" } }], 10));

    [Fact]
    public void Of_Several_AreTakenMountedThenOpenedThenOldest()
    {
        var opened = Spool(3, 100) with { Left = Length.FromMillimeters(99) };
        Assert.Equal("3", Planned([Spool(1, 100), Spool(2, 100), opened], 10));
        Assert.Equal("2", Planned([Spool(1, 100), Spool(2, 100) with { IsMounted = true }, opened], 10));
        Assert.Equal("1", Planned([Spool(2, 100), Spool(1, 100)], 10));
    }

    [Fact]
    public void Of_NeedOfAnyColor_IsTakenFromWhatIsThere()
    {
        var plan = new SpoolPlan([Spool(1, 100)]);
        var need = Need(60) with { Color = "" };
        plan.Add("701", "a", [need]);
        plan.Add("701", "b", [Need(60)]);
        Assert.Equal(1, Assert.Single(plan.Of(need)!.Spools).Spool.Number);
        Assert.Equal("701/b", plan.Of(Need(60))!.ShortFrom);
    }

    [Fact]
    public void BatchPull_WithSpools_NamesThemInTheOrderOfTheBuilds()
    {
        var spec = SpecFixture.Good();
        var need = Stock.Of(spec, SpecFixture.Catalog.Shop)[0];
        var spool = new ReceivedSpool(5, need.Kind, need.Name, need.Color, "L", need.Length * 2, SpecFixture.Date);
        var pull = BatchPull.Of([spec, spec with { Order = "D-102" }, spec with { Order = "D-103" }], SpecFixture.Catalog.Shop, [new ShelfSpool(spool, need.Length * 2, false)])!;
        Assert.Equal("D-103/string", pull.Spools!.Of(need)!.ShortFrom);
        Assert.Equal(need.Length, pull.Spools.Of(need)!.Short);
        Assert.Null(BatchPull.Of([spec], SpecFixture.Catalog.Shop)!.Spools);
    }

    private static string Planned(IEnumerable<ShelfSpool> shelf, params int[] builds)
    {
        var plan = new SpoolPlan(shelf);
        foreach (var (i, length) in builds.Index())
        {
            plan.Add("701", $"{(char)('a' + i)}", [Need(length)]);
        }

        return plan.Of(Need(1)) is not { } take ? ""
            : string.Join("; ", take.Spools.Select(s => $"{s.Spool.Number}" + (s.From is null ? "" : $" from {s.From}"))
                .Concat(take.ShortFrom is null ? [] : [$"short from {take.ShortFrom} by {take.Short.Millimeters}"]));
    }

    private static StockNeed Need(double length) => new(StockKind.Strand, "hmpe-0145", "black", Length.FromMillimeters(length));

    private static ShelfSpool Spool(long number, double length) => new(
        new ReceivedSpool(number, StockKind.Strand, "hmpe-0145", "black", "L", Length.FromMillimeters(length), new DateOnly(2026, 3, 14)),
        Length.FromMillimeters(length),
        IsMounted: false);
}
