using System.Text.Json;
using Xunit;

namespace Tagend.PaperTests.Cli;

/// <summary>The numbers on the terminal and for scripts: explain, and check --json.</summary>
public class ExplainTests
{
    private static readonly string Mistakes = Path.Combine(TagendProgram.Root, "demo-orders", "mistakes.csv");

    [Fact]
    public void Explain_AnyPiece_SaysTheSameInWordsAndInJson()
    {
        var text = TagendProgram.Run("explain", TagendProgram.DemoOrders, "1003/Cable  1");
        var json = TagendProgram.Run("explain", TagendProgram.DemoOrders, "1003/cable 1", "--json");
        Assert.Equal((0, 0), (text.ExitCode, json.ExitCode));
        var words = OneLine(text.Output);
        using var steps = JsonDocument.Parse(json.Output);
        Assert.NotEqual(0, steps.RootElement.GetArrayLength());
        Assert.All(steps.RootElement.EnumerateArray(), step => Assert.Contains(
            OneLine($"{step.GetProperty("name")} {step.GetProperty("formula")} {Worked(step)} from {step.GetProperty("source")}"),
            words,
            StringComparison.Ordinal));
        Assert.All(text.Output.Split('\n'), line => Assert.True(line.Length <= 110 && line == line.TrimEnd(), line));

        static string Worked(JsonElement step) => step.GetProperty("numbers").GetString() is { Length: > 0 } numbers
            ? $"= {numbers} = {step.GetProperty("result")}"
            : $"so {step.GetProperty("result")}";
    }

    [Theory]
    [InlineData("1001", "\"1001\": expected an order and its piece, such as 1001/string")]
    [InlineData("1001/a/b", "expected an order and its piece")]
    [InlineData("1001/%", "a name has letters, digits")]
    [InlineData("9999/string", "there is no order 9999 in the file; there are 1001, 1002,")]
    [InlineData("1001/cable", "there is no piece cable in order 1001; there are string, buss, control")]
    public void Explain_NoSuchPiece_NamesWhatThereIs(string piece, string sentence)
    {
        var said = TagendProgram.Run("explain", TagendProgram.DemoOrders, piece);
        Assert.Equal(2, said.ExitCode);
        Assert.Contains(sentence, said.Errors, StringComparison.Ordinal);
        Assert.Empty(said.Output);
    }

    [Fact]
    public void Explain_RefusedPiece_SaysItsOwnProblemsOnly()
    {
        var said = TagendProgram.Run("explain", Mistakes, "3001/buss");
        Assert.Equal(3, said.ExitCode);
        Assert.Equal(
            "finished_length \"6o 1/4\": expected a length such as 60 1/4, 60.25 in or 1530 mm",
            said.Errors.Trim().Split(": ", 2)[1]);
        Assert.Empty(said.Output);
    }

    [Fact]
    public void Explain_EmptyFile_SaysTheFilesProblem()
    {
        using var folder = TagendProgram.NewFolder();
        var said = TagendProgram.Run("explain", folder.Write("orders.csv", ""), "1/string");
        Assert.Equal(3, said.ExitCode);
        Assert.Contains("the file is empty", said.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void CheckJson_EveryDemoPiece_HasEveryNumber()
    {
        using var pieces = JsonDocument.Parse(TagendProgram.Run("check", TagendProgram.DemoOrders, "--templates", TagendProgram.DemoShop, "--json").Output);
        string[] numbers =
        [
            "finishedLength.in", "turns", "takeUp.rule.mm", "takeUp.helix.in", "takeUp.fitted", "takeUp.used", "bundleDiameter.in", "settle.in",
            "laidUpLength.in", "postSetting.outside.in", "postSetting.centers.in", "postSetting.tape.in", "postSetting.residual.in",
            "postSetting.residualTurns", "turnSensitivity.in", "loops", "colors", "tags", "separators", "stretch.load.lbf", "stretch.minutes",
            "stretch.readingUnderLoad.in", "stretch.shareOfStrength", "servings", "nockFit", "strength.breaking.N", "strength.floor",
            "strength.ratio", "mass.grains", "mass.grams", "mass.arrowShareGrains", "stock",
        ];
        Assert.All(pieces.RootElement.EnumerateArray(), piece => Assert.All(numbers, path => Assert.True(Has(piece, path), path)));
        Assert.All(pieces.RootElement.EnumerateArray(), piece => Assert.Equal(IsString(piece), Has(piece, "strength.floor.lbf"))); // a rule of hand bows' strings
        var serving = pieces.RootElement[0].GetProperty("servings")[0];
        Assert.All(
            ["name", "fromA", "toA", "fromB", "toB", "length", "thread", "wraps", "threadLength", "diameter"],
            (string name) => Assert.True(serving.TryGetProperty(name, out _), name));
        Assert.Equal("t017", pieces.RootElement[0].GetProperty("nockFit").GetProperty("thread").GetString());
        Assert.Equal(70, pieces.RootElement[0].GetProperty("drawWeight").GetProperty("lbf").GetDouble());

        static bool IsString(JsonElement piece) => piece.GetProperty("kind").GetString()!.EndsWith("string", StringComparison.Ordinal);

        static bool Has(JsonElement element, string path) =>
            path.Split('.').All(name => element.ValueKind == JsonValueKind.Object && element.TryGetProperty(name, out element));
    }

    private static string OneLine(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
