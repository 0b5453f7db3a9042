using System.Runtime.CompilerServices;
using System.Text;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Specs;

public class SetBuilderTests
{
    private const string Scattered =
        "order,piece,kind,finished_length,material,strands,colors\n"
        + "1,string,compound-string,60,hmpe-0145,24,black:12 red:12\n"
        + "2,string,compound-string,58,hmpe-0145,24,black:24\n"
        + "1,buss,buss-cable,38,hmpe-0145,24,red:24\n"
        + "2,buss,buss-cable,37,hmpe-0145,24,black:12 red:12\n"
        + "1,control,control-cable,39,hmpe-0145,24,red:24\n";

    [Fact]
    public void Build_AnyFile_HoldsNeitherRowsNorSpecs()
    {
        var file = Read();
        var report = Build(file);
        var seen = Seen(file, report);
        GC.Collect();
        GC.WaitForPendingFinalizers();
        GC.Collect();
        Assert.All(seen, item => Assert.False(item.IsAlive));
        Assert.Equal((5, 5, 2), (file.Lines.Count, report.Pieces.Count, report.MakeSets().Count));
    }

    [Fact]
    public void Build_ScatteredSets_AreMadeOfTheirOwnRowsEachTime()
    {
        var report = Build(Read());
        Assert.Equal(["1", "2"], report.Ready.Select(s => s.Order));
        Assert.Equal([3, 2], report.Ready.Select(s => s.Pieces));
        Assert.Equal(["string", "buss", "control"], report.MakeSets()[0].Builds.Select(b => b.Spec.Piece));
        Assert.Equal(report.MakeSets(), report.MakeSets());
        Assert.Equal(report.Pieces[2].Spec, report.MakeSets()[0].Builds[1].Spec);
    }

    [Fact]
    public void Pull_OfScatteredSets_IsThePullOfTheSetsThemselves()
    {
        var report = Build(Read());
        var shop = SpecFixture.Catalog.Shop;
        var pull = BatchPull.Of(report.Pieces.Select(p => p.Spec!), shop)!;
        var expected = BatchPull.Of(report.MakeSets().SelectMany(s => s.Builds).Select(b => b.Spec), shop)!;
        Assert.Equal(report.MakeSets().Count, pull.Sets);
        Assert.Equal(expected.Stock, pull.Stock);
        Assert.Equal((expected.Order.Changes, expected.Order.ChangesAsOrdered), (pull.Order.Changes, pull.Order.ChangesAsOrdered));
        Assert.Equal(expected.Order.Steps, pull.Order.Steps);
    }

    [Fact]
    public void Build_SeveralFiles_TellsRowsAndProblemsInTheFilesOrder()
    {
        const string Header = "order,piece,kind,finished_length,material,strands,colors\n";
        var file = OrderReader.Read(
            [
                ("b.csv", Encoding.UTF8.GetBytes(Header
                    + "2,string,compound-string,6o,hmpe-0145,24,black:24\n"
                    + "3,buss,buss-cable,38,hmpe-0145,24,black:24\n"
                    + "2,buss,buss-cable,38,hmpe-0145,24,black:20\n"
                    + "1,string,compound-string,60,hmpe-0145,24,black:20\n")),
                ("a.csv", Encoding.UTF8.GetBytes(Header
                    + "2,control,control-cable,39,hmpe-0145,24,black:20\n"
                    + "4,string,compound-string,58,hmpe-0145,24,black:24\n")),
            ],
            LengthUnit.Inch,
            new OwnColumns(SpecFixture.Catalog.Shop.Columns));
        var report = SetBuilder.Build(file, new SpecBuilder(SpecFixture.Catalog, LengthUnit.Inch, SpecFixture.Date));
        Assert.Equal(
            ["b.csv:2: finished_length", "b.csv:4: colors", "b.csv:5: colors", "a.csv:2: colors"],
            report.Problems.Where(p => p.Severity == Severity.Refusal).Select(p => p.At.ToString()));
        Assert.Equal(report.Problems.Select(p => (p.At.File == "a.csv", p.At.Line)).Order(), report.Problems.Select(p => (p.At.File == "a.csv", p.At.Line)));
        Assert.Equal(["1", "2"], report.Withheld);
        Assert.Equal(["3", "4"], report.Ready.Select(s => s.Order));
        Assert.Equal(
            [("2", "string", 2), ("3", "buss", 3), ("2", "buss", 4), ("1", "string", 5), ("2", "control", 2), ("4", "string", 3)],
            report.Pieces.Select(p => (p.Order, p.Piece, p.Line)));
        Assert.Equal([false, true, false, false, false, true], report.Pieces.Select(p => p.Spec is not null));
        Assert.Equal(OrderSlip.Blank, report.Pieces[0].Slip);
    }

    [Fact]
    public void Only_SomePieces_MakesThoseOfThemThatWereWanted()
    {
        var set = Build(Read()).Ready[0];
        var two = set.Only(new HashSet<string> { "string", "buss" });
        var one = two.Only(new HashSet<string> { "buss", "control" });
        Assert.Equal((3, 2, 1), (set.Pieces, two.Pieces, one.Pieces));
        Assert.Equal(["string", "buss"], two.Make().Builds.Select(b => b.Spec.Piece));
        Assert.Equal(["buss"], one.Make().Builds.Select(b => b.Spec.Piece));
        Assert.Equal(["string", "buss", "control"], set.Make().Builds.Select(b => b.Spec.Piece));
    }

    [Fact]
    public void Build_OlderIssue_KnowsWhatSupersedesIt()
    {
        var specs = new SpecBuilder(SpecFixture.Catalog, LengthUnit.Inch, SpecFixture.Date, new NewerBuss());
        var report = SetBuilder.Build(Read(), specs);
        Assert.Equal([null, 3, null], report.MakeSets()[0].Builds.Select(b => b.SupersededBy));
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static List<WeakReference> Seen(OrderFile file, SetReport report) =>
    [
        .. file.Lines.Select(line => new WeakReference(line)),
        .. report.Pieces.Select(piece => new WeakReference(piece.Spec)),
        .. report.MakeSets().Select(set => new WeakReference(set.Builds[0].Spec)),
    ];

    private static OrderFile Read() =>
        OrderReader.Read("orders.csv", Encoding.UTF8.GetBytes(Scattered), LengthUnit.Inch, SpecFixture.Catalog.Shop.Columns);

    private static SetReport Build(OrderFile file)
    {
        Assert.Empty(file.Problems);
        return SetBuilder.Build(file, new SpecBuilder(SpecFixture.Catalog, LengthUnit.Inch, SpecFixture.Date));
    }

    private sealed class NewerBuss : IIssues
    {
        public void CheckOrder(OrderLine line, ICollection<Problem> problems)
        {
        }

        public BuildSpec Issue(OrderLine line, BuildSpec spec, ICollection<Problem> problems) => spec;

        public int? SupersededBy(string order, string piece) => piece == "buss" ? 3 : null;
    }
}
