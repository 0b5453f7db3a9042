using System.Text;

namespace Tagend.Qr.Read;

/// <summary>The character sets of byte segments: those that are named, and the one that is meant where none is.</summary>
internal static class CharacterSets
{
    private static readonly UTF8Encoding StrictUtf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Shift JIS as Windows extends it, with the characters that Japanese text is written in today.</summary>
    public static Encoding ShiftJis { get; } = Page(932);

    /// <summary>The character set of an assignment number: AIM Inc., Extended Channel Interpretations, part 3, register.</summary>
    /// <returns>Null where the number stands for none that is known.</returns>
    public static Encoding? OfAssignment(int number) => number switch
    {
        0 or 2 => Page(437),
        1 or 3 => Encoding.Latin1,
        >= 4 and <= 11 => Page(28588 + number),
        13 => Page(874),
        15 => Page(28603),
        17 => Page(28605),
        20 => ShiftJis,
        >= 21 and <= 24 => Page(number switch { 21 => 1250, 22 => 1251, 23 => 1252, _ => 1256 }),
        25 => Encoding.BigEndianUnicode,
        26 => Encoding.UTF8,
        27 or 170 => Encoding.ASCII,
        28 => Page(950),
        29 => Page(936),
        30 => Page(51949),
        32 => Page(54936),
        _ => null,
    };

    /// <summary>
    /// The set of bytes without an assignment: ISO/IEC 8859-1 by ISO/IEC 18004:2015, 7.3.5, but most encoders write UTF-8,
    /// and Japanese ones Shift JIS.
    /// </summary>
    public static Encoding Likeliest(byte[] bytes)
    {
        if (IsUtf8(bytes))
        {
            return Encoding.UTF8;
        }

        // 0x80 to 0x9F are control characters in ISO/IEC 8859-1, and there are none in a text: Shift JIS or Windows has letters there.
        return !Array.Exists(bytes, b => b is >= 0x80 and < 0xA0) ? Encoding.Latin1
            : IsShiftJis(bytes) && LongestRunOfPairs(bytes) > 1 ? ShiftJis
            : Page(1252);
    }

    /// <summary>Whether bytes are single characters and whole pairs: JIS X 0208:1997, annex 1.</summary>
    public static bool IsShiftJis(byte[] bytes)
    {
        for (var i = 0; i < bytes.Length; i++)
        {
            if (IsLead(bytes[i]))
            {
                if (++i == bytes.Length || bytes[i] is < 0x40 or 0x7F or > 0xFC)
                {
                    return false;
                }
            }
            else if (bytes[i] is 0x80 or 0xA0 or >= 0xFD)
            {
                return false;
            }
        }

        return true;
    }

    private static bool IsLead(byte value) => value is (>= 0x81 and <= 0x9F) or (>= 0xE0 and <= 0xFC);

    private static int LongestRunOfPairs(byte[] bytes)
    {
        var (longest, run) = (0, 0);
        for (var i = 0; i < bytes.Length; i++)
        {
            var isPair = IsLead(bytes[i]);
            i += isPair ? 1 : 0;
            run = isPair ? run + 1 : 0;
            longest = Math.Max(longest, run);
        }

        return longest;
    }

    private static bool IsUtf8(byte[] bytes)
    {
        try
        {
            StrictUtf8.GetCharCount(bytes);
            return true;
        }
        catch (DecoderFallbackException)
        {
            return false;
        }
    }

    private static Encoding Page(int codePage) => CodePagesEncodingProvider.Instance.GetEncoding(codePage)!;
}
