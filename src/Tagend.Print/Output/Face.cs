using System.Collections.Concurrent;
using System.Globalization;
using System.Text;
using SkiaSharp;
using Tagend.Pdf;

namespace Tagend.Output;

/// <summary>One weight of the type family: widths of its texts and which characters it has.</summary>
public sealed class Face
{
    /// <summary>Texts whose measure is kept; then they are forgotten, and an endless run of orders takes no more memory.</summary>
    private const int Kept = 1 << 12;

    /// <summary>Room for the texts, and for the words, of an order's papers; to grow to it was a tenth of the time that measuring took.</summary>
    internal const int OfAnOrder = 1 << 9;

    private static readonly char[] Spaces = [' ', '\u00A0'];
    private readonly WordShaper _words;
    private readonly ConcurrentDictionary<string, TextMeasure> _measures = new(Environment.ProcessorCount, OfAnOrder, StringComparer.Ordinal);

    private readonly Lazy<SKTypeface> _typeface;
    private int _kept;

    private Face(FontFile file, WordShaper words)
    {
        File = file;
        _words = words;
        _typeface = new(() => SKTypeface.FromData(SKData.Create(file.Data, file.Size)));
    }

    internal FontFile File { get; }

    /// <summary>With all its glyphs; documents have their own, cut to theirs.</summary>
    internal SKTypeface Typeface => _typeface.Value;

    internal int UnitsPerEm => _words.UnitsPerEm;

    /// <summary>Null where it is no font.</summary>
    internal static Face? Of(FontFile file) => WordShaper.Of(file) is { } words ? new Face(file, words) : null;

    /// <summary>Width of a text in points.</summary>
    public float WidthOf(string text, TextStyle style) => WidthOf(Measure(text), style);

    internal float WidthOf(TextMeasure measure, TextStyle style) =>
        (measure.Width * style.Size / UnitsPerEm) + (measure.Glyphs * style.Tracking);

    /// <summary>What layout asks of a text, found out once.</summary>
    internal TextMeasure Measure(string text)
    {
        if (_measures.TryGetValue(text, out var known))
        {
            return known;
        }

        // Counted here: the dictionary itself stops all threads to count.
        if (Interlocked.Increment(ref _kept) > Kept)
        {
            _measures.Clear();
            _kept = 1;
        }

        return _measures[text] = MeasureAnew(text);
    }

    /// <summary>A text as it is measured and drawn. No pair with a space is kerned, so that words stay what they are anywhere.</summary>
    internal ShapedText Shape(string text)
    {
        var glyphs = new List<ushort>(text.Length);
        var places = new List<int>(text.Length);
        var advances = new List<int>(text.Length);
        var width = 0;
        for (var rest = text.AsSpan(); !rest.IsEmpty;)
        {
            var word = NextWord(rest, out var length);
            rest = rest[length..];
            glyphs.AddRange(word.Glyphs);
            advances.AddRange(word.Advances);
            foreach (var place in word.Places)
            {
                places.Add(width + place);
            }

            width += word.Width;
        }

        return new ShapedText([.. glyphs], [.. places], [.. advances], width);
    }

    /// <summary>The word that a text begins with, shaped once; a space is a word of its own.</summary>
    /// <param name="length">Of the word, in characters of the string.</param>
    internal ShapedText NextWord(ReadOnlySpan<char> text, out int length)
    {
        length = FirstWord(text);
        return _words.Shape(text[..length]);
    }

    private TextMeasure MeasureAnew(string text)
    {
        var (width, glyphs) = (0, 0);
        for (var rest = text.AsSpan(); !rest.IsEmpty;)
        {
            var word = NextWord(rest, out var length);
            rest = rest[length..];
            width += word.Width;
            glyphs += word.Glyphs.Length;
        }

        return new TextMeasure(width, glyphs, FirstMissing(text), IsTidy(text));
    }

    private static bool IsTidy(string text) =>
        !text.StartsWith(' ') && !text.Contains('\n') && !text.Contains("  ", StringComparison.Ordinal);

    /// <remarks>A mark that belongs on the letter before it counts: each character is drawn as one glyph.</remarks>
    private Rune? FirstMissing(string text)
    {
        foreach (var rune in text.EnumerateRunes())
        {
            if (!_words.Has(rune.Value) || Rune.GetUnicodeCategory(rune) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark)
            {
                return rune;
            }
        }

        return null;
    }

    /// <summary>Length of the word a text starts with; a space is a word of its own.</summary>
    private static int FirstWord(ReadOnlySpan<char> text) => text.IndexOfAny(Spaces) switch
    {
        < 0 => text.Length,
        0 => 1,
        var space => space,
    };
}
