using System.Diagnostics;
using System.Text.Json;
using Xunit;

namespace Tagend.PaperTests.Cli;

/// <summary>From a tag alone: pages again, an order again, a new revision; and a scanner that stays at the bench.</summary>
public class RecallAgainTests
{
    [Theory]
    [InlineData("demo.csv")]
    [InlineData("demo-mm.csv")]
    public void AsOrder_OfEveryPiece_MakesTheSameSpecs(string orders)
    {
        using var folder = TagendProgram.NewFolder();
        var texts = Texts(orders);
        var said = TagendProgram.Run(["recall", .. texts, "--as-order"]);
        Assert.Equal((0, ""), (said.ExitCode, said.Errors));
        var again = TagendProgram.Run("check", "--json", "--date", "2026-03-14", folder.Write("again.csv", said.Output));
        Assert.Equal(Comparable(Check(orders)), Comparable(again.Output));
    }

    [Fact]
    public void CardTagAndSheet_OfATag_ArePrintedAgain()
    {
        using var folder = TagendProgram.NewFolder();
        var said = TagendProgram.Run("recall", Texts("demo.csv")[0], "--card", "--tag", "--sheet", "--out", folder.Path);
        Assert.Equal((0, ""), (said.ExitCode, said.Errors));
        Assert.Equal(
            ["1001-string-card.pdf", "1001-string-sheet.pdf", "1001-string-tag.pdf"],
            Directory.GetFiles(folder.Path).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        OutsideTool.Run("pdftoppm", "-r", "203", "-png", "-singlefile", folder["1001-string-tag.pdf"], folder["tag"]);
        Assert.Equal(Texts("demo.csv")[0], OutsideTool.Run("zbarimg", "--quiet", "--raw", folder["tag.png"]).Output.Trim());
        Assert.Contains("60 13/16", OutsideTool.Run("pdftotext", folder["1001-string-card.pdf"], "-").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Change_OfALength_IsANewRevisionOnTheCardAndInTheOrder()
    {
        using var folder = TagendProgram.NewFolder();
        var said = TagendProgram.Run(
            "recall", Texts("demo.csv")[0], "--change", "finished_length=60 1/2", "--card", "--as-order", "--out", folder.Path,
            "--job-book", folder["book.db"]);
        Assert.Equal(0, said.ExitCode);
        var orders = folder.Write("again.csv", said.Output);
        using var pieces = JsonDocument.Parse(TagendProgram.Run("check", "--json", orders).Output);
        Assert.Equal(2, pieces.RootElement[0].GetProperty("revision").GetInt32());
        Assert.Equal(60.5, pieces.RootElement[0].GetProperty("finishedLength").GetProperty("in").GetDouble());
        var card = OutsideTool.Run("pdftotext", "-layout", folder["1001-string-card.pdf"], "-").Output;
        Assert.Contains("60 1/2 in", card, StringComparison.Ordinal);
        Assert.Contains("61 1/16", card, StringComparison.Ordinal); // 60.5 + 45 × 0.012 = 61.04, on posts as thick as the pins
    }

    [Theory]
    [InlineData(3, "1001/string:2: finished_length \"20\": 20 in is outside the usual lengths of compound-string, 40 in to 75 in", "finished_length=20")]
    [InlineData(2, "--change \"color=red\": expected a column of an order", "color=red")]
    public void Change_ThatCannotBe_SaysWhyAndPrintsNothing(int exitCode, string sentence, string change)
    {
        using var folder = TagendProgram.NewFolder();
        var said = TagendProgram.Run("recall", Texts("demo.csv")[0], "--change", change, "--card", "--out", folder["out"]);
        Assert.Equal(exitCode, said.ExitCode);
        Assert.Contains(sentence, said.Errors, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder["out"]));
    }

    [Theory]
    [InlineData("%2E%2E%2F%2E%2E%2FX", "../../X")]
    [InlineData("%2FETC%2FX", "/ETC/X")]
    public void Card_OfAForgedTag_ThatNamesAFolder_IsRefused(string order, string named)
    {
        using var folder = TagendProgram.NewFolder();
        var said = TagendProgram.Run("recall", Forged(order), "--card", "--out", folder["out"]);
        Assert.Equal(3, said.ExitCode);
        Assert.Contains($"order \"{named}\": a name has letters", said.Errors, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(folder.Path));
    }

    [Theory]
    [InlineData("NUL", "nul-string-card.pdf")]
    public void Card_OfAForgedTag_StaysInItsFolder(string order, string file)
    {
        using var folder = TagendProgram.NewFolder();
        var said = TagendProgram.Run("recall", Forged(order), "--card", "--out", folder["out"]);
        Assert.Equal((0, ""), (said.ExitCode, said.Errors));
        Assert.Equal([file], Directory.GetFiles(folder["out"]).Select(f => Path.GetFileName(f).ToLowerInvariant()));
        Assert.Single(Directory.GetFileSystemEntries(folder.Path));
    }

    [Fact]
    public void AsOrder_OfATagThatNamesAFormula_IsRefused()
    {
        var said = TagendProgram.Run("recall", Forged("%3D1%2B1"), "--as-order");
        Assert.Equal((3, ""), (said.ExitCode, said.Output));
        Assert.Contains("order \"=1+1\": ", said.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Scanner_AtTheBench_IsAnsweredScanByScanThroughGarbage()
    {
        var texts = Texts("demo.csv");
        using var process = TagendProgram.Start(TagendProgram.Root, "recall", "-", "--posts");
        foreach (var text in texts.Take(3))
        {
            process.StandardInput.Write($"\u0001\u001b[A\n\n{new string('x', 100_000)}\r{text}\t");
            process.StandardInput.Flush();
            var piece = text.Split('*')[2].ToLowerInvariant();
            Assert.StartsWith($"1001 / {piece}, revision 1", NextHeading(process), StringComparison.Ordinal); // before the input ends
        }

        process.StandardInput.Close();
        process.StandardOutput.ReadToEnd();
        Assert.True(process.WaitForExit(TimeSpan.FromSeconds(30)));
        Assert.Equal(0, process.ExitCode);

        static string NextHeading(Process process)
        {
            while (process.StandardOutput.ReadLine() is { } line)
            {
                if (line.Contains("revision", StringComparison.Ordinal))
                {
                    return line;
                }
            }

            return "";
        }
    }

    [Fact]
    public void Scanner_GarbageOnly_IsFour() =>
        Assert.Equal(4, TagendProgram.RunWithInput("hello\nTE1*1\n", "recall", "-").ExitCode);

    /// <summary>A tag of another order, with the check that fits it.</summary>
    private static string Forged(string order)
    {
        var text = Texts("demo.csv")[0];
        var body = text[..text.LastIndexOf("*E", StringComparison.Ordinal)].Replace("*1001*", $"*{order}*", StringComparison.Ordinal);
        return $"{body}*E{System.IO.Hashing.Crc32.HashToUInt32(System.Text.Encoding.ASCII.GetBytes(body["BOWSTRING ".Length..])):X8}";
    }

    /// <summary>The loop tags of a demo, in the file's order.</summary>
    private static List<string> Texts(string orders)
    {
        using var folder = TagendProgram.NewFolder();
        var file = Path.Combine(TagendProgram.Root, "demo-orders", orders);
        TagendProgram.Run("print", file, "--out", folder.Path, "--only", "tags", "--date", "2026-03-14", "--bag-labels", "letter-2x5", "--loop-labels", "letter-2x5", "--preview", "300");
        using var read = JsonDocument.Parse(TagendProgram.Run(["recall", "--json", .. Directory.GetFiles(folder.Path, "*.png")]).Output);
        var all = read.RootElement.EnumerateArray().Select(s => s.GetProperty("text").GetString()!).ToList();
        using var pieces = JsonDocument.Parse(Check(orders));
        return pieces.RootElement.EnumerateArray()
            .Select(p => "BOWSTRING " + $"TE2*{p.GetProperty("order").GetString()}*{p.GetProperty("piece").GetString()}*".ToUpperInvariant().Replace(" ", "%20", StringComparison.Ordinal))
            .Select(start => all.First(t => t.StartsWith(start, StringComparison.Ordinal)))
            .ToList();
    }

    private static string Check(string orders) =>
        TagendProgram.Run("check", Path.Combine(TagendProgram.Root, "demo-orders", orders), "--json", "--date", "2026-03-14").Output;

    /// <summary>Without what an order file's lines decide.</summary>
    private static List<string> Comparable(string check)
    {
        using var pieces = JsonDocument.Parse(check);
        return [.. pieces.RootElement.EnumerateArray().Select(p => string.Join('\n', p.EnumerateObject()
            .Where(field => field.Name is not ("line" or "problems"))
            .Select(field => field.ToString())))];
    }
}
