using System.Buffers;
using System.Globalization;
using System.IO.Hashing;
using System.Text;

namespace Tagend.Jobs.Sql;

/// <summary>The check of a row, kept beside its values: CRC-32/ISO-HDLC of them all, so that no flipped bit is taken for a value.</summary>
internal static class RowSeal
{
    /// <summary>Between two values; no value has it.</summary>
    private const char Separator = '\u001F';

    [ThreadStatic]
    private static ArrayBufferWriter<byte>? _kept;

    /// <param name="values">Texts and numbers, in the order of the columns.</param>
    public static long Of(IEnumerable<object?> values)
    {
        var bytes = _kept ??= new ArrayBufferWriter<byte>();
        bytes.ResetWrittenCount();
        foreach (var value in values)
        {
            Encoding.UTF8.GetBytes(value as string ?? Convert.ToString(value, CultureInfo.InvariantCulture) ?? "", bytes);
            bytes.Write([(byte)Separator]);
        }

        return Crc32.HashToUInt32(bytes.WrittenSpan);
    }
}
