using System.Runtime.InteropServices;
using Tagend.Problems;

namespace Tagend.Pdf;

/// <summary>Cuts a font down to the glyphs of a document, so that a PDF carries no others.</summary>
/// <remarks>HarfBuzz's hb-subset; its native library ships with HarfBuzzSharp, whose managed part does not reach it.</remarks>
internal static unsafe partial class FontSubset
{
    private const string Library = "libHarfBuzzSharp";
    private const int MemoryModeDuplicate = 0;
    private const int MemoryModeReadonly = 1;
    private const int Glyphs = 0;
    private const int DroppedTables = 3;
    private const int LayoutFeatureTags = 6;
    private const uint NoHinting = 1;
    private const uint NoLayoutClosure = 0x200;
    private const uint CharacterMapTag = 0x636D6170; // cmap

    /// <summary>Tables that a PDF needs, ISO 32000-1, 9.9: glyf, loca, head, hhea, hmtx, maxp.</summary>
    private static readonly uint[] Needed = [0x676C7966, 0x6C6F6361, 0x68656164, 0x68686561, 0x686D7478, 0x6D617870];

    /// <summary>The font's file with these glyphs only, numbered from 1 as they come.</summary>
    /// <exception cref="TagendException">The font is damaged.</exception>
    /// <param name="characters">The table that leads from characters to glyphs; a PDF that numbers its glyphs needs none.</param>
    public static byte[] Cut(FontFile font, IReadOnlyList<ushort> glyphs, byte[]? characters = null)
    {
        var face = characters is null ? FaceOfNeeded(font) : FaceOf(font);
        var input = hb_subset_input_create_or_fail();
        var (kept, numbers) = (hb_subset_input_set(input, Glyphs), hb_subset_input_old_to_new_glyph_mapping(input));
        for (var i = 0; i < glyphs.Count; i++)
        {
            hb_set_add(kept, glyphs[i]);
            hb_map_set(numbers, glyphs[i], (uint)i + 1);
        }

        hb_set_add(hb_subset_input_set(input, DroppedTables), CharacterMapTag);
        hb_set_clear(hb_subset_input_set(input, LayoutFeatureTags));
        hb_subset_input_set_flags(input, NoHinting | NoLayoutClosure);
        var cut = hb_subset_or_fail(face, input);
        hb_subset_input_destroy(input);
        hb_face_destroy(face);
        if (cut == 0)
        {
            throw Broken();
        }

        if (characters is not null)
        {
            AddCharacterMap(cut, characters);
        }

        var result = hb_face_reference_blob(cut);
        var bytes = new ReadOnlySpan<byte>(hb_blob_get_data(result, out var length), (int)length).ToArray();
        hb_blob_destroy(result);
        hb_face_destroy(cut);
        return bytes;
    }

    /// <summary>A font that can be measured and drawn may still have tables that cannot be cut.</summary>
    internal static TagendException Broken() => new("a font of the papers is damaged: put back templates/fonts as it was shipped");

    private static nint FaceOf(FontFile font)
    {
        var blob = hb_blob_create((byte*)font.Data, (uint)font.Size, MemoryModeReadonly, null, null);
        var face = hb_face_create(blob, 0);
        hb_blob_destroy(blob);
        return face;
    }

    /// <summary>Of a face with all tables HarfBuzz looks through its characters, whether they are kept or not.</summary>
    private static nint FaceOfNeeded(FontFile font)
    {
        var face = hb_face_builder_create();
        foreach (var tag in Needed)
        {
            var table = FontTables.Table(font, tag);
            fixed (byte* start = table) // of a file that is mapped, and stays where it is
            {
                AddTable(face, tag, start, table.Length, MemoryModeReadonly);
            }
        }

        return face;
    }

    private static void AddCharacterMap(nint face, byte[] map)
    {
        fixed (byte* start = map)
        {
            AddTable(face, CharacterMapTag, start, map.Length, MemoryModeDuplicate);
        }
    }

    private static void AddTable(nint face, uint tag, byte* start, int length, int mode)
    {
        var blob = hb_blob_create(start, (uint)length, mode, null, null);
        var isAdded = hb_face_builder_add_table(face, tag, blob);
        hb_blob_destroy(blob);
        if (isAdded == 0)
        {
            throw Broken();
        }
    }

#pragma warning disable IDE1006 // the names are HarfBuzz's
    [LibraryImport(Library)]
    private static partial nint hb_blob_create(byte* data, uint length, int mode, void* userData, void* destroy);

    [LibraryImport(Library)]
    private static partial void hb_blob_destroy(nint blob);

    [LibraryImport(Library)]
    private static partial byte* hb_blob_get_data(nint blob, out uint length);

    [LibraryImport(Library)]
    private static partial nint hb_face_create(nint blob, uint index);

    [LibraryImport(Library)]
    private static partial void hb_face_destroy(nint face);

    [LibraryImport(Library)]
    private static partial nint hb_face_reference_blob(nint face);

    [LibraryImport(Library)]
    private static partial nint hb_face_builder_create();

    [LibraryImport(Library)]
    private static partial int hb_face_builder_add_table(nint face, uint tag, nint blob);

    [LibraryImport(Library)]
    private static partial void hb_set_add(nint set, uint codepoint);

    [LibraryImport(Library)]
    private static partial void hb_set_clear(nint set);

    [LibraryImport(Library)]
    private static partial nint hb_subset_input_create_or_fail();

    [LibraryImport(Library)]
    private static partial void hb_subset_input_destroy(nint input);

    [LibraryImport(Library)]
    private static partial nint hb_subset_input_set(nint input, int kind);

    [LibraryImport(Library)]
    private static partial void hb_subset_input_set_flags(nint input, uint flags);

    [LibraryImport(Library)]
    private static partial nint hb_subset_input_old_to_new_glyph_mapping(nint input);

    [LibraryImport(Library)]
    private static partial nint hb_subset_or_fail(nint face, nint input);

    [LibraryImport(Library)]
    private static partial void hb_map_set(nint map, uint key, uint value);
#pragma warning restore IDE1006
}
