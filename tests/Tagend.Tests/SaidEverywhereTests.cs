using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;
using System.Text.RegularExpressions;
using Xunit;

namespace Tagend.Tests;

/// <summary>What is said below the program is said by the station too, where nobody has a terminal: it names no command and no option of one.</summary>
public partial class SaidEverywhereTests
{
    /// <summary>What no page shows, or only to whoever has a terminal; in the order of their letters.</summary>
    private static readonly (string Project, string Text)[] AtATerminal =
    [
        ("Tagend.Core", "# Written by tagend ruler: what the bars of its page, 150 mm each, measured on each printer.\n"), // in a file
        ("Tagend.Core", "--"), // a cell that means nothing
        ("Tagend.Core", "the shop's own builds in the job book, least squares (tagend fit)"), // of explain
        ("Tagend.Jobs", ": the server has no such database; make it with: createdb --owner USER DATABASE"), // where a server is set up
        ("Tagend.Workshop", " already exists: there would be two job books; keep one of them, or copy the other with tagend book copy"), // of init
        ("Tagend.Workshop", " fits, and a PNG holds one: choose with --material and --strands, or name a .pdf"), // of fit
        ("Tagend.Workshop", " is being written to, or was when a run was cut off: run tagend jobs, then move it"), // of init
        ("Tagend.Workshop", "--dpi is for label printers, and "), // the station has the resolution of the stock
        ("Tagend.Workshop", ". Add --replace to propose another map anyway"), // of map
        ("Tagend.Workshop", ": say which of them to change, such as --change \""), // the station changes one piece at a time
        ("Tagend.Workshop", "printers of 300, 600 or 1200 dpi as it is; leave --dpi out, or choose a roll with --bag-labels and --loop-labels"),
        ("Tagend.Station", " already: open it in the browser, or start another with --port"), // where the station is started
        ("Tagend.Station", " is taken by another program: choose another with --port, such as "),
        ("Tagend.Station", "): choose another with --port, such as "),
        ("Tagend.Station", "tagend station"), // from one station to another
    ];

    public static TheoryData<string> Projects => ["Tagend.Core", "Tagend.Qr", "Tagend.Print", "Tagend.Pages", "Tagend.Jobs", "Tagend.Workshop", "Tagend.Station"];

    [Theory]
    [MemberData(nameof(Projects))]
    public void Text_OfAProjectBelowTheProgram_NamesNoCommandAndNoOption(string project) =>
        Assert.Equal(AtATerminal.Where(e => e.Project == project).Select(e => e.Text), Texts(project).Where(t => OfATerminal().IsMatch(t)).Order(StringComparer.Ordinal));

    /// <summary>What is between the marks of a page is no text of the code: it is read where it is written.</summary>
    [Fact]
    public void Markup_OfTheStation_NamesNoCommandAndNoOption()
    {
        string[] atItsStart = ["DevicesPage.cshtml"]; // how it is started for phones
        var pages = Directory.GetFiles(Path.Combine(TestFiles.Root, "src", "Tagend.Station"), "*.cshtml", SearchOption.AllDirectories);
        Assert.True(pages.Length > 20);
        Assert.Equal(atItsStart, pages.Where(p => File.ReadLines(p).Where(l => !l.TrimStart().StartsWith("///", StringComparison.Ordinal)).Any(l => OfATerminal().IsMatch(l))).Select(Path.GetFileName));
    }

    /// <summary>All texts of a project's code, those with values in pieces.</summary>
    private static IEnumerable<string> Texts(string project)
    {
        using var file = new PEReader(File.OpenRead(Path.Combine(AppContext.BaseDirectory, $"{project}.dll")));
        var code = file.GetMetadataReader();
        for (var text = MetadataTokens.UserStringHandle(1); !text.IsNil; text = code.GetNextHandle(text))
        {
            yield return code.GetUserString(text);
        }
    }

    [GeneratedRegex("\\btagend [a-z]|--([a-z]|$)")]
    private static partial Regex OfATerminal();
}
