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
    private const int MemoryModeDuplicate = 0;
    private const int MemoryModeReadonly = 1;
    private const int Glyphs = 0;
    private const int DroppedTables = 3;
    private const int LayoutFeatureTags = 6;
    private const uint NoHinting = 1;
    private const uint NoLayoutClosure = 0x200;
    private const uint CharacterMapTag = 0x636D6170; // cmap

    /// <summary>A typeface with these glyphs only, and the numbers they have in it: small ones take less room in a PDF.</summary>
    /// <param name="glyphs">By the Unicode scalar value each stands for.</param>
    public static (SKTypeface Typeface, Dictionary<ushort, ushort> Numbers) Cut(SKData font, SortedDictionary<int, ushort> glyphs)
    {
        var blob = hb_blob_create((byte*)font.Data, (uint)font.Size, MemoryModeReadonly, null, null);
        var face = hb_face_create(blob, 0);
        var input = hb_subset_input_create_or_fail();
        foreach (var glyph in glyphs.Values)
        {
            hb_set_add(hb_subset_input_set(input, Glyphs), glyph);
        }

        hb_set_add(hb_subset_input_set(input, DroppedTables), CharacterMapTag);
        hb_set_clear(hb_subset_input_set(input, LayoutFeatureTags));
        hb_subset_input_set_flags(input, NoHinting | NoLayoutClosure);
        var plan = hb_subset_plan_create_or_fail(face, input);
        var cut = plan == 0 ? 0 : hb_subset_plan_execute_or_fail(plan);
        if (cut == 0)
        {
            throw new InvalidOperationException("the font could not be subset");
        }

        var toNew = hb_subset_plan_old_to_new_glyph_mapping(plan);
        var numbers = glyphs.Values.Distinct().ToDictionary(g => g, g => (ushort)hb_map_get(toNew, g));
        hb_subset_plan_destroy(plan);
        hb_subset_input_destroy(input);
        hb_face_destroy(face);
        hb_blob_destroy(blob);
        AddCharacterMap(cut, CharacterMap.Of(glyphs.Select(g => (g.Key, numbers[g.Value]))));
        var result = hb_face_reference_blob(cut);
        var bytes = hb_blob_get_data(result, out var length);
        using var data = SKData.CreateCopy((nint)bytes, length);
        hb_blob_destroy(result);
        hb_face_destroy(cut);
        return (SKTypeface.FromData(data), numbers);
    }

    private static void AddCharacterMap(nint face, byte[] map)
    {
        fixed (byte* start = map)
        {
            var blob = hb_blob_create(start, (uint)map.Length, MemoryModeDuplicate, null, null);
            var isAdded = hb_face_builder_add_table(face, CharacterMapTag, blob);
            hb_blob_destroy(blob);
            if (isAdded == 0)
            {
                throw new InvalidOperationException("the font takes no character map");
            }
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
    private static partial nint hb_subset_plan_create_or_fail(nint face, nint input);

    [LibraryImport(Library)]
    private static partial nint hb_subset_plan_execute_or_fail(nint plan);

    [LibraryImport(Library)]
    private static partial nint hb_subset_plan_old_to_new_glyph_mapping(nint plan);

    [LibraryImport(Library)]
    private static partial void hb_subset_plan_destroy(nint plan);

    [LibraryImport(Library)]
    private static partial uint hb_map_get(nint map, uint key);
#pragma warning restore IDE1006
}
