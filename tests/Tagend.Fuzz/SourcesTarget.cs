using Tagend.Bows;
using Tagend.Imports;
using Tagend.Orders;
using Tagend.Specs;

namespace Tagend.Fuzz;

/// <summary>
/// Files of shops' own shape, their maps and the bow book, one of them spoiled at a time: proposed a map for, read by the map and
/// with the book, and computed.
/// </summary>
internal sealed class SourcesTarget : ITarget
{
    private const int ProposedOneIn = 3;

    private static readonly DateOnly Date = new(2026, 3, 14);

    private readonly Corpus _corpus;
    private readonly string _folder = Directory.CreateTempSubdirectory("tagend-fuzz-").FullName;
    private readonly List<(string Path, byte[] Content)> _recipes = [];
    private readonly IReadOnlyList<(string Name, byte[] Content)> _sources;

    public SourcesTarget(Corpus corpus, string examples)
    {
        _corpus = corpus;
        Keep(examples, "*.toml", MapReader.Folder);
        Keep(Path.Combine(corpus.Templates, BowBook.Folder), "*.toml", BowBook.Folder);
        _sources =
        [
            .. Directory.GetFiles(examples, "*.csv").Order(StringComparer.Ordinal).Select(f => (Path.GetFileName(f), File.ReadAllBytes(f))),
            ("bows.csv", "order,customer,bow,colors,peep\n801,Demo customer 1,Demo hybrid 34,red/black,23\n802,Demo customer 2,Demo recurve 66,white,\n"u8.ToArray()),
        ];
    }

    public IReadOnlyList<byte[]> Tokens { get; } = Corpus.Words(
        [
            "= ", "\"", "[", "]", "[[leave_out]]", "{", "}", "#", "\n", ",", ";", ":", "|", "*", "never", "order", "piece", "quantity", "buss.finished_length", "string.kind",
            "compound-string", "Length: ", "Color: Red/Black", "Strands 24", "60 1/4", "58,5", "1486", "mm", "in", "99999999999", "-1", "{Color 1}", "{", "is_not", "carry", "blank",
            "Demo hybrid 34", "DH34", "A 0..8 t021", "peep", "servings", "\0", "é", "½", "\uFEFF", "\t", "\u202E", "red", "24 strands", "#1055", "1-Feb",
        ]);

    public bool Run(Mutation mutation)
    {
        var (name, source) = mutation.Pick(_sources);
        if (mutation.OneIn(ProposedOneIn))
        {
            return Proposed(mutation.Of([source]));
        }

        if (mutation.OneIn(2))
        {
            return Read(name, mutation.Of([source]));
        }

        var (path, content) = mutation.Pick(_recipes);
        File.WriteAllBytes(path, mutation.Of([content]));
        try
        {
            return Read(name, source);
        }
        finally
        {
            File.WriteAllBytes(path, content);
        }
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private bool Proposed(byte[] source)
    {
        var problems = new List<Problems.Problem>();
        var proposal = MapProposal.Of("source.csv", source, "source", _corpus.Catalog.Plans, _corpus.Catalog.Shop.Unit, problems);
        Corpus.Hold(problems);
        if (proposal is null)
        {
            return false;
        }

        // What is proposed must be a map that can be kept and read again.
        var path = Path.Combine(_folder, "proposed.toml");
        File.WriteAllText(path, proposal.Toml);
        var again = new List<Problems.Problem>();
        if (MapReader.Read(path, again) is null || again.Count > 0)
        {
            throw new FaultException($"a map that was proposed is none: {again.FirstOrDefault()}");
        }

        return Made(OrderReader.Read([("source.csv", source)], _corpus.Catalog.Shop.Unit, new MapChoice(_ => [proposal.Map], new OwnColumns(new Dictionary<string, string>()), MapWish.ByHeader with { Name = "source" }), _corpus.Catalog.Colors));
    }

    private bool Read(string name, byte[] source)
    {
        var format = new BookedBows(
            new MapChoice(problems => MapReader.ReadAll(_folder, problems), new OwnColumns(new Dictionary<string, string>(), true), MapWish.ByHeader),
            problems => BowBook.Read(_folder, _corpus.Catalog.Shop.Unit, _corpus.Catalog.Colors, problems));
        return Made(OrderReader.Read([(name, source)], _corpus.Catalog.Shop.Unit, format, _corpus.Catalog.Colors));
    }

    private bool Made(OrderFile file)
    {
        var report = SetBuilder.Build(file, new SpecBuilder(_corpus.Catalog, _corpus.Catalog.Shop.Unit, Date));
        Corpus.Hold(report.Problems);
        _ = report.MakeSets().ToList();
        return report.Problems.Count == 0;
    }

    private void Keep(string from, string pattern, string folder)
    {
        Directory.CreateDirectory(Path.Combine(_folder, folder));
        foreach (var file in Directory.GetFiles(from, pattern).Order(StringComparer.Ordinal))
        {
            var path = Path.Combine(_folder, folder, Path.GetFileName(file));
            File.Copy(file, path);
            _recipes.Add((path, File.ReadAllBytes(path)));
        }
    }
}
