using Xunit;

namespace Tagend.PaperTests.Cli;

/// <summary>What <c>init</c> asks at a terminal: that of <c>script</c> (util-linux), which types the answers.</summary>
public class InitTests
{
    [Fact]
    public void Init_AtATerminal_AsksUntilEachAnswerCanBeTaken()
    {
        using var folder = TagendProgram.NewFolder();
        var said = TagendProgram.AtATerminal(["init", folder["shop"]], "cm", "mm", "Sehnen \"A\" \\ B", "", "5 in", "about an inch", "28,6");
        Assert.Equal(0, said.ExitCode);
        Assert.Contains("\"cm\": expected in or mm", said.Output, StringComparison.Ordinal);
        Assert.Contains("\"5 in\": expected 0.1 to 3 in (2.54 to 76.2 mm): no jig has thinner or thicker posts", said.Output, StringComparison.Ordinal);
        Assert.Contains("\"about an inch\": expected a length such as 1 1/8 in or 28.6 mm", said.Output, StringComparison.Ordinal);
        var shop = File.ReadAllLines(Path.Combine(folder["shop"], "shop.toml"));
        Assert.All(
            ["name = \"Sehnen \\\"A\\\" \\\\ B\"", "phone = \"\"", "unit = \"mm\"", "paper = \"a4\"", "post_diameter = \"28.6 mm\""],
            line => Assert.Contains(shop, s => s.StartsWith(line, StringComparison.Ordinal)));
    }

    [Fact]
    public void Init_EnterAlone_LeavesAllOutAndSaysWhatFollows()
    {
        using var folder = TagendProgram.NewFolder();
        var said = TagendProgram.AtATerminal(["init", folder["shop"]], "", "", "", "");
        Assert.Contains("The post diameter is not given: until post_diameter is in shop.toml, settings are for posts as thick as the pins.", said.Output, StringComparison.Ordinal);
        var shop = File.ReadAllLines(Path.Combine(folder["shop"], "shop.toml"));
        Assert.Contains(shop, s => s.StartsWith("# post_diameter", StringComparison.Ordinal));
        Assert.Contains(shop, s => s.StartsWith("name = \"\"", StringComparison.Ordinal));
    }

    [Fact]
    public void Init_FolderThatExists_IsSaidBeforeAnythingIsAsked()
    {
        using var folder = TagendProgram.NewFolder();
        var said = TagendProgram.AtATerminal(["init", folder.Path], "in");
        Assert.Equal(5, said.ExitCode);
        Assert.Contains("already exists", said.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Do you work in", said.Output, StringComparison.Ordinal);
    }
}
