using System.Buffers.Binary;
using System.Collections.Concurrent;
using HarfBuzzSharp;
using Tagend.Pdf;
using Buffer = HarfBuzzSharp.Buffer;

namespace Tagend.Output;

/// <summary>Words of one face as HarfBuzz shapes them: kerned, with figures of one width, each shaped once.</summary>
/// <remarks>
/// A character always has the same glyph, so that a PDF can say which character a glyph stands for: neither ligatures nor
/// forms by context. Inter's <c>tnum</c> would make hyphens as wide as figures too; it is asked for at figures alone.
/// </remarks>
internal sealed class WordShaper
{
    /// <summary>Words kept; then they are forgotten, and an endless run of orders takes no more memory.</summary>
    private const int Kept = 1 << 12;

    private static readonly Tag Tabular = new('t', 'n', 'u', 'm');
    private static readonly Feature[] Always = [Off('c', 'a', 'l', 't'), Off('l', 'i', 'g', 'a'), Off('c', 'l', 'i', 'g')];
    private static readonly Language Language = new("en");

    private readonly ConcurrentDictionary<int, bool> _has = new();
    private readonly ConcurrentDictionary<string, ShapedText> _words = new(Environment.ProcessorCount, Face.OfAnOrder, StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, ShapedText>.AlternateLookup<ReadOnlySpan<char>> _known;
    private readonly Font _font;
    private readonly Buffer _buffer;

    private int _kept;

    /// <summary>For the font and the buffer, which one thread at a time may use.</summary>
    private readonly Lock _lock = new();

    /// <summary>The font's bytes, which are to stay where they are as long as it is used.</summary>
    private readonly FontFile _file;

    private WordShaper(FontFile file, HarfBuzzSharp.Face face)
    {
        (_file, _font, _buffer, UnitsPerEm) = (file, FontOf(face), EmptyBuffer(), face.UnitsPerEm);
        _known = _words.GetAlternateLookup<ReadOnlySpan<char>>();
    }

    public int UnitsPerEm { get; }

    /// <summary>Null where it is no font, or only a part of one.</summary>
    public static WordShaper? Of(FontFile file)
    {
        if (!HasAllTables(file.Bytes))
        {
            return null;
        }

        using var blob = new Blob(file.Data, file.Size, MemoryMode.ReadOnly);
        using var face = new HarfBuzzSharp.Face(blob, 0);
        return face.GlyphCount > 0 ? new WordShaper(file, face) : null;
    }

    public bool Has(int character)
    {
        if (_has.TryGetValue(character, out var has))
        {
            return has;
        }

        lock (_lock)
        {
            return _has[character] = _font.TryGetNominalGlyph(character, out _);
        }
    }

    /// <param name="word">Without spaces, or one space.</param>
    public ShapedText Shape(ReadOnlySpan<char> word)
    {
        if (_known.TryGetValue(word, out var known))
        {
            return known;
        }

        lock (_lock)
        {
            var shaped = ShapeAnew(word);
            if (_kept++ == Kept)
            {
                _words.Clear();
                _kept = 1;
            }

            _words[word.ToString()] = shaped;
            return shaped;
        }
    }

    /// <summary>Whether the tables that a font's head names are within the file: OpenType (ISO/IEC 14496-22), 4.5.1.</summary>
    private static bool HasAllTables(ReadOnlySpan<byte> font)
    {
        const int HeadLength = 12;
        const int RecordLength = 16;
        var records = font.Length < HeadLength ? 0 : BinaryPrimitives.ReadUInt16BigEndian(font[4..]);
        if (records == 0 || font.Length < HeadLength + (records * RecordLength))
        {
            return false;
        }

        for (var record = font[HeadLength..]; records > 0; records--, record = record[RecordLength..])
        {
            if (BinaryPrimitives.ReadUInt32BigEndian(record[8..]) + (long)BinaryPrimitives.ReadUInt32BigEndian(record[12..]) > font.Length)
            {
                return false;
            }
        }

        return true;
    }

    private static Font FontOf(HarfBuzzSharp.Face face)
    {
        var font = new Font(face);
        font.SetScale(face.UnitsPerEm, face.UnitsPerEm);
        return font;
    }

    private static Buffer EmptyBuffer() => new();

    private ShapedText ShapeAnew(ReadOnlySpan<char> word)
    {
        _buffer.ClearContents();
        (_buffer.Direction, _buffer.Language) = (Direction.LeftToRight, Language);
        _buffer.AddUtf16(word);
        _buffer.GuessSegmentProperties();
        _font.Shape(_buffer, FeaturesOf(word));
        GC.KeepAlive(_file);
        var infos = _buffer.GetGlyphInfoSpan();
        var positions = _buffer.GetGlyphPositionSpan();
        var glyphs = new ushort[infos.Length];
        var places = new int[infos.Length];
        var advances = new int[infos.Length];
        var width = 0;
        for (var i = 0; i < infos.Length; i++)
        {
            glyphs[i] = (ushort)infos[i].Codepoint;
            places[i] = width + positions[i].XOffset;
            advances[i] = _font.GetHorizontalGlyphAdvance(infos[i].Codepoint);
            width += positions[i].XAdvance;
        }

        return new ShapedText(glyphs, places, advances, width);
    }

    private static Feature[] FeaturesOf(ReadOnlySpan<char> word)
    {
        if (!word.ContainsAnyInRange('0', '9'))
        {
            return Always;
        }

        var features = new List<Feature>(Always);
        for (var i = 0; i < word.Length; i++)
        {
            if (char.IsAsciiDigit(word[i]))
            {
                features.Add(new Feature(Tabular, 1, (uint)i, (uint)i + 1));
            }
        }

        return [.. features];
    }

    private static Feature Off(char a, char b, char c, char d) => new(new Tag(a, b, c, d), 0);
}
