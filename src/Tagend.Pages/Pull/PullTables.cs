using System.Globalization;
using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Specs;

namespace Tagend.Pages.Pull;

/// <summary>The tables of a pull sheet.</summary>
/// <param name="unit">Of all its lengths.</param>
internal sealed class PullTables(ShopCatalog catalog, Fonts fonts, LengthUnit unit)
{
    /// <summary>Least room between columns, in points.</summary>
    private const float Gap = 14;

    public static TextStyle Text { get; } = TypeScale.Sheet with { Size = 9, Leading = 1.25f };

    public static TextStyle Strong { get; } = Text with { Weight = Weight.Bold };

    public string Remark => string.Create(
        CultureInfo.InvariantCulture, $"with tails, dummy tags and {catalog.Shop.Waste * 100:0.#} % for waste, rounded up");

    /// <summary>Spools of one kind; columns stand as in the table of the other kind.</summary>
    /// <param name="width">Of the page, in points.</param>
    public Table Stock(ValueList<StockNeed> stock, StockKind kind, float width)
    {
        var rows = stock.Select<StockNeed, IReadOnlyList<Block>>(need =>
        [
            new Checkbox(new Paragraph(" ", Text)),
            new Paragraph(need.Name, Text),
            new Paragraph(need.Color.Length > 0 ? need.Color : "any", Strong),
            new Paragraph(LengthWriter.Spool(need.Length, unit), Strong),
            new Paragraph(Tagend.Specs.Stock.Spools(need, catalog)?.ToString(CultureInfo.InvariantCulture) ?? "", Text),
            new Paragraph(TitleOf(need), Text),
        ]);
        var table = Table(
            [
                new TableColumn("Pulled", ColumnWidth.Natural),
                new TableColumn(kind == StockKind.Strand ? "Material" : "Thread", ColumnWidth.Natural),
                new TableColumn("Color", ColumnWidth.Natural),
                new TableColumn("Length", ColumnWidth.Natural, Align.Right),
                new TableColumn("Spools", ColumnWidth.Natural, Align.Right),
                new TableColumn("", ColumnWidth.Shared()),
            ],
            [.. rows],
            width);
        return table with { Rows = [.. table.Rows.Where((_, i) => stock[i].Kind == kind)] };
    }

    /// <param name="width">Of the page, in points.</param>
    public Table Builds(BuildOrder order, float width)
    {
        var posts = Reading.Column([.. order.Steps.Select(s => Setting(s.Build.Spec.Posts.Tape))], Strong, fonts);
        return Table(
            [
                new TableColumn("Built", ColumnWidth.Natural),
                new TableColumn("Order", ColumnWidth.Natural),
                new TableColumn("Piece", ColumnWidth.Natural),
                new TableColumn($"Posts outside, {LengthWriter.Symbol(unit)}", ColumnWidth.Natural, Align.Right),
                new TableColumn("Material", ColumnWidth.Natural),
                new TableColumn("Loops", ColumnWidth.Shared()),
                new TableColumn("Change before it", ColumnWidth.Shared(1.2f)),
            ],
            [
                .. order.Steps.Select<BuildStep, IReadOnlyList<Block>>((step, i) =>
                [
                    new Checkbox(new Paragraph($"{i + 1}", Text)),
                    new Paragraph(step.Build.Spec.Order, Strong),
                    new Paragraph(step.Build.Spec.Piece, Strong),
                    posts[i],
                    new Paragraph(step.Build.Spec.Bundle.Material, Text),
                    new Paragraph(Loops(step.Build.Spec.Layup), Text),
                    new Paragraph(Change(step), step.Changes > 0 ? Strong : Text),
                ]),
            ],
            width);
    }

    /// <summary>What is done at the jig before a build: <c>posts; black, red spools</c>.</summary>
    private static string Change(BuildStep step)
    {
        var spools = step.Mounted.Count switch
        {
            0 => "",
            1 => $"{step.Mounted[0].Color} spool",
            _ => $"{string.Join(", ", step.Mounted.Select(s => s.Color))} spools",
        };
        var changes = new[] { step.MovesPosts ? "posts" : "", spools }.Where(c => c.Length > 0);
        return step.Changes == 0 ? "none" : string.Join("; ", changes);
    }

    private static string Loops(Layup layup) => string.Join(", ", layup.Colors.Select(c => $"{c.Loops}\u00A0{c.Color}"));

    private string Setting(Length tape) => LengthWriter.Setting(tape, unit)[..^LengthWriter.Symbol(unit).Length].TrimEnd();

    private string TitleOf(StockNeed need) => need.Kind == StockKind.Strand
        ? catalog.Materials.GetValueOrDefault(need.Name)?.Title ?? need.Name
        : catalog.Threads.GetValueOrDefault(need.Name)?.Title ?? need.Name;

    /// <summary>Columns as wide on every page: by the widest cell of all rows.</summary>
    private Table Table(TableColumn[] columns, IReadOnlyList<IReadOnlyList<Block>> rows, float width)
    {
        var natural = columns
            .Select((c, i) => rows.Select(r => r[i].NaturalWidth(fonts)).Append(fonts.WidthOf(c.Title, TypeScale.Caption)).Max())
            .ToList();
        var widths = ColumnWidth.Divide([.. columns.Select(c => c.Width)], i => natural[i], width, Gap);
        return new Table([.. columns.Select((c, i) => c with { Width = ColumnWidth.Of(widths[i]) })], rows, TypeScale.Caption)
        {
            Gap = Gap,
            WidestGap = Gap,
            Padding = 2.5f,
        };
    }
}
