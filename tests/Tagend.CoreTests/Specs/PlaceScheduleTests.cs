using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Specs;

/// <summary>Places on a piece: which cell a problem of them stands at, and in which order they come.</summary>
public class PlaceScheduleTests
{
    [Theory]
    [InlineData("servings", "A 0..8; 20..27", "center_serving", "the serving 20 in to 27 in overlaps the serving 26 1/4 in to 31 in")]
    [InlineData("servings", "A 0..8; 30..35", "center_serving", "the serving 26 1/4 in to 31 in overlaps the serving 30 in to 35 in")]
    [InlineData("servings", "A 0..8; 7..9", "servings", "the serving 0 in to 8 in overlaps the serving 7 in to 9 in")]
    [InlineData("servings", "A 0..8; B 50..61", "servings", "the serving B 50..61 at -3/4 in from end A is not on the piece, which ends at 60 1/4 in")]
    [InlineData("servings", "A 0..8; A 50..61", "servings", "the serving A 50..61 at 61 in from end A is not on the piece, which ends at 60 1/4 in")]
    [InlineData("peep", "28 in", "peep", "the peep at 28 in is under the serving 26 1/4 in to 31 in")]
    [InlineData("peep", "70 in", "peep", "the peep at 70 in from end A is not on the piece, which ends at 60 1/4 in")]
    [InlineData("nock_point", "70 in", "nock_point", "the nock point at 70 in from end A is not on the piece, which ends at 60 1/4 in")]
    [InlineData("speed_nocks", "70 in", "speed_nocks", "the speed nock at 70 in from end A is not on the piece, which ends at 60 1/4 in")]
    public void Problem_OfOnePlace_StandsAloneAtItsCell(string column, string text, string at, string message) =>
        Assert.Equal((at, message), Told(Assert.Single(SpecFixture.Build((column, text)).Problems)));

    [Theory]
    [InlineData(70, "kind", "the cable guard at 70 in from end A is not on the piece, which ends at 60 1/4 in")]
    [InlineData(5, "servings", "the cable guard at 5 in is under the serving 0 in to 8 in")]
    public void Problem_OfAPlansSeparator_StandsAtWhatCanBeChanged(int inches, string at, string message) =>
        Assert.Equal((at, message), Told(Assert.Single(SpecFixture.Build(WithSeparator(inches), LengthUnit.Inch).Problems)));

    [Fact]
    public void Problems_OfBothMarks_TellTheNockPointFirst() => Assert.Equal(
        ["nock_point", "speed_nocks", "speed_nocks"],
        SpecFixture.Build(("nock_point", "70 in"), ("speed_nocks", "70 in; 71 in")).Problems.Select(p => p.At.Column));

    [Fact]
    public void Build_SeparatorsAndMarks_ComeInOrderFromEndA()
    {
        var (spec, problems) = SpecFixture.Build(WithSeparator(40), LengthUnit.Inch, ("speed_nocks", "29 1/2 in; 9 in"));
        Assert.Empty(problems);
        Assert.Equal(["peep", "cable guard"], spec!.Separators.Select(s => s.Name));
        Assert.Equal([MarkKind.SpeedNock, MarkKind.NockPoint, MarkKind.SpeedNock], spec.Marks.Select(m => m.Kind));
        Assert.Equal([9, 29.5, 29.5], spec.Marks.Select(m => m.Position.Inches));
    }

    [Fact]
    public void Build_ThreadNotNamed_FitsTheGrooveAtTheCenterAlone()
    {
        var spec = SpecFixture.Good(("servings", "A 0 in..8 in; B 0 in..8 1/2 in"), ("center_serving", "26 1/4 in..31 in"), ("nock_groove", "0.116 in"));
        Assert.Equal(["t021", "t017", "t021"], spec.Servings.Select(s => s.Thread));
    }

    private static (string? At, string Message) Told(Problem problem) => (problem.At.Column, problem.Message);

    private static ShopCatalog WithSeparator(int inches) => SpecFixture.WithPlan(
        "compound-string", p => p with { Separators = [new PlannedSeparator("cable guard", new Position(PieceEnd.A, Length.FromInches(inches)))] });
}
