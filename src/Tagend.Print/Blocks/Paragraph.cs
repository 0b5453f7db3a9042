using Tagend.Output;

namespace Tagend.Blocks;

public enum Align
{
    Left,
    Center,
    Right,
}

/// <summary>A run of text in one style.</summary>
public sealed record Span(string Text, TextStyle Style);

/// <summary>Text that wraps at spaces and after hyphens, at line ends of its own, and within a word as a last resort.</summary>
/// <remarks>A no-break space or hyphen holds its words together and is drawn as a plain one.</remarks>
public sealed record Paragraph(IReadOnlyList<Span> Spans, Align Align = Align.Left) : Block
{
    /// <summary>Fewest lines left on either page when a paragraph goes over.</summary>
    private const int FewestLines = 2;

    public Paragraph(string text, TextStyle style, Align align = Align.Left)
        : this([new Span(text, style)], align)
    {
    }

    /// <summary>A heading, where all of it looks like one.</summary>
    private PartKind Kind
    {
        get
        {
            var level = Spans[0].Style.HeadingLevel;
            for (var i = 1; i < Spans.Count; i++)
            {
                level = Math.Min(level, Spans[i].Style.HeadingLevel);
            }

            return level switch
            {
                0 => PartKind.Paragraph,
                1 => PartKind.Heading1,
                2 => PartKind.Heading2,
                _ => PartKind.Heading3,
            };
        }
    }

    private string Text => string.Concat(Spans.Select(s => s.Text));

    public override Placement Place(Fonts fonts, Room room)
    {
        IReadOnlyList<Line>? lines = LineBreaker.Whole(Spans, fonts, room.Width) is { } whole ? [whole] : null;
        if (lines is null && Missing(fonts) is { } missing)
        {
            return missing;
        }

        lines ??= LineBreaker.Lines(Spans, fonts, room.Width);
        if (lines is null)
        {
            return new Misfit($"\"{Text}\": {room.Width:0.#} pt are too narrow for a single character");
        }

        var placed = Place(lines, room.Width);
        return room.HoldsHeight(placed.Height)
            ? placed
            : new Misfit($"\"{Text}\" takes {placed.Height:0.#} pt of height at a width of {room.Width:0.#} pt, and has {room.Height:0.#} pt");
    }

    public override float NaturalWidth(Fonts fonts) =>
        LineBreaker.Whole(Spans, fonts, Room.Endless)?.Width
        ?? LineBreaker.Lines(Spans, fonts, Room.Endless)?.Max(l => Math.Max(l.Width, l.Filled)) ?? 0;

    public override PageSplit Split(Fonts fonts, Room room)
    {
        if (Missing(fonts) is not null || LineBreaker.Lines(Spans, fonts, room.Width) is not { } lines)
        {
            return new PageSplit(null, this);
        }

        var height = 0f;
        var fitting = lines.TakeWhile(l => room.HoldsHeight(height += l.Height)).Count();
        if (fitting == lines.Count)
        {
            return new PageSplit(Place(lines, room.Width), null);
        }

        fitting = Math.Min(fitting, lines.Count - FewestLines);
        return fitting < FewestLines
            ? new PageSplit(null, this)
            : new PageSplit(Place([.. lines.Take(fitting)], room.Width), Rest([.. lines.Skip(fitting)]));
    }

    private Paragraph Rest(IReadOnlyList<Line> lines)
    {
        var spans = lines.SelectMany((line, i) => line.Runs.Select((run, j) =>
            i > 0 && j == 0 ? run.Span with { Text = line.Lead + run.Span.Text } : run.Span));
        return this with { Spans = [.. spans] };
    }

    private Placed Place(IReadOnlyList<Line> lines, float width)
    {
        var inks = new List<Ink>(lines.Count);
        var (y, used) = (0f, Align == Align.Left ? 0 : width);
        foreach (var line in lines)
        {
            var left = Align switch
            {
                Align.Right => width - line.Width,
                Align.Center => (width - line.Width) / 2,
                _ => 0,
            };
            foreach (var (x, (text, style)) in line.Runs)
            {
                if (text.Length > 0)
                {
                    inks.Add(new TextInk(left + x, y + line.Baseline, text.Replace('\u00A0', ' ').Replace('\u2011', '-'), style));
                }
            }

            y += line.Height;
            used = Math.Max(used, Align == Align.Left ? line.Width : 0);
        }

        return new Placed(used, y, inks, [], lines[0].Baseline) { Part = PartStart.Of(Kind) };
    }

    /// <returns>Null where the font has all that is in the text but line ends.</returns>
    public static Misfit? Missing(string text, Weight weight, Fonts fonts) =>
        fonts.FirstMissing(text.Replace("\n", "", StringComparison.Ordinal), weight) is { } rune
            ? new Misfit($"\"{text.Trim()}\": the font has no glyph for '{rune}' (U+{rune.Value:X4}); write it another way")
            : null;

    private Misfit? Missing(Fonts fonts)
    {
        foreach (var span in Spans)
        {
            if (Missing(span.Text, span.Style.Weight, fonts) is { } missing)
            {
                return missing;
            }
        }

        return null;
    }
}
