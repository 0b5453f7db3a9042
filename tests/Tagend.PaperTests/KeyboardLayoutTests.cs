using System.Text.RegularExpressions;
using Tagend.Tags;
using Xunit;

namespace Tagend.PaperTests;

/// <summary>Keyboards as xkeyboard-config describes them (package xkb-data).</summary>
public class KeyboardLayoutTests
{
    private const string Folder = "/usr/share/X11/xkb/symbols";
    private const string TagCharacters = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ$%*+-./:";

    private static readonly Dictionary<string, string> Symbols = new()
    {
        ["asterisk"] = "*",
        ["plus"] = "+",
        ["minus"] = "-",
        ["slash"] = "/",
        ["period"] = ".",
        ["colon"] = ":",
        ["percent"] = "%",
        ["dollar"] = "$",
        ["parenleft"] = "(",
        ["parenright"] = ")",
        ["question"] = "?",
        ["exclam"] = "!",
        ["ampersand"] = "&",
        ["quotedbl"] = "\"",
        ["apostrophe"] = "'",
        ["underscore"] = "_",
        ["ssharp"] = "ß",
        ["Odiaeresis"] = "Ö",
        ["Ntilde"] = "Ñ",
        ["questiondown"] = "¿",
        ["dead_grave"] = "`",
        ["eacute"] = "é",
        ["egrave"] = "è",
        ["agrave"] = "à",
        ["ccedilla"] = "ç",
    };

    [Theory]
    [InlineData("German", "de")]
    [InlineData("Spanish", "es")]
    [InlineData("French", "fr")]
    public void Type_EveryCharacterOfTags_IsWhatTheLayoutHasAtTheKey(string name, string layout)
    {
        Assert.SkipUnless(Directory.Exists(Folder), "xkb-data is not installed");
        var keyboard = ScannerKeyboard.Layouts.Single(k => k.Name == name);
        var (us, other) = (Keys("us", "basic"), Keys(layout, "basic"));
        foreach (var character in TagCharacters.Select(c => c.ToString()))
        {
            var (key, level) = us.SelectMany(k => k.Value.Select((symbol, i) => (symbol, k.Key, i)))
                .Where(k => k.symbol == character && k.i < 2)
                .Select(k => (k.Key, k.i))
                .First();
            Assert.Equal((character, other[key][level]), (character, keyboard.Type(character)));
        }
    }

    /// <summary>What a section of a layout puts on each key, by level: plain, shift, …; later lines win.</summary>
    private static Dictionary<string, string[]> Keys(string file, string section)
    {
        var text = Regex.Replace(File.ReadAllText(Path.Combine(Folder, file)), "//.*", "");
        var body = Regex.Match(text, $"xkb_symbols\\s+\"{Regex.Escape(section)}\"\\s*\\{{(?<body>.*?)^\\}};", RegexOptions.Singleline | RegexOptions.Multiline);
        Assert.True(body.Success, $"{file}({section})");
        var keys = new Dictionary<string, string[]>();
        const string Lines =
            "include \"(?<file>\\w+)(\\((?<section>[\\w-]+)\\))?\"|key\\s*<(?<key>\\w+)>\\s*\\{(?:\\s*type\\[Group1\\]\\s*=\\s*\"[^\"]*\"\\s*,)?\\s*(?:symbols\\[Group1\\]\\s*=\\s*)?\\[(?<symbols>[^\\]]*)\\]";
        foreach (Match line in Regex.Matches(body.Groups["body"].Value, Lines))
        {
            if (line.Groups["file"].Success)
            {
                foreach (var key in Keys(line.Groups["file"].Value, line.Groups["section"].Success ? line.Groups["section"].Value : "basic"))
                {
                    keys[key.Key] = key.Value;
                }
            }
            else
            {
                keys[line.Groups["key"].Value] = [.. line.Groups["symbols"].Value.Split(',').Select(s => Symbols.GetValueOrDefault(s.Trim(), s.Trim()))];
            }
        }

        return keys;
    }
}
