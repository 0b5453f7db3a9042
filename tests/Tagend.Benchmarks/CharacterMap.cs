using System.Buffers.Binary;

namespace Tagend.Benchmarks;

/// <summary>Writes the table of a font that leads from characters to glyphs.</summary>
/// <remarks>OpenType (ISO/IEC 14496-22), cmap with one subtable of format 12: segmented coverage, all of Unicode.</remarks>
internal static class CharacterMap
{
    private const int HeadLength = 12;
    private const int SubtableHeadLength = 16;
    private const int GroupLength = 12;

    /// <param name="glyphs">In the order of characters: Unicode scalar values.</param>
    public static byte[] Of(IEnumerable<(int Character, ushort Glyph)> glyphs)
    {
        var groups = GroupsOf(glyphs);
        var table = new byte[HeadLength + SubtableHeadLength + (groups.Count * GroupLength)];
        var rest = table.AsSpan();
        Write16(ref rest, 0); // version
        Write16(ref rest, 1); // subtables
        Write16(ref rest, 3); // platform: Windows
        Write16(ref rest, 10); // encoding: all of Unicode
        Write32(ref rest, HeadLength);
        Write16(ref rest, 12); // format
        Write16(ref rest, 0);
        Write32(ref rest, table.Length - HeadLength);
        Write32(ref rest, 0); // language: any
        Write32(ref rest, groups.Count);
        foreach (var (first, last, glyph) in groups)
        {
            Write32(ref rest, first);
            Write32(ref rest, last);
            Write32(ref rest, glyph);
        }

        return table;
    }

    /// <summary>Characters in a row whose glyphs are in a row.</summary>
    private static List<(int First, int Last, int Glyph)> GroupsOf(IEnumerable<(int Character, ushort Glyph)> glyphs)
    {
        var groups = new List<(int First, int Last, int Glyph)>();
        foreach (var (character, glyph) in glyphs)
        {
            if (groups.Count > 0 && groups[^1] is var group && character == group.Last + 1 && glyph == group.Glyph + character - group.First)
            {
                groups[^1] = group with { Last = character };
            }
            else
            {
                groups.Add((character, character, glyph));
            }
        }

        return groups;
    }

    private static void Write16(ref Span<byte> rest, int number)
    {
        BinaryPrimitives.WriteUInt16BigEndian(rest, (ushort)number);
        rest = rest[2..];
    }

    private static void Write32(ref Span<byte> rest, int number)
    {
        BinaryPrimitives.WriteInt32BigEndian(rest, number);
        rest = rest[4..];
    }
}
