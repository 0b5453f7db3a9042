using System.Text;
using Tagend.Problems;

namespace Tagend.Orders;

/// <summary>An order file's bytes as UTF-8 text.</summary>
/// <remarks>
/// UTF-8 with or without a byte order mark, and UTF-16 with one, are read. Anything else is refused in words:
/// guessing an encoding would misspell a customer's name without anybody noticing.
/// </remarks>
internal static class OrderText
{
    /// <returns>Null, with a problem added, where the bytes are no text that is read.</returns>
    public static byte[]? Read(string file, byte[] bytes, List<Problem> problems)
    {
        Problem? problem;
        byte[]? text = null;
        if (bytes.AsSpan().StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]))
        {
            problem = Transcode(file, bytes, isBigEndian: false, out text);
        }
        else if (bytes.AsSpan().StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
        {
            problem = Transcode(file, bytes, isBigEndian: true, out text);
        }
        else
        {
            text = bytes;
            problem = Fault(file, bytes);
        }

        if (problem is null)
        {
            return text;
        }

        problems.Add(problem);
        return null;
    }

    private static Problem? Transcode(string file, byte[] bytes, bool isBigEndian, out byte[]? text)
    {
        try
        {
            var utf16 = new UnicodeEncoding(isBigEndian, byteOrderMark: true, throwOnInvalidBytes: true);
            text = Encoding.UTF8.GetBytes(utf16.GetString(bytes, 2, bytes.Length - 2));
            return Fault(file, text);
        }
        catch (DecoderFallbackException)
        {
            text = null;
            return new Problem(new Place(file), null, OrderWording.NotUtf16);
        }
    }

    private static Problem? Fault(string file, byte[] bytes)
    {
        if (IsWorkbook(bytes))
        {
            return new Problem(new Place(file), null, OrderWording.Workbook);
        }

        var nul = bytes.AsSpan().IndexOf((byte)0);
        if (nul >= 0)
        {
            return new Problem(new Place(file, LineOf(bytes, nul)), null, OrderWording.NotText);
        }

        return FirstInvalid(bytes) is { } at
            ? new Problem(new Place(file, LineOf(bytes, at)), null, OrderWording.NotUtf8(bytes[at]))
            : null;
    }

    /// <summary>A spreadsheet's own formats: a ZIP archive or a compound file.</summary>
    private static bool IsWorkbook(ReadOnlySpan<byte> bytes) =>
        bytes.StartsWith("PK\u0003\u0004"u8) || bytes.StartsWith((ReadOnlySpan<byte>)[0xD0, 0xCF, 0x11, 0xE0]);

    /// <summary>Where the bytes stop being UTF-8; null where they all are.</summary>
    private static int? FirstInvalid(ReadOnlySpan<byte> bytes)
    {
        if (System.Text.Unicode.Utf8.IsValid(bytes))
        {
            return null;
        }

        var at = 0;
        while (Rune.DecodeFromUtf8(bytes[at..], out _, out var used) == System.Buffers.OperationStatus.Done)
        {
            at += used;
        }

        return at;
    }

    private static int LineOf(ReadOnlySpan<byte> bytes, int at)
    {
        var before = bytes[..at];
        var feeds = before.Count((byte)'\n');
        return 1 + (feeds > 0 ? feeds : before.Count((byte)'\r'));
    }
}
