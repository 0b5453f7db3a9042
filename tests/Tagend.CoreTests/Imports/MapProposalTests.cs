using System.Text;
using Tagend.Imports;
using Tagend.Measures;
using Tagend.Problems;
using Tagend.Tests.Specs;
using Xunit;

namespace Tagend.Tests.Imports;

public sealed class MapProposalTests
{
    /// <summary>A file that was spoiled so; each of the columns was a mistake of its own, and all of them were compared with each other.</summary>
    [Fact]
    public void Of_OneHeaderThousandsOfTimes_IsOneSentence()
    {
        var csv = string.Join(',', Enumerable.Repeat("Order", 13_000)) + "\n" + string.Join(',', Enumerable.Repeat("701", 13_000)) + "\n";
        const string Said = "sheet.csv:1: the header has 13000 columns, and an order file has 250 at most: check that this is the right file, and its separators";
        Assert.Equal([Said], Proposed(csv).Problems);
        var map = MapFixture.Map("title = \"t\"\n[columns]\n\"Order\" = \"order\"\n");
        Assert.Equal([Said], MapFixture.Orders([map], ("sheet.csv", csv)).Problems.Select(p => p.ToString()));
    }

    [Theory]
    [InlineData("Order,Length,Length\n701,60,61\n", "sheet.csv:1: Length: two columns have this meaning: remove or rename one")]
    [InlineData("Order,Length,LENGTH \n701,60,61\n", "sheet.csv:1: Length: two columns have this meaning: remove or rename one")]
    public void Of_HeaderTwice_IsOneSentence(string csv, string said)
    {
        var (proposal, problems) = Proposed(csv);
        Assert.Null(proposal);
        Assert.Equal([said], problems);
    }

    [Fact]
    public void Of_GoodsThatDifferInCaseOrSpaces_AreOne()
    {
        const string Csv = "Order,Item,Length\n701,Buss Cable,38 1/2\n702,buss  cable,36\n702,String Wax,\n703,string  wax,\n";
        var (proposal, problems) = Proposed(Csv);
        Assert.Empty(problems);
        Assert.Contains("\n\"Buss Cable\" = \"buss-cable\"\n", proposal!.Toml, StringComparison.Ordinal);
        Assert.DoesNotContain("buss  cable", proposal.Toml, StringComparison.Ordinal);
        Assert.Equal(["701/buss 38.5", "702/buss 36"], MapFixture.Shown(MapFixture.Orders([proposal.Map], ("sheet.csv", Csv))));
    }

    private static (MapProposal? Proposal, IEnumerable<string> Problems) Proposed(string csv)
    {
        var problems = new List<Problem>();
        var proposal = MapProposal.Of("sheet.csv", Encoding.UTF8.GetBytes(csv), "sheet", SpecFixture.Catalog.Plans, LengthUnit.Inch, problems);
        return (proposal, problems.Select(p => p.ToString()));
    }
}
