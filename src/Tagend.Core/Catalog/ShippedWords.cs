using System.Collections.Concurrent;

namespace Tagend.Catalog;

/// <summary>The words that came with the program: what a shop's own file of an earlier version does not have yet.</summary>
internal static class ShippedWords
{
    private const string English = "en";

    private static readonly ConcurrentDictionary<string, IReadOnlyDictionary<string, string>> Languages = new();

    /// <summary>A word's text in a language; in English where the program does not come with that language.</summary>
    public static string TextOf(PaperWord word, string language)
    {
        var key = PaperWords.KeyOf(word);
        return Languages.GetOrAdd(language, Read).GetValueOrDefault(key) ?? Languages.GetOrAdd(English, Read)[key];
    }

    /// <summary>All texts of a language by their keys; none where the program does not come with it.</summary>
    private static Dictionary<string, string> Read(string language)
    {
        using var stream = typeof(ShippedWords).Assembly.GetManifestResourceStream($"words/{language}.toml");
        if (stream is null)
        {
            return [];
        }

        using var text = new StreamReader(stream);
        var words = TomlFile.Parse(text.ReadToEnd(), $"{language}.toml", [])!.Section("words")!;
        return words.Keys.ToDictionary(k => k, words.Text);
    }
}
