using System.Text.Json;
using Tagend.PaperTests.Cli;
using Xunit;

namespace Tagend.PaperTests.Tags;

/// <summary>
/// Tags as version 1 was frozen with, and the specs they carry: version-1.json is never made again. Later programs read
/// each of them to the same values; they may say more, but nothing else.
/// </summary>
public class StoredTagsTests
{
    [Fact]
    public void Recall_EveryStoredTag_IsTheSpecItWas()
    {
        using var stored = JsonDocument.Parse(File.ReadAllText(Path.Combine(
            TagendProgram.Root, "tests", "Tagend.PaperTests", "Tags", "version-1.json")));
        var tags = stored.RootElement.EnumerateArray().ToList();
        Assert.Equal(43, tags.Count);
        var said = TagendProgram.RunWithInput(
            string.Concat(tags.Select(t => t.GetProperty("text").GetString() + "\n")), "recall", "-", "--json");
        Assert.Equal((0, ""), (said.ExitCode, said.Errors));
        using var read = JsonDocument.Parse(said.Output);
        foreach (var (tag, now) in tags.Zip(read.RootElement.EnumerateArray()))
        {
            Assert.True(Holds(now, tag, out var what), $"{what} of {tag.GetProperty("text")}");
        }
    }

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
