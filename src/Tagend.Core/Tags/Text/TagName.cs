using System.Text;
using Tagend.Problems;

namespace Tagend.Tags.Text;

/// <summary>Names in the QR alphanumeric set: capitals; all other characters percent-encoded (RFC 3986, UTF-8).</summary>
/// <remarks>Names differ by more than case, so writing them in capitals loses nothing.</remarks>
internal static class TagName
{
    private const string Plain = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-.";

    public static string Escape(string name)
    {
        var escaped = new StringBuilder(name.Length);
        Span<byte> bytes = stackalloc byte[4];
        foreach (var rune in name.EnumerateRunes())
        {
            var capital = Rune.ToUpperInvariant(rune);
            if (capital.IsAscii && Plain.Contains((char)capital.Value))
            {
                escaped.Append((char)capital.Value);
                continue;
            }

            foreach (var part in bytes[..rune.EncodeToUtf8(bytes)])
            {
                escaped.Append('%').Append(part.ToString("X2", System.Globalization.CultureInfo.InvariantCulture));
            }
        }

        return escaped.ToString();
    }

    /// <returns>The name in capitals; null where a character is not escaped or cannot be seen, or an escape is broken.</returns>
    public static string? Unescape(ReadOnlySpan<char> escaped)
    {
        var bytes = new List<byte>(escaped.Length);
        for (var i = 0; i < escaped.Length; i++)
        {
            if (Plain.Contains(escaped[i]))
            {
                bytes.Add((byte)escaped[i]);
            }
            else if (escaped[i] == '%' && i + 2 < escaped.Length && byte.TryParse(
                escaped.Slice(i + 1, 2),
                System.Globalization.NumberStyles.AllowHexSpecifier,
                System.Globalization.CultureInfo.InvariantCulture,
                out var part))
            {
                bytes.Add(part);
                i += 2;
            }
            else
            {
                return null;
            }
        }

        var name = bytes.ToArray();
        return System.Text.Unicode.Utf8.IsValid(name) && Encoding.UTF8.GetString(name) is var text && ShownText.IsShown(text) ? text : null;
    }
}
