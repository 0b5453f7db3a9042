using System.Globalization;
using System.IO.Hashing;
using System.Text;

namespace Tagend.Pdf;

/// <summary>A font of a document: its glyphs get codes as they are first drawn, and in the end it is cut to them.</summary>
/// <remarks>
/// ISO 32000-1, 9.7: a composite font of two-byte codes (Identity-H) that are the glyphs' numbers in the cut TrueType file,
/// with a map from codes to Unicode (9.10.3).
/// </remarks>
internal sealed class PdfFont(FontFile file)
{
    private const int Embolden = 50; // StemV of regular type; no viewer that has the font itself asks for it
    private readonly FontTables _tables = FontTables.Of(file);
    private readonly List<(ushort Glyph, int Character, int Advance)> _used = [];
    private ushort[] _codes = new ushort[512];

    /// <param name="character">That the glyph stands for: a Unicode scalar value.</param>
    /// <param name="advance">In units of the font.</param>
    public int CodeOf(ushort glyph, int character, int advance)
    {
        if (glyph == 0)
        {
            throw new InvalidOperationException($"the font has no U+{character:X4}: layout should have said so");
        }

        if (glyph >= _codes.Length)
        {
            Array.Resize(ref _codes, Math.Max(glyph + 1, _codes.Length * 2));
        }

        if (_codes[glyph] == 0)
        {
            _used.Add((glyph, character, advance));
            _codes[glyph] = (ushort)_used.Count;
        }

        return _codes[glyph];
    }

    /// <summary>How far a glyph takes the text on, as viewers reckon it: in whole thousandths of an em.</summary>
    public int Width(int advance) => (int)Math.Round(advance * 1000.0 / _tables.UnitsPerEm);

    /// <summary>Writes the font and what belongs to it.</summary>
    public void Write(PdfObjects objects, int number)
    {
        var (descendant, descriptor, cutFile, unicode) = (objects.Reserve(), objects.Reserve(), objects.Reserve(), objects.Reserve());
        var cut = FontSubset.Cut(file, [.. _used.Select(u => u.Glyph)]);
        var name = Encoding.ASCII.GetBytes($"{Tag(cut)}+{_tables.Name} ");
        var buffer = new PdfBuffer();
        objects.Add(number, buffer.Add("<</Type/Font/Subtype/Type0/BaseFont/"u8).Add(name).Add("/Encoding/Identity-H/DescendantFonts["u8)
            .Reference(descendant).Add("]/ToUnicode "u8).Reference(unicode).Add(">>"u8));

        buffer.Clear();
        buffer.Add("<</Type/Font/Subtype/CIDFontType2/BaseFont/"u8).Add(name)
            .Add("/CIDSystemInfo<</Registry(Adobe)/Ordering(Identity)/Supplement 0>>/CIDToGIDMap/Identity/FontDescriptor "u8)
            .Reference(descriptor).Add("/W[1["u8);
        foreach (var (_, _, advance) in _used)
        {
            buffer.Add(Width(advance));
        }

        objects.Add(descendant, buffer.Add("]]>>"u8));

        buffer.Clear();
        const int Symbolic = 4; // of characters other than those of standard Latin: table 123
        buffer.Add("<</Type/FontDescriptor/FontName/"u8).Add(name).Add("/Flags "u8).Add(Symbolic).Add("/FontBBox["u8);
        foreach (var edge in _tables.Box)
        {
            buffer.Add(edge);
        }

        objects.Add(descriptor, buffer.Add("]/ItalicAngle 0/Ascent "u8).Add(_tables.Ascent).Add("/Descent "u8).Add(_tables.Descent)
            .Add("/CapHeight "u8).Add(_tables.CapHeight).Add("/StemV "u8).Add(_tables.Weight * Embolden / 400)
            .Add("/FontFile2 "u8).Reference(cutFile).Add(">>"u8));

        buffer.Clear();
        objects.AddStream(cutFile, buffer.Add("/Length1 "u8).Add(cut.Length).Bytes, cut);
        objects.AddStream(unicode, [], Encoding.ASCII.GetBytes(ToUnicode()));
    }

    /// <summary>Six letters that differ for each selection of glyphs: 9.6.4.</summary>
    private static string Tag(byte[] cut)
    {
        var hash = XxHash64.HashToUInt64(cut);
        return string.Create(6, hash, (letters, rest) =>
        {
            for (var i = 0; i < letters.Length; i++)
            {
                (rest, var letter) = Math.DivRem(rest, 26);
                letters[i] = (char)('A' + letter);
            }
        });
    }

    private string ToUnicode()
    {
        const int MostInABlock = 100;
        var map = new StringBuilder(
            "/CIDInit/ProcSet findresource begin 12 dict begin begincmap/CIDSystemInfo<</Registry(Adobe)/Ordering(UCS)/Supplement 0>>def\n"
            + "/CMapName/Adobe-Identity-UCS def/CMapType 2 def 1 begincodespacerange<0000><FFFF>endcodespacerange\n");
        foreach (var (block, used) in _used.Chunk(MostInABlock).Index())
        {
            map.Append(CultureInfo.InvariantCulture, $"{used.Length} beginbfchar\n");
            foreach (var (i, (_, character, _)) in used.Index())
            {
                var text = Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(char.ConvertFromUtf32(character)));
                map.Append(CultureInfo.InvariantCulture, $"<{(block * MostInABlock) + i + 1:X4}><{text}>\n");
            }

            map.Append("endbfchar\n");
        }

        return map.Append("endcmap CMapName currentdict/CMap defineresource pop end end").ToString();
    }
}
