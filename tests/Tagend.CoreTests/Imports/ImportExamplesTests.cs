using Tagend.Imports;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Tests.Specs;
using Xunit;

namespace Tagend.Tests.Imports;

/// <summary>The examples of docs/imports: from a source's own file, without a letter changed, to sets without a problem.</summary>
public sealed class ImportExamplesTests
{
    public static TheoryData<string, string[], string[]> Examples => new()
    {
        {
            "shop-sheet.csv",
            ["701/string 60.25", "701/buss 38.5", "701/control 40.125", "702/string 58.5", "702/buss 36.875", "702/control 38.75", "704/buss 34.25"],
            ["unpaid 1"]
        },
        {
            "web-store.csv",
            ["1055/string 58.5", "1055/buss 36.875", "1055/control 38.75", "1057/string 65", "1058/yoke 1 16.75", "1058/yoke 2 16.75"],
            ["unpaid 1", "other goods 2"]
        },
    };

    [Theory]
    [MemberData(nameof(Examples))]
    public void Propose_ExampleFile_MakesAMapThatReadsItWhole(string name, string[] pieces, string[] leftOut)
    {
        var bytes = File.ReadAllBytes(Path.Combine(TestFiles.Root, "docs", "imports", name));
        var problems = new List<Problem>();
        var proposal = MapProposal.Of(name, bytes, Path.GetFileNameWithoutExtension(name), SpecFixture.Catalog.Plans, LengthUnit.Inch, problems);
        Assert.Empty(problems);
        TestContext.Current.SendDiagnosticMessage("{0}\n{1}", proposal!.Toml, string.Join('\n', proposal.Doubts));
        var file = OrderReader.Read(
            [(name, bytes)], LengthUnit.Inch, new MapChoice(_ => [proposal.Map], new OwnColumns(new Dictionary<string, string>()), MapWish.ByHeader), SpecFixture.Catalog.Colors);
        var report = SetBuilder.Build(file, new SpecBuilder(SpecFixture.Catalog, LengthUnit.Inch, SpecFixture.Date));
        Assert.Empty(report.Problems.Where(p => p.Severity == Severity.Refusal).Select(p => p.ToString()));
        Assert.Equal(pieces, report.MakeSets().SelectMany(s => s.Builds).Select(b =>
            FormattableString.Invariant($"{b.Spec.Order}/{b.Spec.Piece} {b.Spec.FinishedLength.Inches}")));
        Assert.All(leftOut, l => Assert.Contains($"{l.Split(' ')[^1]} {string.Join(' ', l.Split(' ')[..^1])}", Assert.Single(file.Remarks), StringComparison.Ordinal));
    }
}
