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
        var filling = new Filling(fonts, spans[0].Style);
        foreach (var word in Words(spans))
        {
            if (word.OnNewLine)
            {
                lines.Add(filling.Close());
                filling = new Filling(fonts, word.Parts[0].Style) { Lead = "\n" };
            }

            if (!filling.IsEmpty && !room.HoldsWidth(filling.WidthWith(word)))
            {
                lines.Add(filling.Close());
                filling = new Filling(fonts, word.Parts[0].Style) { Lead = word.AfterSpace ? " " : "" };
            }

            if (filling.WidthWith(word) is var withWord && room.HoldsWidth(withWord))
            {
                filling.Add(word, withWord);
                continue;
            }

            foreach (var character in Characters(word))
            {
                var filled = filling.WidthWith(character);
                if (!filling.IsEmpty && !room.HoldsWidth(filled))
                {
                    lines.Add(filling.Close());
                    filling = new Filling(fonts, character.Parts[0].Style);
                    filled = filling.WidthWith(character);
                }

                if (!room.HoldsWidth(filled))
                {
                    return null;
                }

                filling.Add(character, filled);
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

    private static IEnumerable<Word> Words(IReadOnlyList<Span> spans)
    {
        var parts = new List<Span>();
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
                    if (parts.Count > 0 || onNewLine)
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

        if (parts.Count > 0 || onNewLine)
        {
            yield return EndWord(spans[^1]);
        }

        void EndPart(Span span, int start, int end)
        {
            if (end > start)
            {
                parts.Add(span with { Text = span.Text[start..end] });
            }
        }

        Word EndWord(Span span)
        {
            var word = new Word(parts.Count > 0 ? [.. parts] : [new Span("", span.Style)], afterSpace && !onNewLine, onNewLine);
            parts.Clear();
            afterSpace = false;
            onNewLine = false;
            return word;
        }
    }

    /// <summary>A space behind which no line may begin, such as the one before a French colon or before a number's unit.</summary>
    private static bool HoldsOn(string text, int at) => Quantity.IsWithin(text, at) ||
        (at + 1 < text.Length && text[at + 1] is ':' or ';' or '!' or '?' or '»' && (at + 2 == text.Length || text[at + 2] is ' ' or '\n'))
        || (at > 0 && text[at - 1] == '«');

    private static bool BreaksAfter(string text, int at) =>
        text[at] == '-' && at > 0 && at + 1 < text.Length && char.IsLetter(text[at - 1]) && char.IsLetter(text[at + 1]);

    private static IEnumerable<Word> Characters(Word word) =>
        from part in word.Parts
        from rune in part.Text.EnumerateRunes()
        select new Word([part with { Text = rune.ToString() }], false, false);

    private sealed record Word(Span[] Parts, bool AfterSpace, bool OnNewLine);

    private sealed class Filling(Fonts fonts, TextStyle style)
    {
        /// <summary>Words and spaces, to be joined where they have one style.</summary>
        private readonly List<Span> _parts = [];
        private float _width;

        public string Lead { get; init; } = "";

        public bool IsEmpty => _parts.Count == 0;

        public float WidthWith(Word word)
        {
            var width = _width + Space(word) + Kern(word);
            foreach (var part in word.Parts)
            {
                width += fonts.WidthOf(part.Text, part.Style);
            }

            return width;
        }

        /// <param name="width">With it: <see cref="WidthWith"/>.</param>
        public void Add(Word word, float width)
        {
            _width = width;
            if (Space(word) > 0)
            {
                _parts.Add(new Span(" ", _parts[^1].Style));
            }

            _parts.AddRange(word.Parts);
        }

        public Line Close()
        {
            var runs = new List<Run>();
            var (x, height, baseline) = (0f, 0f, 0f);
            foreach (var span in Joined())
            {
                runs.Add(new Run(x, span));
                x += fonts.WidthOf(span.Text, span.Style);
            }

            foreach (var used in IsEmpty ? [style] : runs.Select(r => r.Span.Style))
            {
                (height, baseline) = (Math.Max(height, used.LineHeight), Math.Max(baseline, used.BaselineFrom(0)));
            }

            return new Line(runs, x, height, baseline, Lead, _width);
        }

        private IEnumerable<Span> Joined()
        {
            var text = new StringBuilder();
            for (var i = 0; i < _parts.Count; i++)
            {
                text.Append(_parts[i].Text);
                if (i + 1 == _parts.Count || _parts[i + 1].Style != _parts[i].Style)
                {
                    yield return _parts[i] with { Text = text.ToString() };
                    text.Clear();
                }
            }
        }

        /// <summary>Between a word and the one before it, where no space separates them.</summary>
        private float Kern(Word word)
        {
            if (IsEmpty || word.AfterSpace || _parts[^1].Style != word.Parts[0].Style || word.Parts[0].Text.Length == 0)
            {
                return 0;
            }

            Rune.DecodeLastFromUtf16(_parts[^1].Text, out var last, out _);
            var (first, style) = (word.Parts[0].Text.EnumerateRunes().First(), word.Parts[0].Style);
            return fonts.WidthOf($"{last}{first}", style) - fonts.WidthOf($"{last}", style) - fonts.WidthOf($"{first}", style);
        }

        private float Space(Word word) => word.AfterSpace && !IsEmpty ? fonts.WidthOf(" ", _parts[^1].Style) : 0;
    }
}
