using System.Text;
using Tagend.Catalog;
using Tagend.Orders;
using Tagend.Output;
using Tagend.Problems;
using Tagend.Specs;

namespace Tagend.Fuzz;

/// <summary>The whole inputs that are spoiled: the project's own orders and templates, and what is made of them.</summary>
/// <param name="root">The folder that holds Tagend.slnx.</param>
public sealed class Corpus(string root)
{
    private static readonly DateOnly Date = new(2026, 3, 14);

    private readonly Lazy<ShopCatalog> _catalog = new(() => CatalogReader.Read(Path.Combine(root, "templates"), [])!);

    public string Templates => Path.Combine(root, "templates");

    /// <summary>The folder with files of shops' own shape, and their maps.</summary>
    public string Sources => Path.Combine(root, "docs", "imports");

    public ShopCatalog Catalog => _catalog.Value;

    public Fonts Fonts { get; } = Fonts.Load(Path.Combine(root, "templates", "fonts"));

    /// <summary>Order files of a few rows each, so that a run is short.</summary>
    public IReadOnlyList<byte[]> Orders { get; } =
    [
        .. Directory.GetFiles(Path.Combine(root, "demo-orders"), "*.csv").Order(StringComparer.Ordinal).SelectMany(file =>
        {
            var lines = File.ReadAllLines(file);
            return lines.Skip(1).Chunk(3).Select(rows => Encoding.UTF8.GetBytes(string.Join("\r\n", rows.Prepend(lines[0])) + "\r\n"));
        }),
    ];

    public static SetReport Read(byte[] orders, ShopCatalog catalog)
    {
        var file = OrderReader.Read("orders.csv", orders, catalog.Shop.Unit, catalog.Shop.Columns);
        return SetBuilder.Build(file, new SpecBuilder(catalog, catalog.Shop.Unit, Date));
    }

    /// <summary>Sets of the demo orders.</summary>
    public IReadOnlyList<BuildSet> Sets => [.. Orders.SelectMany(o => Read(o, Catalog).MakeSets())];

    public static IReadOnlyList<byte[]> Words(params IEnumerable<string> words) => [.. words.Select(Encoding.UTF8.GetBytes)];

    /// <summary>Each problem is a sentence of its own line, and no trace of the program's insides.</summary>
    public static void Hold(IEnumerable<Problem> problems)
    {
        foreach (var problem in problems)
        {
            var line = problem.ToString();
            if (problem.Message.Length == 0 || line.Contains("Exception", StringComparison.Ordinal) || line.AsSpan().IndexOfAny('\r', '\n') >= 0)
            {
                throw new FaultException($"no sentence: {line}");
            }
        }
    }
}
