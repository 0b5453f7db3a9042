using System.Text.RegularExpressions;
using Xunit;

namespace Tagend.PaperTests.Cli;

/// <summary>What an archive says of the packages in it.</summary>
public class NoticesTests
{
    [Fact]
    public void Notices_OfTheProgram_NameEveryPackageItUsesWithALicenseAndItsText()
    {
        var said = OutsideTool.Run("bash", Path.Combine(TagendProgram.Root, "notices.sh"));
        Assert.Equal((0, ""), (said.ExitCode, said.Errors));
        var props = File.ReadAllText(Path.Combine(TagendProgram.Root, "Directory.Packages.props"));
        var used = Regex.Matches(props.Split("What the tests use")[0], "Include=\"(.+?)\" Version=\"(.+?)\"");
        Assert.NotEmpty(used);
        foreach (Match package in used)
        {
            var license = Regex.Match(said.Output, $@"^{Regex.Escape(package.Groups[1].Value)} {Regex.Escape(package.Groups[2].Value)}\n    (\S+);", RegexOptions.Multiline);
            Assert.True(license.Success, $"{package.Groups[1].Value} is not named");
            Assert.Contains($"---- {license.Groups[1].Value}\n", said.Output, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Packages_OfTheBuild_HaveAWordOnWhy()
    {
        var lines = File.ReadAllLines(Path.Combine(TagendProgram.Root, "Directory.Packages.props")).Where(l => l.Contains("<PackageVersion", StringComparison.Ordinal));
        Assert.DoesNotContain(lines, l => !l.Contains("<!--", StringComparison.Ordinal) && !l.Contains(".NativeAssets.", StringComparison.Ordinal));
    }
}
