using System.Globalization;
using System.Text;

namespace Tagend.Problems;

/// <summary>
/// Text from outside, as it may be shown. What cannot be seen (control characters, marks that turn the direction of writing,
/// ends of lines and paragraphs) makes a terminal do things, or a name look like another.
/// </summary>
public static class ShownText
{
    /// <summary>Whether every character can be seen, spaces among them.</summary>
    public static bool IsShown(string text)
    {
        if (!text.AsSpan().ContainsAnyExceptInRange(' ', '~')) // as nearly all of an order file's cells
        {
            return true;
        }

        foreach (var rune in text.EnumerateRunes())
        {
            if (!IsShown(rune))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Neither a control character, nor one that only changes how others are shown (The Unicode Standard, general categories Cc, Cf, Zl, Zp).</summary>
    public static bool IsShown(Rune c) => c.Value is >= ' ' and < 0x7F || Rune.GetUnicodeCategory(c)
        is not (UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator);

    /// <summary>The text with the number of each character in place of what cannot be seen, such as <c>\u001B</c>.</summary>
    /// <param name="kept">Characters that stay as they are all the same.</param>
    public static string Of(string text, string kept = "") => IsShown(text) ? text : Of(text.AsSpan(), kept);

    /// <summary>As for a whole text.</summary>
    public static string Of(ReadOnlySpan<char> text, string kept)
    {
        var shown = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            if (IsShown(rune) || (rune.IsBmp && kept.Contains((char)rune.Value, StringComparison.Ordinal)))
            {
                shown.Append(rune);
            }
            else
            {
                shown.Append(CultureInfo.InvariantCulture, $"\\u{rune.Value:X4}");
            }
        }

        return shown.ToString();
    }
}
