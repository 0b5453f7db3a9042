using System.Text;

namespace Tagend.Tags;

/// <summary>What becomes of a tag's text where a scanner types as on a US keyboard and the computer reads another one.</summary>
/// <remarks>
/// A scanner that plays keyboard sends places of keys, not letters. Only the characters of the QR alphanumeric set count.
/// The layouts are those of xkeyboard-config (us, de, es, fr); a test holds them against its files.
/// </remarks>
public sealed class ScannerKeyboard
{
    private static readonly ScannerKeyboard[] All =
    [
        new("German", [("Y", "Z"), ("Z", "Y"), ("*", "("), ("+", "`"), ("-", "ß"), ("/", "-"), (":", "Ö"), .. Accents]),
        new("Spanish", [("*", "("), ("+", "¿"), ("-", "'"), ("/", "-"), (":", "Ñ")]),
        new(
            "French",
            [
                ("A", "Q"), ("Q", "A"), ("W", "Z"), ("Z", "W"), ("M", "?"), (":", "M"), ("*", "8"), ("-", ")"), ("/", "!"), (".", ":"),
                ("$", "4"), ("%", "5"), ("1", "&"), ("2", "é"), ("3", "\""), ("4", "'"), ("5", "("), ("6", "-"), ("7", "è"), ("8", "_"),
                ("9", "ç"), ("0", "à"),
            ]),
    ];

    private readonly (string Meant, string Typed)[] _keys;

    private ScannerKeyboard(string name, (string Meant, string Typed)[] keys) => (Name, _keys) = (name, keys);

    /// <summary>The language the computer's keyboard is set to.</summary>
    public string Name { get; }

    /// <summary>The layouts whose slips are undone.</summary>
    public static IReadOnlyList<ScannerKeyboard> Layouts => All;

    /// <summary>On a German keyboard the grave accent waits for a vowel and joins it.</summary>
    private static (string Meant, string Typed)[] Accents =>
        [("+A", "À"), ("+E", "È"), ("+I", "Ì"), ("+O", "Ò"), ("+U", "Ù")];

    /// <summary>What appears where this text is meant.</summary>
    public string Type(string meant) => Replace(meant, k => k.Meant, k => k.Typed);

    /// <summary>What was meant where this text appears.</summary>
    public string Undo(string typed) => Replace(typed, k => k.Typed, k => k.Meant);

    private string Replace(
        string text, Func<(string Meant, string Typed), string> from, Func<(string Meant, string Typed), string> to)
    {
        var result = new StringBuilder(text.Length);
        for (var i = 0; i < text.Length;)
        {
            var key = _keys
                .Where(k => string.CompareOrdinal(text, i, from(k), 0, from(k).Length) == 0)
                .OrderByDescending(k => from(k).Length)
                .FirstOrDefault();
            result.Append(key.Meant is null ? text[i].ToString() : to(key));
            i += key.Meant is null ? 1 : from(key).Length;
        }

        return result.ToString();
    }
}
