using Tagend.Jobs;
using Tagend.Jobs.Sqlite;
using Tagend.PaperTests.Cli;

namespace Tagend.PaperTests.Faults;

/// <summary>A command that writes, run in a copy of a shop's folder.</summary>
internal sealed class Writer(string name, params string[] arguments)
{
    /// <summary>All there are, but those that only write to a server.</summary>
    public static IReadOnlyList<Writer> All { get; } =
    [
        new("print", "print", "orders.csv", "--out", "out", "--date", "2026-03-15"),
        new("recall", "recall", "TAG", "--card", "--tag", "--out", "out", "--change", "notes=soon"),
        new("outlines", "outlines", "letter-2x5", "--out", "out"),
        new("ruler", "ruler", "--out", "out", "--date", "2026-03-15"),
        new("ruler store", "ruler", "--printer", "desk", "--across", "149.3mm", "--along", "149.8mm"),
        new("fit plot", "fit", "--plot", "fit.pdf"),
        new("jobs csv", "jobs", "--csv", "jobs.csv"),
        new("built", "built", "1001/buss", "--length", "38 1/2"),
        new("remake", "remake", "1001/buss", "--out", "again", "--reason", "loop cut", "--who", "AB"),
        new("record", "record", "1001", "--tags", "--out", "out"),
        new("shipped", "shipped", "1001"),
        new("cancelled", "cancelled", "1001/buss", "--reason", "called off"),
        new("reopened", "reopened", "1002"),
        new("spools receive", "spools", "receive", "hmpe-0145", "--color", "red", "--lot", "H88-5", "--length", "900 m", "--count", "2", "--out", "out"),
        new("spools take", "spools", "take", "2"),
        new("spools count", "spools", "count", "1", "--left", "300 yd"),
        new("spools finish", "spools", "finish", "1"),
        new("book copy", "book", "copy", "copy.db"),
        new("book forget", "book", "forget", "Demo customer 1"),
        new("map", "map", "export.csv", "--name", "sheet"),
        new("bow", "bow", "Demo bow", "--order", "1001"),
        new("init", "init", "new"),
    ];

    private static readonly Lazy<TagendProgram.Folder> Shop = new(MakeShop);

    private readonly Lazy<Shape> _after = new(() =>
    {
        using var folder = Copy();
        var said = TagendProgram.RunIn(folder.Path, Environment, Arguments(arguments));
        return said.ExitCode == 0 ? Shape.Of(folder.Path) : throw new InvalidOperationException($"{name}: {said.Errors}");
    });

    /// <summary>The job book and the templates of the folder that it runs in.</summary>
    public static Dictionary<string, string> Environment { get; } = new() { ["TAGEND_JOB_BOOK"] = "book.db", ["DOTNET_PROCESSOR_COUNT"] = "1" };

    /// <summary>What the folder is like before it runs.</summary>
    public static Shape Before => Shape.Of(Shop.Value.Path);

    public string Name => name;

    public IReadOnlyList<string> Told => Arguments(arguments);

    /// <summary>What the folder is like when it has run to its end.</summary>
    public Shape After => _after.Value;

    /// <summary>A copy of the shop's folder, gone after the test.</summary>
    public static TagendProgram.Folder Copy()
    {
        var folder = TagendProgram.NewFolder();
        OutsideTool.Run("cp", "-r", $"{Shop.Value.Path}/.", folder.Path);
        return folder;
    }

    private static IReadOnlyList<string> Arguments(IEnumerable<string> arguments) => [.. arguments.Select(a => a == "TAG" ? Shop.Value["tag.txt"] is var file ? File.ReadAllText(file) : a : a)];

    private static TagendProgram.Folder MakeShop()
    {
        var folder = TagendProgram.NewFolder();
        AppDomain.CurrentDomain.ProcessExit += (_, _) => folder.Dispose();
        const string Header = "order,piece,kind,finished_length,customer";
        folder.Write("orders.csv", $"{Header}\n1001,string,compound-string,60 1/4,Demo customer 1\n1001,buss,buss-cable,38 1/2,Demo customer 1\n");
        folder.Write("shipped.csv", $"{Header}\n1002,string,compound-string,57 5/8,Demo customer 2\n");
        folder.Write("export.csv", File.ReadAllText(Path.Combine(TagendProgram.Root, "docs", "imports", "shop-sheet.csv")));
        string[][] made =
        [
            ["init", "templates", "--name", "Demo string shop", "--post-diameter", "1 in"],
            ["spools", "receive", "hmpe-0145", "--lot", "H88-4", "--length", "1000 yd", "--count", "2", "--out", "out"],
            ["spools", "take", "1"],
            ["print", "orders.csv", "--out", "out", "--date", "2026-03-14", "--volume", "1"],
            ["print", "orders.csv", "--out", "out", "--date", "2026-03-14", "--units", "mm"],
            ["print", "shipped.csv", "--out", "other", "--date", "2026-03-14", "--only", "cards"],
            ["shipped", "1002"],
            ["built", "1001/string", "--length", "60 5/16", "--turns", "45"],
            ["built", "1001/string", "--length", "60 3/8", "--turns", "44", "--again"],
        ];
        foreach (var arguments in made)
        {
            var said = TagendProgram.RunIn(folder.Path, new() { ["TAGEND_JOB_BOOK"] = "book.db" }, arguments);
            Xunit.Assert.True(said.ExitCode == 0, said.Errors);
        }

        using var book = new SqliteAddress(folder["book.db"]).OpenExisting(TimeProvider.System)!;
        folder.Write("tag.txt", book.Newest("1001", "string")!.Tag);
        return folder;
    }
}

/// <summary>What a shop's folder holds: its files but hidden ones, and what its job books say.</summary>
/// <param name="Files">By path, each with its bytes as text.</param>
/// <param name="Books">By path, what is in them.</param>
internal sealed record Shape(IReadOnlyDictionary<string, string> Files, IReadOnlyDictionary<string, string> Books)
{
    public static Shape Of(string folder)
    {
        var paths = Directory.GetFiles(folder, "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(folder, f)).Where(f => !$"/{f}".Contains("/.", StringComparison.Ordinal)).ToList();
        return new Shape(
            paths.Where(f => !f.Contains(".db", StringComparison.Ordinal)).ToDictionary(f => f, f => Convert.ToHexString(File.ReadAllBytes(Path.Combine(folder, f)))),
            paths.Where(f => f.EndsWith(".db", StringComparison.Ordinal)).ToDictionary(f => f, f => BookIn(Path.Combine(folder, f))));
    }

    private static string BookIn(string path)
    {
        using var book = new SqliteAddress(path).OpenExisting(TimeProvider.System)!;
        return string.Join(
            '\n',
            [
                .. book.Find(new JobSearch()).Select(j => $"{j.Order}/{j.Piece} {j.Revision} {j.Customer} {j.State} {j.Builds.Count} {j.Tag}"),
                .. new List<string> { "1001", "1002" }.SelectMany(book.Events).Select(e => $"{e.What} {e.Piece} {e.Note}"),
                .. book.Spools.All(withFinished: true).Select(s => s.ToString()),
                $"labels {book.NextLabel("letter-2x5")}",
            ]);
    }
}
