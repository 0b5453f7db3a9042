using System.CommandLine;
using Tagend.Commands;
using Tagend.Options;
using Xunit;

namespace Tagend.Tests.Cli;

public class LengthWordsTests
{
    [Theory]
    [InlineData("built 1042/string --length 60 5/16 --turns 46", "built|1042/string|--length|60 5/16|--turns|46")]
    [InlineData("built --length 1530.5 mm 1042/string", "built|--length|1530.5 mm|1042/string")]
    [InlineData("built --length 60 5/16 in", "built|--length|60 5/16 in")]
    [InlineData("built --length 60 1042/string", "built|--length|60|1042/string")]
    [InlineData("built --turns 46 1/2", "built|--turns|46|1/2")]
    [InlineData("built --length x 1/2", "built|--length|x|1/2")]
    [InlineData("built --length", "built|--length")]
    public void Joined_CommandLine_PutsTheWordsOfALengthTogether(string words, string joined) =>
        Assert.Equal(joined, string.Join('|', LengthWords.Joined(words.Split(' '), Root())));

    [Fact]
    public void Parse_LengthWithoutQuotes_IsOneValue() => Assert.Equal(
        "60 5/16", CommandLine.Parse(["built", "1042/string", "--length", "60", "5/16"]).GetValue<string?>("--length"));

    private static RootCommand Root() =>
        [new Command("built") { new Option<string>("--length") { HelpName = LengthWords.Value }, new Option<string>("--turns") { HelpName = "N" } }];
}
