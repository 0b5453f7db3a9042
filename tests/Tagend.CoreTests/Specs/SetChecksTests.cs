using System.Text;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Specs;

public class SetChecksTests
{
    private const string Cable = "twin-cam-cable,36 1/2,hmpe-0145,24,";

    [Theory]
    [InlineData(
        "twin-cam-cable,36 9/16,hmpe-0145,24,",
        "orders.csv:4: finished_length \"36 9/16\": cable 2 is 36 9/16 in long and cable 1 is 36 1/2 in: pieces of the kind twin-cam-cable are equal in a set")]
    [InlineData(
        "twin-cam-cable,36 1/2,hmpe-0145,28,",
        "orders.csv:4: strands \"28\": cable 2 is of 28 strands and cable 1 is of 24: pieces of the kind twin-cam-cable are equal in a set")]
    [InlineData(
        "twin-cam-cable,36 1/2,hmpe-lcp-0145,24,",
        "orders.csv:4: material \"hmpe-lcp-0145\": cable 2 is of hmpe-lcp-0145 and cable 1 is of hmpe-0145: pieces of the kind twin-cam-cable are equal in a set")]
    public void Build_TwinCablesThatDiffer_AreRefusedWithBothNumbers(string second, string message)
    {
        var report = Report($"string,compound-string,60,,,\ncable 1,{Cable}\ncable 2,{second}");
        Assert.Contains(message, report.Problems.Select(p => p.ToString()));
        Assert.Equal(["1"], report.Withheld);
        Assert.Empty(report.MakeSets());
        Assert.All(report.Pieces, p => Assert.NotNull(p.Spec));
        Assert.Contains(report.Pieces[2].Problems, p => p.Severity == Severity.Refusal);
    }

    [Fact]
    public void Build_EqualTwinCables_AreASet()
    {
        var report = Report($"string,compound-string,60,,,\ncable 1,{Cable}\ncable 2,{Cable}");
        Assert.Equal(
            [
                "a compound-string has a peep, but no place for it is given: it cannot be put in once the piece is served",
                "a compound-string has a center serving, but none is given: give one in the column center_serving, or the arrow has nothing to be nocked on",
            ],
            report.Problems.Select(p => p.Message));
        Assert.Single(report.MakeSets());
    }

    [Fact]
    public void Build_BussCablesThatDiffer_AreASet()
    {
        var report = Report("buss 1,buss-cable,36,,,\nbuss 2,buss-cable,37,,,");
        Assert.Empty(report.Problems);
        Assert.Single(report.MakeSets());
    }

    [Fact]
    public void Build_YokeWithUnequalEnds_IsRefusedWithBothNumbers()
    {
        var report = Report("yoke,yoke,16 3/4,,,A 0..2 1/2; B 0..3 1/4");
        Assert.Equal(
            "orders.csv:2: servings \"A 0..2 1/2; B 0..3 1/4\": the serving at A is 2 1/2 in long and the one at B 3 1/4 in: both ends of a yoke are equal",
            Assert.Single(report.Problems).ToString());
        Assert.Empty(report.MakeSets());
    }

    [Theory]
    [InlineData("A 0..2 1/2; B 0..2 1/2")]
    [InlineData("A 0..2 1/2; B 0..2 9/16")] // within the tolerance
    [InlineData("7..9")]
    public void Build_YokeWithEqualEnds_IsASet(string servings) =>
        Assert.Empty(Report($"yoke,yoke,16 3/4,,,{servings}").Problems);

    [Theory]
    [InlineData("yoke", "16 3/4", "17")]
    [InlineData("split-yoke-cable", "39", "39 1/4")]
    public void Build_YokesThatDiffer_AreRefused(string kind, string first, string second)
    {
        var report = Report($"string,compound-string,60,,,\nyoke 1,{kind},{first},,,\nyoke 2,{kind},{second},,,");
        Assert.Contains(
            $"yoke 2 is {second} in long and yoke 1 is {first} in: pieces of the kind {kind} are equal in a set",
            report.Problems.Select(p => p.Message));
        Assert.Empty(report.MakeSets());
    }

    [Fact]
    public void Build_OneOfTwoCables_IsWarnedOfTheOther()
    {
        var report = Report("string,crossbow-string,36,,,\ncable,crossbow-cable,19,,,");
        Assert.Equal("a set with a crossbow-cable usually has two; this one has one", Assert.Single(report.Problems).Message);
        Assert.Single(report.MakeSets());
    }

    [Fact]
    public void Build_ControlCableAlone_IsWarnedOfItsPartnersAndBuilt()
    {
        var report = Report("control,control-cable,40,,,");
        Assert.Equal(
            [
                "a set with a control-cable usually has a compound-string too; this one has none",
                "a set with a control-cable usually has a buss-cable too; this one has none",
            ],
            report.Problems.Select(p => p.Message));
        Assert.All(report.Problems, p => Assert.Equal(Severity.Warning, p.Severity));
        Assert.Single(report.MakeSets());
    }

    [Fact]
    public void Build_PartnerWithAProblemOfItsOwn_IsNotCalledMissing()
    {
        var report = Report("control,control-cable,40,,,\nstring,compound-string,60,silk,,\nbuss,buss-cable,38,,,");
        Assert.DoesNotContain(report.Problems, p => p.Message.Contains("usually", StringComparison.Ordinal));
    }

    [Fact]
    public void Build_OtherSets_AreNotHeldAgainstEachOther()
    {
        var report = Report("cable 1,crossbow-cable,19,,,", "cable 1,crossbow-cable,20,,,");
        Assert.All(report.Problems, p => Assert.Equal(Severity.Warning, p.Severity));
        Assert.Equal(2, report.MakeSets().Count);
    }

    /// <summary>Sets of rows: piece, kind, finished length, material, strands, servings; orders are numbered from 1.</summary>
    private static SetReport Report(params string[] sets)
    {
        var rows = sets.SelectMany((set, i) => set.Split('\n').Select(row => $"{i + 1},{row}\n"));
        var csv = "order,piece,kind,finished_length,material,strands,servings\n" + string.Concat(rows);
        var file = OrderReader.Read("orders.csv", Encoding.UTF8.GetBytes(csv), LengthUnit.Inch, SpecFixture.Catalog.Shop.Columns);
        Assert.Empty(file.Problems);
        return SetBuilder.Build(file, new SpecBuilder(SpecFixture.Catalog, LengthUnit.Inch, SpecFixture.Date));
    }
}
