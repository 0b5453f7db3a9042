using System.Runtime.InteropServices;
using System.Text;
using Tagend.Output;

namespace Tagend.Blocks;

/// <summary>Text within a line, at its distance from the line's start.</summary>
internal sealed record Run(float X, Span Span);

/// <summary>A line of a paragraph. All in points.</summary>
/// <param name="Baseline">From the line's top.</param>
/// <param name="Lead">What stood before the line and was left out at the break: a space, a line end or nothing.</param>
/// <param name="Filled">Summed word by word, without the kerns at spaces: it breaks in less room than this.</param>
internal sealed record Line(IReadOnlyList<Run> Runs, float Width, float Height, float Baseline, string Lead, float Filled);

/// <summary>Breaks text into lines, each as full as it goes.</summary>
internal static class LineBreaker
{
    /// <summary>The lines; null where not even one character fits the width.</summary>
    public static IReadOnlyList<Line>? Lines(IReadOnlyList<Span> spans, Fonts fonts, float width)
    {
        if (Whole(spans, fonts, width) is { } whole)
        {
            return [whole];
        }

        var room = new Room(width, 0);
        var lines = new List<Line>();
        var parts = new List<Span>();
        var filling = new Filling(fonts, spans[0].Style);
        foreach (var word in Words(spans, parts))
        {
            if (word.OnNewLine)
            {
                lines.Add(filling.Close());
                filling.Begin(parts[word.First].Style, "\n");
            }

            var wordParts = CollectionsMarshal.AsSpan(parts)[word.First..];
            var withWord = filling.WidthWith(wordParts, word.AfterSpace);
            if (!filling.IsEmpty && !room.HoldsWidth(withWord))
            {
                lines.Add(filling.Close());
                filling.Begin(wordParts[0].Style, word.AfterSpace ? " " : "");
                withWord = filling.WidthWith(wordParts, word.AfterSpace);
            }

            if (room.HoldsWidth(withWord))
            {
                filling.Add(wordParts, word.AfterSpace, withWord);
                continue;
            }

            foreach (var character in Characters(wordParts))
            {
                var filled = filling.WidthWith([character], false);
                if (!filling.IsEmpty && !room.HoldsWidth(filled))
                {
                    lines.Add(filling.Close());
                    filling.Begin(character.Style, "");
                    filled = filling.WidthWith([character], false);
                }

                if (!room.HoldsWidth(filled))
                {
                    return null;
                }

                filling.Add([character], false, filled);
            }
        }

        lines.Add(filling.Close());
        return lines;
    }

    /// <summary>The only line, where nothing has to be broken or left out and the font has all of it: so it is of most texts.</summary>
    public static Line? Whole(IReadOnlyList<Span> spans, Fonts fonts, float width)
    {
        var runs = new Run[spans.Count];
        var (x, height, baseline) = (0f, 0f, 0f);
        for (var i = 0; i < runs.Length; i++)
        {
            var (text, style) = spans[i];
            if ((runs.Length > 1 && text.Length == 0) || (i > 0 && style == spans[i - 1].Style) || fonts.WidthOfWhole(text, style) is not { } wide)
            {
                return null;
            }

            runs[i] = new Run(x, spans[i]);
            x += wide;
            (height, baseline) = (Math.Max(height, style.LineHeight), Math.Max(baseline, style.BaselineFrom(0)));
        }

        return new Room(width, 0).HoldsWidth(x) && !spans[^1].Text.EndsWith(' ') ? new Line(runs, x, height, baseline, "", x) : null;
    }

    /// <param name="parts">Gets the parts of all words; when a word comes, its own are the last.</param>
    private static IEnumerable<Word> Words(IReadOnlyList<Span> spans, List<Span> parts)
    {
        var first = 0;
        var afterSpace = false;
        var onNewLine = false;
        foreach (var span in spans)
        {
            var start = 0;
            for (var i = 0; i < span.Text.Length; i++)
            {
                var c = span.Text[i];
                if (c == '\n' || (c == ' ' && !HoldsOn(span.Text, i)))
                {
                    EndPart(span, start, i);
                    start = i + 1;
                    if (parts.Count > first || onNewLine)
                    {
                        yield return EndWord(span);
                    }

                    afterSpace = true;
                    onNewLine = c == '\n';
                }
                else if (BreaksAfter(span.Text, i))
                {
                    EndPart(span, start, i + 1);
                    start = i + 1;
                    yield return EndWord(span);
                }
            }

            EndPart(span, start, span.Text.Length);
        }

        if (parts.Count > first || onNewLine)
        {
            yield return EndWord(spans[^1]);
        }

        void EndPart(Span span, int start, int end)
        {
            if (end > start)
            {
                parts.Add(end - start == span.Text.Length ? span : new Span(span.Text[start..end], span.Style));
            }
        }

        Word EndWord(Span span)
        {
            if (parts.Count == first)
            {
                parts.Add(new Span("", span.Style));
            }

            var word = new Word(first, afterSpace && !onNewLine, onNewLine);
            (first, afterSpace, onNewLine) = (parts.Count, false, false);
            return word;
        }
    }

    /// <summary>A space behind which no line may begin, such as the one before a French colon or before a number's unit.</summary>
    private static bool HoldsOn(string text, int at) => Quantity.IsWithin(text, at) ||
        (at + 1 < text.Length && text[at + 1] is ':' or ';' or '!' or '?' or '»' && (at + 2 == text.Length || text[at + 2] is ' ' or '\n'))
        || (at > 0 && text[at - 1] == '«');

    private static bool BreaksAfter(string text, int at) =>
        text[at] == '-' && at > 0 && at + 1 < text.Length && char.IsLetter(text[at - 1]) && char.IsLetter(text[at + 1]);

    private static List<Span> Characters(ReadOnlySpan<Span> word)
    {
        var characters = new List<Span>();
        foreach (var part in word)
        {
            foreach (var rune in part.Text.EnumerateRunes())
            {
                characters.Add(new Span(rune.ToString(), part.Style));
            }
        }

        return characters;
    }

    /// <param name="First">Of its parts, among those of all words.</param>
    private readonly record struct Word(int First, bool AfterSpace, bool OnNewLine);

    /// <summary>A line in the making, one after the other.</summary>
    private sealed class Filling(Fonts fonts, TextStyle style)
    {
        /// <summary>Words and spaces, to be joined where they have one style.</summary>
        private readonly List<Span> _parts = [];
        private readonly StringBuilder _text = new();
        private TextStyle _style = style;
        private string _lead = "";
        private float _width;

        public bool IsEmpty => _parts.Count == 0;

        /// <param name="style">Of a line that stays empty.</param>
        public void Begin(TextStyle style, string lead)
        {
            _parts.Clear();
            (_style, _lead, _width) = (style, lead, 0);
        }

        public float WidthWith(ReadOnlySpan<Span> word, bool afterSpace)
        {
            var space = afterSpace && !IsEmpty ? fonts.WidthOf(" ", _parts[^1].Style) : 0;
            var width = _width + space + Kern(word[0], afterSpace);
            foreach (var part in word)
            {
                width += fonts.WidthOf(part.Text, part.Style);
            }

            return width;
        }

        /// <param name="width">With it: <see cref="WidthWith"/>.</param>
        public void Add(ReadOnlySpan<Span> word, bool afterSpace, float width)
        {
            _width = width;
            if (afterSpace && !IsEmpty)
            {
                _parts.Add(new Span(" ", _parts[^1].Style));
            }

            _parts.AddRange(word);
        }

        public Line Close()
        {
            var runs = new List<Run>(1);
            var (x, height, baseline) = (0f, 0f, 0f);
            for (var i = 0; i < _parts.Count; i++)
            {
                _text.Append(_parts[i].Text);
                if (i + 1 == _parts.Count || _parts[i + 1].Style != _parts[i].Style)
                {
                    var span = new Span(_text.ToString(), _parts[i].Style);
                    _text.Clear();
                    runs.Add(new Run(x, span));
                    x += fonts.WidthOf(span.Text, span.Style);
                    (height, baseline) = (Math.Max(height, span.Style.LineHeight), Math.Max(baseline, span.Style.BaselineFrom(0)));
                }
            }

            return IsEmpty
                ? new Line(runs, x, _style.LineHeight, _style.BaselineFrom(0), _lead, _width)
                : new Line(runs, x, height, baseline, _lead, _width);
        }

        /// <summary>Between a word and the one before it, where no space separates them.</summary>
        private float Kern(Span word, bool afterSpace)
        {
            if (IsEmpty || afterSpace || _parts[^1].Style != word.Style || word.Text.Length == 0)
            {
                return 0;
            }

            Rune.DecodeLastFromUtf16(_parts[^1].Text, out var last, out _);
            Rune.DecodeFromUtf16(word.Text, out var first, out _);
            var style = word.Style;
            return fonts.WidthOf($"{last}{first}", style) - fonts.WidthOf($"{last}", style) - fonts.WidthOf($"{first}", style);
        }
    }
}
