using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Orders;

public class DemoOrdersTests
{
    [Theory]
    [InlineData("demo.csv", LengthUnit.Inch, 18)]
    [InlineData("demo-mm.csv", LengthUnit.Millimeter, 4)]
    public void Demo_HasNoProblem(string name, LengthUnit unit, int pieces)
    {
        var report = Build(name, unit);
        Assert.Empty(report.Problems);
        Assert.Equal(pieces, report.MakeSets().Sum(s => s.Builds.Count));
    }

    [Fact]
    public void DemoInMillimeters_HasALineEndInItsNotes()
    {
        var slip = Build("demo-mm.csv", LengthUnit.Millimeter).MakeSets()[0].Builds[0].Slip;
        Assert.Equal("Peep \"klein\";\nnach dem Einschießen prüfen", slip.Notes);
        Assert.Equal("Musterschütze 1", slip.Customer);
    }

    [Fact]
    public void Mistakes_OneSet_IsRight()
    {
        var report = Build("mistakes.csv", LengthUnit.Inch);
        Assert.Equal("3000", Assert.Single(report.MakeSets()).Order);
        Assert.Equal(Enumerable.Range(3001, 26).Where(n => n != 3024).Select(n => $"{n}"), report.Withheld);
        Assert.Equal(Enumerable.Range(4, 29).Except([21, 23]), report.Problems.Select(p => p.At.Line).Distinct());
    }

    [Fact]
    public void Mistakes_OfCells_AreSaidInWords()
    {
        var file = OrderReader.Read(Demo("mistakes.csv"), LengthUnit.Inch, new Dictionary<string, string>());
        Assert.Equal(
            [
                "4: finished_length \"6o 1/4\": expected a length such as 60 1/4, 60.25 in or 1530 mm",
                "5: finished_length \"1,530 mm\": expected a length such as 60 1/4, 60.25 in or 1530 mm",
                "6: finished_length: the row has no length: give finished_length, or the bow_length of a recurve or longbow",
                "7: finished_length \"0\": expected a length above 0 and below 10 m (393 11/16 in)",
                "8: finished_length \"10 m\": expected a length above 0 and below 10 m (393 11/16 in)",
                "9: bow_length \"66\": finished_length and bow_length are both given and may differ: keep one of them",
                "10: strands \"23\": strands are laid in loops of two, so their number is even: 22 or 24",
                "11: colors \"black:12 red\": give every color its number of strands, or none of them",
                "14: draw_weight \"32 kg\": expected a force such as 70, 70 lb or 311 N",
                "15: servings \"A 0-5; B 0..9\": item 1 \"A 0-5\": expected where it starts and ends, such as A 0..7 1/2 t021 black",
                "22: piece \"buss\": order 3018 already has a piece of that name in line 21: give each piece of a set its own name",
                "24: customer \"Demo customer 3\": order 3019 has \"Demo customer 2\" in line 23: give it once, or repeat it in every row of the set",
                "29: order \"3024/1\": a name has letters, digits, spaces, hyphens, points and underscores only, not /",
                "30: order: the row names no order: every row of a set needs the set's number",
                "31: the row has 16 cells and the header 15: put quotes around a cell that holds the separator",
                "32: the row has 14 cells and the header 15: a cell or a separator is missing",
            ],
            file.Problems.Select(p => p.ToString()[(Demo("mistakes.csv").Length + 1)..]));
    }

    private static SetReport Build(string name, LengthUnit unit)
    {
        var problems = new List<Problem>();
        var catalog = CatalogReader.Read(TestFiles.Templates, problems);
        Assert.Empty(problems);
        var file = OrderReader.Read(Demo(name), LengthUnit.Inch, new Dictionary<string, string>());
        return SetBuilder.Build(file, new SpecBuilder(catalog!, unit, new DateOnly(2025, 5, 1)));
    }

    private static string Demo(string name) => Path.Combine(TestFiles.DemoOrders, name);
}
