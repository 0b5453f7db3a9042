using System.Runtime.InteropServices;
using SkiaSharp;

namespace Tagend.Output;

/// <summary>Cuts a font down to the glyphs of a document, so that a PDF carries no others.</summary>
/// <remarks>
/// HarfBuzz's hb-subset; its native library ships with HarfBuzzSharp, whose managed part does not reach it. The font's own
/// character map knows no tabular figures; the one put in its place says which character each glyph was shaped from.
/// </remarks>
internal static unsafe partial class FontSubset
{
    private const string Library = "libHarfBuzzSharp";
    private const int MemoryModeReadonly = 1;
    private const int Glyphs = 0;
    private const int DroppedTables = 3;
    private const int LayoutFeatureTags = 6;
    private const uint NoHinting = 1;
    private const uint RetainNumbers = 2;
    private const uint NoLayoutClosure = 0x200;
    private const uint CharacterMapTag = 0x636D6170; // cmap

    /// <summary>A typeface with these glyphs only, which keep their numbers.</summary>
    /// <param name="glyphs">By the Unicode scalar value each stands for.</param>
    public static SKTypeface Cut(byte[] font, SortedDictionary<int, ushort> glyphs)
    {
        var map = CharacterMap.Of(glyphs);
        fixed (byte* start = font, mapStart = map)
        {
            var blob = hb_blob_create(start, (uint)font.Length, MemoryModeReadonly, null, null);
            var face = hb_face_create(blob, 0);
            var input = hb_subset_input_create_or_fail();
            foreach (var glyph in glyphs.Values)
            {
                hb_set_add(hb_subset_input_set(input, Glyphs), glyph);
            }

            hb_set_add(hb_subset_input_set(input, DroppedTables), CharacterMapTag);
            hb_set_clear(hb_subset_input_set(input, LayoutFeatureTags));
            hb_subset_input_set_flags(input, NoHinting | RetainNumbers | NoLayoutClosure);
            var cut = hb_subset_or_fail(face, input);
            hb_subset_input_destroy(input);
            hb_face_destroy(face);
            hb_blob_destroy(blob);
            if (cut == 0)
            {
                throw new InvalidOperationException("the font could not be subset");
            }

            var mapBlob = hb_blob_create(mapStart, (uint)map.Length, MemoryModeReadonly, null, null);
            var mapped = hb_face_builder_add_table(cut, CharacterMapTag, mapBlob);
            hb_blob_destroy(mapBlob);
            if (mapped == 0)
            {
                throw new InvalidOperationException("the font takes no character map");
            }

            var result = hb_face_reference_blob(cut);
            var bytes = hb_blob_get_data(result, out var length);
            using var data = SKData.CreateCopy((nint)bytes, length);
            hb_blob_destroy(result);
            hb_face_destroy(cut);
            return SKTypeface.FromData(data);
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
    private static partial nint hb_subset_or_fail(nint face, nint input);
#pragma warning restore IDE1006
}
