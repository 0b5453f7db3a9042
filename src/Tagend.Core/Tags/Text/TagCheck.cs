using System.IO.Hashing;
using System.Text;

namespace Tagend.Tags.Text;

/// <summary>The check at the end of a tag text: <c>*E</c> and CRC-32/ISO-HDLC of all before it, eight hexadecimal digits.</summary>
internal static class TagCheck
{
    private const string Mark = "*E";
    private const int Digits = 8;

    public static string Append(string body) => body + Mark + Of(body);

    /// <returns>The text without its check; null where the check is missing or wrong.</returns>
    public static string? Strip(string text)
    {
        var end = text.Length - Mark.Length - Digits;
        return end > 0 && Append(text[..end]) == text ? text[..end] : null;
    }

    private static string Of(string body) =>
        Crc32.HashToUInt32(Encoding.UTF8.GetBytes(body)).ToString("X8", System.Globalization.CultureInfo.InvariantCulture);
}
