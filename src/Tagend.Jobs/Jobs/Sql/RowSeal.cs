using System.Globalization;
using System.IO.Hashing;
using System.Text;

namespace Tagend.Jobs.Sql;

/// <summary>The check of a row, kept beside its values: CRC-32/ISO-HDLC of them all, so that no flipped bit is taken for a value.</summary>
internal static class RowSeal
{
    /// <summary>Between two values; no value has it.</summary>
    private const char Separator = '\u001F';

    /// <param name="values">Texts and numbers, in the order of the columns.</param>
    public static long Of(IEnumerable<object?> values)
    {
        var text = new StringBuilder();
        foreach (var value in values)
        {
            text.Append(Convert.ToString(value, CultureInfo.InvariantCulture)).Append(Separator);
        }

        return Crc32.HashToUInt32(Encoding.UTF8.GetBytes(text.ToString()));
    }
}
