using System.Text.Json;
using Tagend.PaperTests.Cli;
using Tagend.Tags;
using Xunit;

namespace Tagend.PaperTests.Tags;

/// <summary>
/// Tags as each version was frozen with, and the specs they carry: these files are never made again. Later programs read
/// each tag to the same values; they may say more, but nothing else.
/// </summary>
public class StoredTagsTests
{
    [Theory]
    [InlineData("version-1.json", 43)]
    [InlineData("version-2.json", 60)]
    public void Recall_EveryStoredTag_IsTheSpecItWas(string file, int count)
    {
        using var stored = Stored(file);
        var tags = stored.RootElement.EnumerateArray().ToList();
        Assert.Equal(count, tags.Count);
        var said = TagendProgram.RunWithInput(
            string.Concat(tags.Select(t => t.GetProperty("text").GetString() + "\n")), "recall", "-", "--json");
        Assert.Equal((0, ""), (said.ExitCode, said.Errors));
        using var read = JsonDocument.Parse(said.Output);
        foreach (var (tag, now) in tags.Zip(read.RootElement.EnumerateArray()))
        {
            Assert.True(Holds(now, tag, out var what), $"{what} of {tag.GetProperty("text")}");
        }
    }

    /// <summary>The newest version: a spec that was read is written with the same letters.</summary>
    [Fact]
    public void Write_EveryStoredPieceOfVersion2_IsItsTextAgain()
    {
        using var stored = Stored("version-2.json");
        foreach (var text in stored.RootElement.EnumerateArray().Select(t => t.GetProperty("text").GetString()!))
        {
            if (TagReader.Read(text) is TagReading.Piece piece && text.StartsWith("BOWSTRING ", StringComparison.Ordinal))
            {
                Assert.Equal(text, TagWriter.Write(piece.Spec));
            }
        }
    }

    private static JsonDocument Stored(string file) =>
        JsonDocument.Parse(File.ReadAllText(Path.Combine(TagendProgram.Root, "tests", "Tagend.PaperTests", "Tags", file)));

    /// <summary>Whether a value has all that an earlier one had.</summary>
    private static bool Holds(JsonElement now, JsonElement then, out string what)
    {
        what = then.ToString();
        if (then.ValueKind == JsonValueKind.Object)
        {
            foreach (var property in then.EnumerateObject())
            {
                if (!now.TryGetProperty(property.Name, out var value) || !Holds(value, property.Value, out what))
                {
                    what = $"{property.Name}: {what}";
                    return false;
                }
            }

            return true;
        }

        if (then.ValueKind != JsonValueKind.Array)
        {
            return JsonElement.DeepEquals(now, then);
        }

        foreach (var (a, b) in now.EnumerateArray().Zip(then.EnumerateArray()))
        {
            if (!Holds(a, b, out what))
            {
                return false;
            }
        }

        return now.GetArrayLength() == then.GetArrayLength();
    }
}
