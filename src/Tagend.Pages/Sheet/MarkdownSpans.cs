using Markdig.Extensions.Tables;
using Markdig.Extensions.TaskLists;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Output;

namespace Tagend.Pages.Sheet;

/// <summary>Turns text within a Markdown block into runs of one style.</summary>
internal sealed class MarkdownSpans(PaperLanguage language, Action<MarkdownObject, string> refuse)
{
    /// <summary>Where the drawing of the pieces is to stand, as a picture's address.</summary>
    private const string Drawing = "drawing";

    /// <summary>A longer word does not look lost on a line.</summary>
    private const int LongestHeld = 20;

    private readonly Dictionary<string, SignalWord> _signals = Enum.GetValues<SignalWord>().ToDictionary(w => w.In(language));

    public IReadOnlyList<Span> Of(LeafBlock block, TextStyle plain, TextStyle strong) => Of(block.Inline ?? [], plain, strong);

    public IReadOnlyList<Span> Of(TableCell cell, TextStyle plain, TextStyle strong) =>
        cell.Count == 1 && cell[0] is ParagraphBlock { Inline: { } text } ? Of(text, plain, strong) : [new Span("", plain)];

    /// <summary>The text after a panel's signal word.</summary>
    public IReadOnlyList<Span> After(ParagraphBlock paragraph, TextStyle plain, TextStyle strong)
    {
        var spans = Of(paragraph.Inline!.Skip(1), plain, strong);
        return [spans[0] with { Text = spans[0].Text.TrimStart() }, .. spans.Skip(1)];
    }

    /// <summary>The signal word that a panel's text begins with, in bold.</summary>
    public SignalWord? SignalOf(ParagraphBlock paragraph) =>
        paragraph.Inline?.FirstChild is EmphasisInline { DelimiterCount: 2, FirstChild: LiteralInline word }
        && _signals.TryGetValue(word.Content.ToString(), out var signal)
            ? signal
            : null;

    public static bool IsDrawing(ParagraphBlock paragraph) =>
        paragraph.Inline?.FirstChild is LinkInline { IsImage: true, Url: Drawing, NextSibling: null };

    public static bool IsTask(ParagraphBlock paragraph) => paragraph.Inline?.FirstChild is TaskList;

    /// <summary>The same with its last two words held together, so that none stands alone on the last line.</summary>
    public static IReadOnlyList<Span> WithoutOrphan(IReadOnlyList<Span> spans)
    {
        var text = spans[^1].Text;
        var last = text.LastIndexOf(' ');
        return last > 0 && text.Length - last <= LongestHeld
            ? [.. spans.SkipLast(1), spans[^1] with { Text = $"{text[..last]}\u00A0{text[(last + 1)..]}" }]
            : spans;
    }

    private List<Span> Of(IEnumerable<Inline> inlines, TextStyle plain, TextStyle strong)
    {
        var spans = new List<Span>();
        foreach (var inline in inlines)
        {
            switch (inline)
            {
                case LiteralInline literal:
                    spans.Add(new Span(literal.Content.ToString(), plain));
                    break;
                case HtmlEntityInline entity:
                    spans.Add(new Span(entity.Transcoded.ToString(), plain));
                    break;
                case LineBreakInline lineBreak:
                    spans.Add(new Span(lineBreak.IsHard ? "\n" : " ", plain));
                    break;
                case EmphasisInline emphasis:
                    spans.AddRange(Of(emphasis, emphasis.DelimiterCount == 2 ? strong : plain with { Weight = Weight.SemiBold }, strong));
                    break;
                case TaskList:
                    break;
                default:
                    refuse(inline, "text has words and **bold**, nothing else");
                    break;
            }
        }

        if (spans.Count == 0)
        {
            spans.Add(new Span("", plain));
        }

        return spans;
    }
}
