using System.Diagnostics;
using System.Text.RegularExpressions;
using Xunit;

namespace Tagend.PaperTests.Cli;

/// <summary>
/// The commands that the pages on orders show, run as they stand there, each block in a shop that has worked for a while.
/// </summary>
public sealed partial class DocumentedCommandsTests(DocumentedCommandsTests.WorkingShop shop) : IClassFixture<DocumentedCommandsTests.WorkingShop>
{
    /// <summary>Lines that need a server or a browser.</summary>
    private static readonly string[] Elsewhere = ["tagend book copy postgres:", "tagend station"];

    private static readonly string[] Pages = ["README.md", "docs/IMPORTS.md", "docs/BOWS.md", "docs/JOB-BOOK.md"];

    public static TheoryData<string, string> Blocks =>
    [
        .. Pages.SelectMany(page => BlocksOf(page).Select(block => (page, block))),
    ];

    [Theory]
    [MemberData(nameof(Blocks))]
    public void Commands_OfAPage_EndWell(string page, string block)
    {
        using var folder = shop.Copy();
        foreach (var command in block.Split('\n'))
        {
            var said = folder.Run(command);
            Assert.True(said.ExitCode == 0, $"{page}: {command}: exit code {said.ExitCode}\n{said.Output}{said.Errors}");
        }
    }

    /// <summary>What the pages show of the program's own sentences is what it says.</summary>
    [Theory]
    [InlineData("docs/JOB-BOOK.md", "701  due 2026-12-04  ", "tagend orders")]
    [InlineData("docs/JOB-BOOK.md", "orders.csv:2: piece \"buss\": warning: ", "sed 's/,38 1\\/2,/,38 5\\/8,/' orders.csv > changed.csv; mv changed.csv orders.csv; tagend print orders.csv --order 701 --out again")]
    [InlineData("docs/IMPORTS.md", "web-store.csv:3: ", "sed 's/36 7\\/8/36 7\\/8x/' web-store.csv > changed.csv; mv changed.csv web-store.csv; tagend check web-store.csv")]
    [InlineData("docs/ORDERS.md", "orders.csv:14: ", "{ sed -n 1p orders.csv; for i in $(seq 12); do echo; done; echo '9,string,compound-string,6o 1/4,,,,,,,'; } > changed.csv; mv changed.csv orders.csv; tagend check orders.csv")]
    [InlineData("docs/BOWS.md", "Bow book: Demo hybrid 34, but as ordered: ", "printf 'order,bow,strands\\n801,Demo hybrid 34,28\\n' > by-bow.csv; tagend print by-bow.csv --out bow; pdftotext bow/cards.pdf -")]
    public void Sentence_OfAPage_IsSaid(string page, string beginning, string commands)
    {
        using var folder = shop.Copy();
        var text = File.ReadAllText(Path.Combine(TagendProgram.Root, page));
        var shown = Regex.Match(text, Regex.Escape(beginning) + @"[^`]*?(?=`|\n\n)").Value;
        Assert.NotEqual("", shown);
        var said = folder.Run(commands);
        Assert.Contains(OneLine(shown), OneLine(said.Output + said.Errors), StringComparison.Ordinal);
    }

    private static string OneLine(string text) => Space().Replace(text, " ").Trim();

    /// <summary>The blocks of commands of a page, without those that are for elsewhere.</summary>
    private static IEnumerable<string> BlocksOf(string page) => Block().Matches(File.ReadAllText(Path.Combine(TagendProgram.Root, page)))
        .Select(b => string.Join('\n', b.Value.Split('\n').Select(l => l.Trim()).Where(l => l.Length > 0 && !Elsewhere.Any(e => l.StartsWith(e, StringComparison.Ordinal)))))
        .Where(b => b.Length > 0);

    [GeneratedRegex(@"(?m)^(    tagend .*\n)+")]
    private static partial Regex Block();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Space();

    /// <summary>A shop in a folder: its templates, maps and job book, what was ordered, printed and built, and what was photographed.</summary>
    public sealed class WorkingShop : IDisposable
    {
        /// <summary>Rows of orders that the pages speak of.</summary>
        private const string Orders =
            """
            order,piece,kind,finished_length,colors,draw_weight,customer,bow,due,peep,center_serving
            701,buss,buss-cable,38 1/2,black red,70,Demo customer 1,hybrid cam,2026-12-04,,
            701,string,compound-string,60 1/4,black red,70,Demo customer 1,hybrid cam,2026-12-04,23 1/2,26 1/4..31
            701,control,control-cable,40 1/8,black red,70,Demo customer 1,hybrid cam,2026-12-04,,
            702,string,recurve-string,63,white,40,Demo customer 2,recurve bow,2026-12-11,,28..33
            703,string,recurve-string,65,white,40,Demo customer 3,recurve bow,2026-12-11,,29..34
            1042,string,compound-string,60 1/4,black,70,Example club,hybrid cam,2026-12-12,23 1/2,26 1/4..31
            1043,string,compound-string,60 1/4,black,70,Example club,hybrid cam,2026-12-12,23 1/2,26 1/4..31

            """;

        private readonly ShopFolder _folder = new(Directory.CreateTempSubdirectory("tagend-shop-").FullName);

        public WorkingShop()
        {
            File.WriteAllText(Path.Combine(_folder.Path, "orders.csv"), Orders);
            foreach (var csv in Directory.GetFiles(Path.Combine(TagendProgram.Root, "docs", "imports"), "*.csv"))
            {
                File.Copy(csv, Path.Combine(_folder.Path, Path.GetFileName(csv)));
            }

            // Builds 1 to 13 and spools 1 to 12; 1042 is printed and not built, and of 701 control is still to build.
            Prepare("tagend init templates --post-diameter '1 in'");
            Prepare("tagend map web-store.csv");
            Prepare("cp web-store.csv export.csv");
            Prepare("tagend print orders.csv --date 2026-11-20 --out first");
            Prepare("tagend print orders.csv --order 701 --only tags --preview 200 --out photos --job-book none");
            Prepare("cp photos/tags-02.png photo.jpg; cp photos/tags-03.png photo2.jpg");
            Prepare("tagend jobs --order 702 --json | sed -n 's/.*\"tag\": \"\\([^\"]*\\)\".*/\\1/p' > card.txt");
            Prepare("for i in $(seq 11); do tagend built 1043/string --length '60 1/4' --again || exit 1; done");
            Prepare("tagend built 701/string --length '60 1/4' --who AB && tagend built 701/buss --length '38 1/2' --who AB");
            Prepare("tagend spools receive hmpe-0145 --color black --lot H88-1 --length '1000 yd' --count 12 --out spools");
        }

        public ShopFolder Copy()
        {
            var copy = Directory.CreateTempSubdirectory("tagend-shop-").FullName;
            OutsideTool.Run("cp", "-a", $"{_folder.Path}/.", copy);
            return new ShopFolder(copy);
        }

        public void Dispose() => _folder.Dispose();

        private void Prepare(string command)
        {
            var said = _folder.Run(command);
            Assert.True(said.ExitCode == 0, $"{command}: exit code {said.ExitCode}\n{said.Output}{said.Errors}");
        }
    }

    /// <summary>A folder in which a shell runs commands with the program in its path; gone after the test.</summary>
    public sealed record ShopFolder(string Path) : IDisposable
    {
        /// <summary>What is scanned where a command waits for it, and what is typed then at the bench: the length alone.</summary>
        private string TypedFor(string command)
        {
            var card = System.IO.Path.Combine(Path, "card.txt");
            return !File.Exists(card) ? "" : File.ReadAllText(card) + (command.StartsWith("tagend built", StringComparison.Ordinal) ? "\n\n63\n" : "");
        }

        internal Said Run(string command)
        {
            var start = new ProcessStartInfo("bash", ["-c", command])
            {
                WorkingDirectory = Path,
                RedirectStandardInput = true,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            };
            start.Environment["PATH"] = $"{System.IO.Path.GetDirectoryName(TagendProgram.Executable)}:{Environment.GetEnvironmentVariable("PATH")}";
            start.Environment["TAGEND_JOB_BOOK"] = "";
            start.Environment["XDG_DATA_HOME"] = System.IO.Path.Combine(Path, "own-data");
            using var process = Process.Start(start)!;
            process.StandardInput.Write(TypedFor(command));
            process.StandardInput.Close();
            var errors = process.StandardError.ReadToEndAsync();
            var output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return new Said(process.ExitCode, output, errors.Result);
        }

        public void Dispose() => Directory.Delete(Path, recursive: true);
    }
}
