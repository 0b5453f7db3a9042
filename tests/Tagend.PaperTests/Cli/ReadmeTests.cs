using System.Text.RegularExpressions;
using Xunit;

namespace Tagend.PaperTests.Cli;

/// <summary>What the README shows a new user works as it stands there.</summary>
public sealed partial class ReadmeTests
{
    private static readonly string Readme = File.ReadAllText(Path.Combine(TagendProgram.Root, "README.md"));

    [Fact]
    public void FirstOrderFile_OfTheReadme_PrintsEverySet()
    {
        using var folder = TagendProgram.NewFolder();
        folder.Write("orders.csv", FirstOrders());
        var check = TagendProgram.RunIn(folder.Path, "check", "orders.csv");
        Assert.Equal((0, ""), (check.ExitCode, check.Errors));
        Assert.Contains("2 sets ready, 0 withheld; 0 problems, 0 warnings", check.Output, StringComparison.Ordinal);

        var print = TagendProgram.RunIn(folder.Path, "print", "orders.csv", "--out", "today");
        Assert.Equal((0, ""), (print.ExitCode, print.Errors));
        foreach (var paper in new[] { "cards.pdf", "tags.pdf", "sheets.pdf", "pulls.pdf" })
        {
            Assert.True(File.Exists(Path.Combine(folder.Path, "today", paper)), paper);
        }
    }

    [Fact]
    public void Links_OfTheReadme_LeadToFiles() => Assert.All(
        Link().Matches(Readme), link => Assert.True(File.Exists(Path.Combine(TagendProgram.Root, link.Groups[1].Value)), link.Value));

    private static string FirstOrders()
    {
        var lines = Readme.Split('\n').Select(l => l.Trim());
        return string.Join('\n', lines.SkipWhile(l => !l.StartsWith("order,", StringComparison.Ordinal)).TakeWhile(l => l.Length > 0));
    }

    [GeneratedRegex(@"\]\(([^)#:]+)\)")]
    private static partial Regex Link();
}
