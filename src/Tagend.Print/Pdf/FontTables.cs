using System.Buffers.Binary;
using System.Text;
using Tagend.Problems;

namespace Tagend.Pdf;

/// <summary>What a PDF says of a font, from the font's own tables: OpenType (ISO/IEC 14496-22), 4.5 and 5.</summary>
/// <param name="Name">For PostScript; without spaces.</param>
/// <param name="Box">Around all glyphs: left, bottom, right, top. In thousandths of an em, as all that follow.</param>
internal sealed record FontTables(string Name, int UnitsPerEm, int[] Box, int Ascent, int Descent, int CapHeight, int Weight)
{
    private const uint Head = 0x68656164; // head
    private const uint HorizontalHead = 0x68686561; // hhea
    private const uint ForSystems = 0x4F532F32; // OS/2
    private const uint Names = 0x6E616D65; // name

    /// <exception cref="TagendException">The tables are not where the font says they are, or hold no sizes.</exception>
    public static FontTables Of(FontFile font)
    {
        try
        {
            return Read(font);
        }
        catch (Exception e) when (e is ArgumentOutOfRangeException or OverflowException)
        {
            throw FontSubset.Broken();
        }
    }

    /// <summary>Empty where there is none; the font's head says where it is.</summary>
    /// <param name="tag">Its four letters, the first in the highest byte.</param>
    internal static ReadOnlySpan<byte> Table(FontFile font, uint tag)
    {
        const int HeadLength = 12;
        const int RecordLength = 16;
        var file = font.Bytes;
        var records = BinaryPrimitives.ReadUInt16BigEndian(file[4..]);
        for (var i = 0; i < records; i++)
        {
            var record = file[(HeadLength + (i * RecordLength))..];
            if (BinaryPrimitives.ReadUInt32BigEndian(record) == tag)
            {
                return file.Slice(BinaryPrimitives.ReadInt32BigEndian(record[8..]), BinaryPrimitives.ReadInt32BigEndian(record[12..]));
            }
        }

        return [];
    }

    private static FontTables Read(FontFile font)
    {
        var head = Table(font, Head);
        var hhea = Table(font, HorizontalHead);
        var os2 = Table(font, ForSystems);
        var unitsPerEm = BinaryPrimitives.ReadUInt16BigEndian(head[18..]);
        ArgumentOutOfRangeException.ThrowIfZero(unitsPerEm);
        var (ascent, descent) = (Thousandths(hhea, 4), Thousandths(hhea, 6));
        return new FontTables(
            NameIn(Table(font, Names)),
            unitsPerEm,
            [Thousandths(head, 36), Thousandths(head, 38), Thousandths(head, 40), Thousandths(head, 42)],
            ascent,
            descent,
            os2.Length > 89 ? Thousandths(os2, 88) : ascent,
            os2.Length > 5 ? BinaryPrimitives.ReadUInt16BigEndian(os2[4..]) : 400);

        int Thousandths(ReadOnlySpan<byte> table, int at) =>
            (int)Math.Round(BinaryPrimitives.ReadInt16BigEndian(table[at..]) * 1000.0 / unitsPerEm);
    }

    /// <summary>Name 6 of platform 3 (Windows), which is in UTF-16; "Font" where there is none that a PDF could take.</summary>
    private static string NameIn(ReadOnlySpan<byte> table)
    {
        const int RecordLength = 12;
        var names = table.Length < 6 ? 0 : BinaryPrimitives.ReadUInt16BigEndian(table[2..]);
        for (var i = 0; i < names; i++)
        {
            var record = table[(6 + (i * RecordLength))..];
            if (BinaryPrimitives.ReadUInt16BigEndian(record) == 3 && BinaryPrimitives.ReadUInt16BigEndian(record[6..]) == 6)
            {
                var start = BinaryPrimitives.ReadUInt16BigEndian(table[4..]) + BinaryPrimitives.ReadUInt16BigEndian(record[10..]);
                var name = Encoding.BigEndianUnicode.GetString(table.Slice(start, BinaryPrimitives.ReadUInt16BigEndian(record[8..])));
                return name.All(c => char.IsAsciiLetterOrDigit(c) || c == '-') ? name : "Font";
            }
        }

        return "Font";
    }
}
