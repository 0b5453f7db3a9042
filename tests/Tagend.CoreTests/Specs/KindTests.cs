using System.Text;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Specs;

public sealed class KindTests
{
    [Theory]
    [InlineData("buss", "", "buss-cable")]
    [InlineData("Buss Cable", "", "buss-cable")]
    [InlineData("yoke 2", "", "yoke")]
    [InlineData("recurve-string", "", "recurve-string")]
    [InlineData("long one", "Control Cable", "control-cable")]
    [InlineData("long one", "control", "control-cable")]
    [InlineData("long one", "plain", "plain")]
    public void Build_KindOrNameOfAPlan_IsThatPlan(string piece, string kind, string expected)
    {
        var (spec, _) = SpecFixture.Build(
            ("piece", piece), ("kind", kind), ("finished_length", expected == "yoke" ? "16 in" : expected == "recurve-string" ? "62 in" : "40 in"),
            ("servings", ""), ("center_serving", ""), ("nock_point", ""), ("peep", ""), ("speed_nocks", ""), ("draw_weight", ""));
        Assert.Equal(expected, spec?.Kind);
    }

    /// <summary>Served loops: guides to the making of strings for hand bows and crossbows; bare ones and black thread: common practice.</summary>
    [Theory]
    [InlineData("recurve-string", "62 in", "t021")]
    [InlineData("longbow-string", "62 in", "t021")]
    [InlineData("crossbow-string", "40 in", "t025")]
    [InlineData("compound-string", "60 1/4 in", null)]
    [InlineData("buss-cable", "38 in", null)]
    [InlineData("yoke", "16 in", null)]
    public void Build_ShippedPlan_SaysItsLoopsAndTheColorOfItsThread(string kind, string length, string? loopThread)
    {
        var (spec, _) = SpecFixture.Build(
            ("kind", kind), ("finished_length", length), ("servings", ""), ("center_serving", ""), ("nock_point", ""), ("peep", ""),
            ("speed_nocks", ""), ("draw_weight", ""));
        Assert.Equal((loopThread, loopThread is null ? null : "black"), (spec!.EndLoops!.Serving?.Thread, spec.EndLoops.Serving?.Color));
        Assert.All(spec.Servings, s => Assert.Equal("black", s.Color));
    }

    [Fact]
    public void Build_ThreadColor_IsTheOrdersElseThePlans()
    {
        var spec = SpecFixture.Build(
            SpecFixture.WithPlan("recurve-string", p => p with { ThreadColor = "flo-green" }),
            LengthUnit.Inch,
            ("kind", "recurve-string"), ("finished_length", "62 in"), ("servings", "A 0..8 t021; B 0..8 t021 red"), ("center_serving", ""),
            ("nock_point", ""), ("peep", ""), ("speed_nocks", ""), ("draw_weight", "")).Spec!;
        Assert.Equal(["flo-green", "red"], spec.Servings.Select(s => s.Color));
        Assert.Equal("flo-green", spec.EndLoops!.Serving!.Color);
        // Each loop is served in the color of the serving at its end.
        Assert.Equal(["flo-green", "red", "flo-green", "red"], ThreadUse.Of(spec).Select(u => u.Color));
    }

    [Theory]
    [InlineData("string", "no plan is called string: expected a kind, such as compound-string, crossbow-string, longbow-string, recurve-string, single-cam-string, or the name string under also in a plan")]
    [InlineData("cable 1", "no plan is called cable 1: expected a kind, such as buss-cable, control-cable, crossbow-cable, split-yoke-cable, twin-cam-cable, or the name cable 1 under also in a plan")]
    public void Build_NameOfSeveralPlansOrNone_IsRefused(string piece, string expected)
    {
        var (spec, problems) = SpecFixture.Build(("piece", piece), ("kind", ""));
        Assert.Null(spec);
        Assert.Equal(("kind", $"the row names no kind, and {expected}"), (Assert.Single(problems).At.Column, problems[0].Message));
    }

    [Fact]
    public void Check_PieceOfAnotherSystem_IsRefused()
    {
        var csv = "order,piece,kind,finished_length\n1,string,recurve-string,62\n1,buss,buss-cable,38\n";
        var file = OrderReader.Read("o.csv", Encoding.UTF8.GetBytes(csv), LengthUnit.Inch, SpecFixture.Catalog.Shop.Columns);
        var report = SetBuilder.Build(file, new SpecBuilder(SpecFixture.Catalog, LengthUnit.Inch, SpecFixture.Date));
        Assert.Equal(
            "o.csv:3: kind \"buss-cable\": buss-cable is for a compound, and the set's piece string (recurve-string) for a recurve or longbow, "
            + "so that no safety sheet is right for both: correct the kind, or give each bow an order of its own",
            Assert.Single(report.Problems, p => p.Severity == Severity.Refusal).ToString());
        Assert.Equal(["1"], report.Withheld);
    }

    [Theory]
    [InlineData("300", "; did you mean 300 mm?")]
    [InlineData("300 in", "")]
    [InlineData("80", "")]
    public void Build_NumberThatIsUsualInTheOtherUnit_IsAskedAbout(string text, string expected)
    {
        var (_, problems) = SpecFixture.Build(("piece", "string"), ("finished_length", text), ("kind", "yoke"));
        var message = problems.First(p => p.At.Column == "finished_length").Message;
        Assert.Equal(expected, message.Contains(';', StringComparison.Ordinal) ? message[message.LastIndexOf(';')..] : "");
    }

    [Theory]
    [InlineData("2026-12-04", "")]
    [InlineData("next week", "is not a date, so the order cannot be sorted by it: expected one such as 2026-12-04 or 4 Dec")]
    [InlineData("12/11/26", "may be 2026-12-11 or 2026-11-12, so the order cannot be sorted by it: say with dates in shop.toml which number is the month, or write it such as 4 Dec")]
    public void Check_DueThatIsNoDay_IsWarnedOf(string due, string said)
    {
        var csv = $"order,piece,kind,finished_length,due\n1,buss,buss-cable,38,{due}\n";
        var file = OrderReader.Read("o.csv", Encoding.UTF8.GetBytes(csv), LengthUnit.Inch, SpecFixture.Catalog.Shop.Columns);
        var report = SetBuilder.Build(file, new SpecBuilder(SpecFixture.Catalog, LengthUnit.Inch, SpecFixture.Date));
        Assert.Equal(said.Length > 0 ? [$"o.csv:2: due \"{due}\": warning: {said}"] : [], report.Problems.Select(p => p.ToString()));
        Assert.Empty(report.Withheld);
    }
}
