using System.Globalization;
using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Specs;

namespace Tagend.Pages.Pull;

/// <summary>The tables of a pull sheet.</summary>
/// <param name="unit">Of all its lengths.</param>
/// <param name="slips">By order: whose it is and when it is due.</param>
internal sealed class PullTables(
    ShopCatalog catalog, Fonts fonts, LengthUnit unit, IReadOnlyDictionary<string, OrderSlip> slips, PullStyle style)
{
    /// <summary>What a column takes at most before its text wraps, so that long names leave room for the columns that share the rest.</summary>
    private const float MostOfColumn = 105;

    /// <summary>Least room between columns, in points.</summary>
    private const float Gap = 9;

    private TextStyle Text => style.Text;

    private TextStyle Strong => Text with { Weight = Weight.Bold };

    private readonly CardWriter _write = new(unit, catalog.Words);

    public string Remark => catalog.Words.Say(
        PaperWord.PullRemark, ("waste", _write.Decimal((catalog.Shop.Waste * 100).ToString("0.#", CultureInfo.InvariantCulture))));

    /// <summary>Spools of one kind, counted where the shop has said what one holds; columns stand as in the table of the other kind.</summary>
    /// <param name="width">Of the page, in points.</param>
    /// <param name="plan">Which spools are taken; null where the shop keeps none, and there is no column for them.</param>
    public Table Stock(ValueList<StockNeed> stock, StockKind kind, float width, SpoolPlan? plan)
    {
        var areCounted = stock.Any(need => Tagend.Specs.Stock.Spools(need, catalog) is not null);
        var rows = stock.Select<StockNeed, IReadOnlyList<Block>>(need =>
        [
            new Checkbox(new Paragraph(" ", Text)),
            new Paragraph(need.Name, Text),
            new Paragraph(_write.Color(need.Color), Strong),
            new Paragraph(_write.Spool(need.Length), Strong),
            .. areCounted ? [new Paragraph(Tagend.Specs.Stock.Spools(need, catalog)?.ToString(CultureInfo.InvariantCulture) ?? "", Text)] : (IEnumerable<Block>)[],
            .. plan is null ? (IEnumerable<Block>)[] : [Take(plan.Of(need))],
            new Paragraph(TitleOf(need), Text),
        ]);
        var table = Table(
            [
                new TableColumn(catalog.Words[PaperWord.PullPulled], ColumnWidth.Natural),
                new TableColumn(catalog.Words[kind == StockKind.Strand ? PaperWord.PullMaterialColumn : PaperWord.PullThreadColumn], ColumnWidth.Natural),
                new TableColumn(catalog.Words[PaperWord.PullColor], ColumnWidth.Natural),
                new TableColumn(catalog.Words[PaperWord.PullLength], ColumnWidth.Natural, Align.Right),
                .. areCounted ? [new TableColumn(catalog.Words[PaperWord.PullSpools], ColumnWidth.Natural, Align.Right)] : (IEnumerable<TableColumn>)[],
                .. plan is null ? (IEnumerable<TableColumn>)[] : [new TableColumn(catalog.Words[PaperWord.PullTake], ColumnWidth.Shared(1.6f))],
                new TableColumn(catalog.Words[PaperWord.PullDescription], ColumnWidth.Shared()),
            ],
            [.. rows],
            width);
        return table with { Rows = [.. table.Rows.Where((_, i) => stock[i].Kind == kind)] };
    }

    /// <summary>The spools in the order they are begun, and in bold what none of them holds.</summary>
    private Paragraph Take(SpoolTake? take)
    {
        if (take is null)
        {
            return new Paragraph("", Text);
        }

        var words = catalog.Words;
        var spools = string.Join("; ", take.Spools.Select(s =>
        {
            var spool = words.Say(PaperWord.PullTakeSpool, ("number", $"{s.Spool.Number}"), ("lot", s.Spool.Lot.Replace('-', '\u2011'))).Replace(' ', '\u00A0');
            return s.From is { } from ? words.Say(PaperWord.PullTakeFrom, ("spool", spool), ("build", from)) : spool;
        }));
        return take.ShortFrom is not { } shortFrom ? new Paragraph(spools, Text) : new Paragraph(
        [
            new Span(spools.Length == 0 ? "" : $"{spools}. ", Text),
            new Span(words.Say(PaperWord.PullRunsOut, ("build", shortFrom), ("length", _write.Spool(take.Short).Replace(' ', '\u00A0'))), Strong),
        ]);
    }

    /// <param name="width">Of the page, in points.</param>
    public Table Builds(PullOrder order, float width)
    {
        List<PullStep> steps = [.. order.Steps];
        var posts = Reading.Column([.. steps.Select(s => Setting(s.Posts))], Strong, fonts);
        return Table(
            [
                new TableColumn(catalog.Words[PaperWord.PullBuilt], ColumnWidth.Natural),
                new TableColumn(Both(PaperWord.PullOrderColumn, PaperWord.PullPiece), ColumnWidth.Natural),
                new TableColumn(catalog.Words[PaperWord.PullCustomer], ColumnWidth.Shared()),
                new TableColumn(catalog.Words[PaperWord.PullDue], ColumnWidth.Natural),
                new TableColumn(catalog.Words.Say(PaperWord.PullPosts, ("unit", _write.UnitSymbol)), ColumnWidth.Natural, Align.Right),
                new TableColumn(Both(PaperWord.PullMaterialColumn, PaperWord.PullLoops), ColumnWidth.Shared(1.4f)),
                new TableColumn(catalog.Words[PaperWord.PullChange], ColumnWidth.Shared(1.2f)),
            ],
            [
                .. steps.Select<PullStep, IReadOnlyList<Block>>((step, i) =>
                [
                    new Checkbox(new Paragraph($"{i + 1}", Text)),
                    new Paragraph($"{step.Order} {step.Piece}", Strong),
                    new Paragraph(slips.GetValueOrDefault(step.Order)?.Customer ?? "", Text),
                    new Paragraph(slips.GetValueOrDefault(step.Order)?.Due ?? "", Text),
                    posts[i],
                    new Paragraph($"{step.Material.Replace('-', '\u2011')}: {Loops(step.Colors)}", Text),
                    new Paragraph(Change(step), step.Changes > 0 ? Strong : Text),
                ]),
            ],
            width);
    }

    private string Both(PaperWord one, PaperWord other) => $"{catalog.Words[one]} / {catalog.Words[other]}";

    /// <summary>What is done at the jig before a build: <c>posts; black, red spools</c>.</summary>
    private string Change(PullStep step)
    {
        var spools = step.Mounted.Count switch
        {
            0 => "",
            1 => catalog.Words.Say(PaperWord.PullSpoolOne, Mounted()),
            _ => catalog.Words.Say(PaperWord.PullSpoolMany, Mounted()),
        };
        var changes = new[] { step.MovesPosts ? catalog.Words[PaperWord.PullPostsMoved] : "", spools }.Where(c => c.Length > 0);
        return step.Changes == 0 ? catalog.Words[PaperWord.PullNoChange] : string.Join("; ", changes);

        (string, string) Mounted() => ("colors", string.Join(", ", step.Mounted.Select(s => _write.Color(s.Color))));
    }

    private string Loops(ValueList<ColorShare> colors) => string.Join(
        ", ", colors.Select(c => $"{c.LoopCount().Replace(' ', '\u00A0')}\u00A0{_write.Color(c.Color)}"));

    private string Setting(Length tape) => _write.Setting(tape)[..^_write.UnitSymbol.Length].TrimEnd();

    private string TitleOf(StockNeed need) => need.Kind == StockKind.Strand
        ? catalog.Words.Term(catalog.Materials.GetValueOrDefault(need.Name)?.Title ?? need.Name)
        : catalog.Words.Term(catalog.Threads.GetValueOrDefault(need.Name)?.Title ?? need.Name);

    /// <summary>Columns as wide on every page: by the widest cell of all rows.</summary>
    private Table Table(TableColumn[] columns, IReadOnlyList<IReadOnlyList<Block>> rows, float width)
    {
        var natural = columns
            .Select((c, i) => Math.Min(MostOfColumn, rows.Select(r => r[i].NaturalWidth(fonts)).Append(fonts.WidthOf(c.Title, TypeScale.Caption)).Max()))
            .ToList();
        var widths = ColumnWidth.Divide([.. columns.Select(c => c.Width)], i => natural[i], width, Gap);
        return new Table([.. columns.Select((c, i) => c with { Width = ColumnWidth.Of(widths[i]) })], rows, TypeScale.Caption)
        {
            Gap = Gap,
            WidestGap = Gap,
            Padding = style.Padding,
        };
    }
}
