using System.Globalization;
using Markdig;
using Markdig.Extensions.CustomContainers;
using Markdig.Extensions.Tables;
using Markdig.Syntax;
using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Output;
using Tagend.Problems;
using Block = Tagend.Blocks.Block;
using MarkdownTable = Markdig.Extensions.Tables.Table;
using Table = Tagend.Blocks.Table;

namespace Tagend.Pages.Sheet;

/// <summary>A sheet's text as blocks to pour over pages.</summary>
/// <param name="Foot">Of each page, with the marks of <see cref="SheetFields"/> for the page's number.</param>
internal sealed record SheetText(IReadOnlyList<FlowItem> Items, string Foot, IReadOnlyList<Problem> Problems);

/// <summary>A sheet's text, parsed once for all styles it is tried in.</summary>
internal sealed record SheetMarkdown(IReadOnlyList<string> Lines, MarkdownDocument Document)
{
    private static readonly MarkdownPipeline Dialect = new MarkdownPipelineBuilder().UsePipeTables().UseTaskLists().UseCustomContainers().Build();

    /// <returns>Null where it is nested deeper than any sheet needs.</returns>
    public static SheetMarkdown? Parse(string text)
    {
        try
        {
            return new SheetMarkdown(text.Split('\n'), Markdown.Parse(text, Dialect));
        }
        catch (ArgumentException)
        {
            return null;
        }
    }
}

/// <summary>What a sheet's text calls for and the program makes.</summary>
/// <param name="Pieces">The drawing of the pieces.</param>
internal sealed record Drawn(PaperLanguage Language, Func<SheetStyle, Block> Pieces);

/// <summary>Turns a sheet's Markdown into blocks. What the dialect is, templates/sheets/README.md says.</summary>
internal sealed class MarkdownBlocks
{
    private const string ColumnsName = "columns";
    private const string BoxesName = "boxes";

    /// <summary>A cell of this alone is a square to tick.</summary>
    private const string Box = "[ ]";

    private readonly SheetStyle _style;
    private readonly MarkdownSpans _spans;
    private readonly Drawn _drawn;
    private readonly List<Problem> _problems = [];
    private readonly Func<string, Place> _find;
    private readonly IReadOnlyList<string> _lines;
    private List<FlowItem> _items = [];
    private string _foot = "";

    private MarkdownBlocks(IReadOnlyList<string> lines, Func<string, Place> find, SheetStyle style, Drawn drawn)
    {
        _style = style;
        _drawn = drawn;
        _find = find;
        _lines = lines;
        _spans = new MarkdownSpans(drawn.Language, Refuse);
    }

    /// <param name="find">Where a line of the filled text stands in the template.</param>
    public static SheetText Of(SheetMarkdown markdown, Func<string, Place> find, SheetStyle style, Drawn drawn)
    {
        var blocks = new MarkdownBlocks(markdown.Lines, find, style, drawn);
        foreach (var (index, block) in markdown.Document.Index())
        {
            var first = blocks._items.Count;
            blocks.Add(block);
            if (block is QuoteBlock && blocks._items.Count > first && markdown.Document.ElementAtOrDefault(index + 1) is ListBlock)
            {
                // A panel stands before the step it warns of.
                blocks._items[^1] = blocks._items[^1] with { KeepWithNext = true };
            }
        }

        return new SheetText(blocks._items, blocks._foot, blocks._problems);
    }

    private void Add(Markdig.Syntax.Block block)
    {
        switch (block)
        {
            case HeadingBlock { Level: 1 } title:
                AddHeading(title, _style.Title, _style.BetweenParagraphs);
                break;
            case HeadingBlock { Level: 2 } heading:
                AddHeading(heading, _style.Heading, _style.BeforeHeading);
                break;
            case HeadingBlock { Level: 6 } foot:
                _foot = string.Concat(_spans.Of(foot, _style.Foot, _style.Foot).Select(s => s.Text));
                break;
            case ParagraphBlock paragraph when MarkdownSpans.IsDrawing(paragraph):
                _items.Add(new FlowItem(_drawn.Pieces(_style), _style.BeforeDrawing));
                break;
            case CustomContainer { Info: ColumnsName } columns:
                AddColumns(columns);
                break;
            case CustomContainer { Info: BoxesName } boxes:
                AddBoxes(boxes);
                break;
            case ParagraphBlock paragraph:
                _items.Add(new FlowItem(TextOf(paragraph), BeforeNext()));
                break;
            case ListBlock list:
                Add(list);
                break;
            case QuoteBlock quote when PanelOf(quote) is { } panel:
                _items.Add(new FlowItem(panel, BeforeNext()));
                break;
            case MarkdownTable table:
                _items.Add(new FlowItem(TableOf(table), _style.BetweenParagraphs));
                break;
            case HtmlBlock { Type: HtmlBlockType.Comment }:
            case LinkReferenceDefinitionGroup:
            case QuoteBlock:
                break;
            default:
                Refuse(block, "a sheet has headings of #, ## and ######, paragraphs, lists, tables, caution panels, ![](drawing), ::: columns and ::: boxes, nothing else");
                break;
        }
    }

    /// <summary>Parts side by side: each heading within starts a column. They stay on one page.</summary>
    private void AddColumns(CustomContainer container)
    {
        var outside = _items;
        var columns = new List<Column>();
        foreach (var block in container)
        {
            if (block is HeadingBlock || _items == outside)
            {
                Close();
                _items = [];
            }

            Add(block);
        }

        Close();
        _items = outside;
        if (columns.Count > 0)
        {
            _items.Add(new FlowItem(new Row(columns, _style.ColumnGap), _style.BeforeHeading));
        }

        void Close()
        {
            if (_items != outside)
            {
                columns.Add(new Column(StackOf(_items), ColumnWidth.Shared()));
            }
        }
    }

    /// <summary>Short things to tick, as many side by side as there is room for.</summary>
    private void AddBoxes(CustomContainer container)
    {
        var texts = container.OfType<ListBlock>().SelectMany(l => l.OfType<ListItemBlock>()).SelectMany(i => i.OfType<ParagraphBlock>());
        List<Checkbox> boxes = [.. texts.Where(MarkdownSpans.IsTask).Select(t => new Checkbox(TextOf(t)))];
        if (boxes.Count > 0)
        {
            _items.Add(new FlowItem(new TickBoxes(boxes, _style), _style.BetweenParagraphs));
        }
    }

    private static Stack StackOf(IReadOnlyList<FlowItem> items) =>
        new([.. items.SelectMany((item, i) => i == 0 ? [item.Block] : new[] { new Spacer(item.Before), item.Block })]);

    private void AddHeading(HeadingBlock heading, TextStyle type, float before) =>
        _items.Add(new FlowItem(new Paragraph(_spans.Of(heading, type, type)), before, KeepWithNext: true));

    private float BeforeNext() => _items.Count > 0 && _items[^1].KeepWithNext ? _style.AfterHeading : _style.BetweenParagraphs;

    private Paragraph TextOf(LeafBlock leaf) => new(MarkdownSpans.WithoutOrphan(_spans.Of(leaf, _style.Text, _style.Strong)));

    private void Add(ListBlock list)
    {
        // A list goes on after a panel between two of its steps.
        var first = int.TryParse(list.OrderedStart, NumberStyles.None, CultureInfo.InvariantCulture, out var start) ? start : 1;
        var number = first;
        foreach (var item in list.OfType<ListItemBlock>())
        {
            var before = number == first ? BeforeNext() : _style.BetweenItems;
            var body = item.OfType<ParagraphBlock>().FirstOrDefault();
            if (body is null)
            {
                Refuse(item, "a list item begins with its text");
                continue;
            }

            var text = TextOf(body);
            Block line = MarkdownSpans.IsTask(body)
                ? new Checkbox(text)
                : new ListItem(MarkerOf(list, number), text, _style.Indent);
            var more = item.Where(b => b != body).ToList();
            _items.Add(new FlowItem(line, before, KeepWithNext: more.Count > 0));
            foreach (var block in more)
            {
                AddWithin(block);
            }

            number++;
        }
    }

    private Paragraph MarkerOf(ListBlock list, int number) =>
        list.IsOrdered ? new Paragraph($"{number}.", _style.Strong) : new Paragraph("•", _style.Text);

    private void AddWithin(Markdig.Syntax.Block block)
    {
        Block? inner = block switch
        {
            QuoteBlock quote => PanelOf(quote),
            ParagraphBlock paragraph => TextOf(paragraph),
            _ => null,
        };
        if (inner is not null)
        {
            Column[] columns = [new(new Spacer(0), ColumnWidth.Of(_style.Indent)), new(inner, ColumnWidth.Shared())];
            _items.Add(new FlowItem(new Row(columns), _style.BetweenItems * 1.5f));
        }
        else if (block is not QuoteBlock)
        {
            Refuse(block, "a list item has text and caution panels, nothing else");
        }
    }

    private CautionPanel? PanelOf(QuoteBlock quote)
    {
        if (quote.Count == 1 && quote[0] is ParagraphBlock paragraph && _spans.SignalOf(paragraph) is { } word)
        {
            return new CautionPanel(word, _drawn.Language, MarkdownSpans.WithoutOrphan(_spans.After(paragraph, _style.Text, _style.Strong)), _style);
        }

        var words = Enum.GetValues<SignalWord>().Reverse().Select(w => $"**{w.In(_drawn.Language)}**").ToList();
        Refuse(quote, $"a caution panel is one paragraph that begins with {string.Join(", ", words.SkipLast(1))} or {words[^1]}");
        return null;
    }

    private Block TableOf(MarkdownTable table)
    {
        var rows = table.OfType<TableRow>()
            .Select(r => r.OfType<TableCell>().Select(CellOf).ToList())
            .ToList();
        var header = rows[0].Select(TextOf).Select(h => h == Box ? "" : h).ToList();
        var body = rows.Skip(1).ToList();
        return body.Count > 0 && body.All(r => r.Skip(1).All(c => TextOf(c).Length == 0))
            ? new FormGrid(header, [.. body.Select(r => TextOf(r[0]))], _style)
            : new SpreadTable(new Table([.. header.Select(h => new TableColumn(h, ColumnWidth.Natural))], [.. body.Select(Cells)], _style.Label)
            {
                Gap = _style.Size * 0.75f,
                Padding = _style.CellPadding,
            });
    }

    private static IReadOnlyList<Block> Cells(IReadOnlyList<Paragraph> row) =>
        [.. row.Select<Paragraph, Block>(c => TextOf(c) == Box ? new Checkbox(c with { Spans = [c.Spans[0] with { Text = "" }] }) : c)];

    private Paragraph CellOf(TableCell cell) =>
        new(_spans.Of(cell, _style.Cell, _style.Cell with { Weight = _style.Strong.Weight }));

    private static string TextOf(Paragraph paragraph) => string.Concat(paragraph.Spans.Select(s => s.Text));

    private void Refuse(MarkdownObject at, string message)
    {
        var line = at.Line < _lines.Count ? _lines[at.Line].Trim() : "";
        _problems.Add(new Problem(_find(line), line, message));
    }
}
