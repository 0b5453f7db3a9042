using System.Text;
using Tagend.Imports;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;
using Xunit;

namespace Tagend.Tests.Imports;

/// <summary>Maps and files of a shop's sources, written in a test.</summary>
internal static class MapFixture
{
    /// <summary>A map that must have no mistake.</summary>
    public static SourceMap Map(string toml, string name = "sheet")
    {
        var (map, problems) = Read(toml, name);
        Assert.Empty(problems);
        return map!;
    }

    public static (SourceMap? Map, IReadOnlyList<string> Problems) Read(string toml, string name = "sheet")
    {
        var folder = Directory.CreateTempSubdirectory("tagend-").FullName;
        var path = Path.Combine(folder, $"{name}.toml");
        File.WriteAllText(path, toml);
        var problems = new List<Problem>();
        var map = MapReader.Read(path, problems);
        Directory.Delete(folder, recursive: true);
        return (map, [.. problems.Select(p => p.ToString())]);
    }

    /// <summary>A file read by a map.</summary>
    public static OrderFile Orders(string toml, string csv) => Orders([Map(toml)], ("sheet.csv", csv));

    public static OrderFile Orders(IReadOnlyList<SourceMap> maps, params (string Name, string Csv)[] files) => OrderReader.Read(
        [.. files.Select(f => (f.Name, Encoding.UTF8.GetBytes(f.Csv)))],
        LengthUnit.Inch,
        new MapChoice(_ => maps, new OwnColumns(new Dictionary<string, string>(), hasBows: true), new MapWish(null, "choose one", file => $"make one of {file}")));

    /// <summary>What a file holds, in short: order/piece and length of each row.</summary>
    public static IEnumerable<string> Shown(OrderFile file)
    {
        Assert.Empty(file.Problems.Where(p => p.Severity == Severity.Refusal).Select(p => p.ToString()));
        return file.Lines.Select(l => FormattableString.Invariant($"{l.Order}/{l.Piece} {l.FinishedLength?.Inches}"));
    }
}
