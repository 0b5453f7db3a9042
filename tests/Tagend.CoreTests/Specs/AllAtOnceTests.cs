using System.Text;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Specs;

/// <summary>Two wrong cells of a row are told in one run, and nothing that only follows from one of them.</summary>
public class AllAtOnceTests
{
    private static readonly (string Column, string Text)[] Good =
    [
        ("order", "801"), ("piece", "string"), ("kind", "compound-string"), ("finished_length", "60 1/4"), ("material", "hmpe-0145"), ("strands", "24"),
        ("colors", "black:12 red:12"), ("draw_weight", "70 lbf"), ("twists", "0.75"), ("servings", "A 0..8 t021; B 0..8 1/2 t021"),
        ("center_serving", "26 1/4..31 t019"), ("nock_point", "29 1/2"), ("peep", "23 1/2"), ("speed_nocks", "9"), ("nock_groove", "0.12"),
        ("due", "2026-12-04"), ("language", "de"), ("units", "in"),
    ];

    /// <summary>Each makes one problem; the columns that it is found by, beside its own.</summary>
    private static readonly (string Column, string Text, string[] By)[] Faults =
    [
        ("order", "8 01!", []), ("order", "", []), ("piece", "str!ng", []), ("piece", "", []), ("kind", "compound-strin", []), ("kind", "str!ng", []),
        ("finished_length", "6o 1/4", []), ("finished_length", "", []), ("finished_length", "39 1/2", ["kind"]),
        ("material", "hmpe-014", []), ("material", "hm!", []), ("strands", "odd", []),
        ("colors", "black:12 red:13", ["strands"]), ("colors", "bl!", []),
        ("draw_weight", "much", []), ("draw_weight", "900 lbf", ["kind", "material", "strands"]), ("twists", "many", []),
        ("servings", "A 0..x", []), ("servings", "A 0..8 t999; B 0..8 1/2 t021", []), ("servings", "A 0..24 t021; B 0..8 1/2 t021", ["finished_length", "peep"]),
        ("center_serving", "26 1/4", []), ("center_serving", "26 1/4..31 t999", []), ("center_serving", "26 1/4..70 t019", ["finished_length"]),
        ("nock_point", "there", []), ("nock_point", "99", ["finished_length"]), ("nock_point", "40", ["finished_length", "center_serving"]),
        ("peep", "x", []), ("peep", "70", ["finished_length"]), ("peep", "", ["kind"]),
        ("speed_nocks", "x", []), ("speed_nocks", "80", ["finished_length"]), ("nock_groove", "wide", []),
        ("due", "soon", ["order"]), ("language", "xx", ["order"]), ("units", "furlongs", []),
    ];

    [Fact]
    public void Report_TwoWrongCells_TellsBothAndNothingThatFollows()
    {
        Assert.Empty(Told());
        var wrong = new StringBuilder();
        foreach (var (i, a) in Faults.Index())
        {
            var ofA = Assert.Single(Told((a.Column, a.Text)));
            foreach (var b in Faults.Skip(i + 1).Where(b => b.Column != a.Column))
            {
                var ofB = Assert.Single(Told((b.Column, b.Text)));
                var told = Told((a.Column, a.Text), (b.Column, b.Text));
                var (isA, isB) = (told.Contains(ofA), told.Contains(ofB));
                if (told.Count != (isA ? 1 : 0) + (isB ? 1 : 0) || (!isA && !a.By.Contains(b.Column)) || (!isB && !b.By.Contains(a.Column)))
                {
                    wrong.AppendLine($"{ofA} and {ofB}: {string.Join(" | ", told)}");
                }
            }
        }

        Assert.Equal("", wrong.ToString());
    }

    [Theory]
    [InlineData("801,string,compound-string,6o 1/4,24\n801,buss,recurve-string,60,24\n", "2: finished_length", "3: kind")]
    [InlineData("801,string,compound-string,60 1/4,24\n801,buss,recurve-string,6o,24\n", "3: finished_length", "3: kind")]
    [InlineData("801,a,twin-cam-cable,38,24\n801,b,twin-cam-cable,39,24\n801,string,compound-string,60,odd\n", "3: finished_length", "4: strands")]
    [InlineData("801,a,twin-cam-cable,38,24\n801,b,twin-cam-cable,3x,24\n801,string,compound-string,60,24\n", "3: finished_length")]
    [InlineData("801,string,compound-string,60,24\n801,string,compound-strin,60,24\n", "3: kind", "3: piece")]
    public void Report_SetWithABrokenRow_TellsWhatIsWrongBetweenItsRows(string rows, params string[] places)
    {
        var told = Report($"order,piece,kind,finished_length,strands\n{rows}").Problems.Where(p => p.Severity == Severity.Refusal);
        Assert.Equal(places.Select(p => $"orders.csv:{p}"), told.Select(p => p.At.ToString()).Order());
    }

    [Fact]
    public void Report_CellThatIsTooLong_TellsTheOthersAndMissesNothing()
    {
        var report = Report($"order,piece,kind,finished_length,material,strands\n801,string,compound-string,{new string('6', 5_000)},hmpe-014,odd\n");
        Assert.Equal(["finished_length", "material", "strands"], report.Problems.Where(p => p.Severity == Severity.Refusal).Select(p => p.At.Column).Order());
    }

    private static SetReport Report(string text)
    {
        var file = OrderReader.Read("orders.csv", Encoding.UTF8.GetBytes(text), LengthUnit.Inch, SpecFixture.Catalog.Shop.Columns);
        return SetBuilder.Build(file, new SpecBuilder(SpecFixture.Catalog, LengthUnit.Inch, SpecFixture.Date));
    }

    /// <summary>The problems of a good row with cells in place of its own, each as it begins.</summary>
    private static HashSet<string> Told(params (string Column, string Text)[] faults)
    {
        var cells = Good.Select(g => faults.FirstOrDefault(f => f.Column == g.Column) is { Column: not null } fault ? fault : g).ToList();
        var report = Report($"{string.Join(',', cells.Select(c => c.Column))}\n{string.Join(',', cells.Select(c => $"\"{c.Text}\""))}\n");
        return [.. report.Problems.Select(p => $"{p.At.Column}: {p.Message[..Math.Min(20, p.Message.Length)]}")];
    }
}
