using Tagend.Catalog;
using Tomlyn.Parsing;
using Xunit;

namespace Tagend.Tests.Catalog;

public class TemplateTextTests
{
    private const string Small = """
        # The shop.
        name = ""            # your shop's
        logo = "a \"b\""
        [jig]
        # post_diameter = "1 in"    # of the posts: measure yours
                                    # and take away the # in front
        tape_in = "1/16 in"         # the finest mark
        also = ["a", "b"]
        share = 0.03                # lost
        # Share of the strands = what is left.

        """;

    [Fact]
    public void Entries_HaveTheirSectionValueAndRemark()
    {
        var entries = TemplateText.Of(Small).Entries;
        Assert.Equal(
            [
                new("", "name", "", TemplateValue.Text, "your shop's", 2, false),
                new("", "logo", "a \"b\"", TemplateValue.Text, "", 3, false),
                new("jig", "post_diameter", "1 in", TemplateValue.Text, "of the posts: measure yours and take away the # in front", 5, true),
                new("jig", "tape_in", "1/16 in", TemplateValue.Text, "the finest mark", 7, false),
                new("jig", "also", "a; b", TemplateValue.List, "", 8, false),
                new TemplateEntry("jig", "share", "0.03", TemplateValue.Plain, "lost", 9, false),
            ],
            entries);
    }

    [Theory]
    [InlineData("name", "My \"own\" \\ shop", "name = \"My \\\"own\\\" \\\\ shop\" # your shop's")]
    [InlineData("post_diameter", "1 1/8 in", "post_diameter = \"1 1/8 in\" # of the posts: measure yours")]
    [InlineData("tape_in", "1 mm", "tape_in = \"1 mm\"            # the finest mark")]
    [InlineData("also", "x; y ;z", "also = [\"x\", \"y\", \"z\"]")]
    [InlineData("share", "0.5", "share = 0.5                 # lost")]
    [InlineData("share", "half", "share = \"half\"              # lost")]
    public void With_ChangesItsLineAlone(string key, string value, string line)
    {
        var text = TemplateText.Of(Small);
        var entry = text.Entries.First(e => e.Key == key);
        var changed = text.With(entry, value);
        var expected = Small.Split('\n');
        expected[entry.Line - 1] = line;
        Assert.Equal(string.Join('\n', expected), changed);
        Assert.False(SyntaxParser.Parse(changed).HasErrors); // a reader of TOML that is not ours
    }

    [Theory]
    [InlineData("post_diameter", "# post_diameter = \"1 in\"    # of the posts: measure yours")]
    [InlineData("share", "# share = 0.03                # lost")]
    public void Without_IsAComment(string key, string line)
    {
        var text = TemplateText.Of(Small);
        var entry = text.Entries.First(e => e.Key == key);
        Assert.Equal(line, text.Without(entry).Split('\n')[entry.Line - 1]);
        Assert.True(TemplateText.Of(text.Without(entry)).Entries.First(e => e.Key == key).IsOff);
    }

    [Fact]
    public void With_AnyEntryOfTheShippedTemplates_ComesBack()
    {
        foreach (var path in Directory.EnumerateFiles(TestFiles.Templates, "*.toml", SearchOption.AllDirectories).Where(p => !p.Contains("words", StringComparison.Ordinal)))
        {
            var text = TemplateText.Of(File.ReadAllText(path));
            foreach (var entry in text.Entries.Where(e => !e.IsOff))
            {
                Assert.Equal(File.ReadAllText(path), text.With(entry, entry.Value));
                Assert.Equal("7", TemplateText.Of(text.With(entry, "7")).Entries.First(e => e.Line == entry.Line).Value);
            }
        }
    }
}
