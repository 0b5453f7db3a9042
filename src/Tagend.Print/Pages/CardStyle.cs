using Tagend.Blocks;
using Tagend.Output;

namespace Tagend.Pages;

/// <summary>How close a card stands; the first that fits is taken. All in points.</summary>
/// <param name="Gap">Between parts of the card.</param>
/// <param name="RowPadding">Over and under the text of a table row.</param>
/// <param name="DrawingHeight">Of the drawing of the piece.</param>
/// <param name="BoxHeight">Of the boxes to write into.</param>
internal sealed record CardStyle(float Gap, float RowPadding, float DrawingHeight, float BoxHeight)
{
    public static IReadOnlyList<CardStyle> FromRoomyToTight { get; } =
    [
        new(10, 2.4f, 100, 34),
        new(8, 1.6f, 94, 32),
        new(6, 0.8f, 88, 28),
        new(4, 0.2f, 84, 26),
    ];

    /// <summary>Heads a part of the card: a rule, a title, and a remark at the right.</summary>
    public static Block Heading(string title, string remark = "")
    {
        Block line = remark.Length == 0
            ? new Paragraph(title, TypeScale.Heading)
            : new Row(
                [
                    new Column(new Paragraph(title, TypeScale.Heading), ColumnWidth.Natural),
                    new Column(new Paragraph(remark, TypeScale.Caption, Align.Right), ColumnWidth.Shared()),
                ],
                Gap: 8,
                Level: Level.Baseline);
        return new Stack([new Rule(1), new Spacer(2.5f), line]);
    }

    /// <summary>A name and what it stands for, on one line as long as they fit.</summary>
    public static Block Fact(string name, string value) => new Paragraph(
        [new Span(name + "\u00A0", TypeScale.Caption with { Leading = TypeScale.Body.Leading }), new Span(" " + value, TypeScale.BodyBold)]);

    public Table Table(IReadOnlyList<TableColumn> columns, IEnumerable<IReadOnlyList<Block>> rows) =>
        new(columns, [.. rows], TypeScale.Caption) { Padding = RowPadding, Gap = 7 };

    public static Paragraph Text(string text) => new(text, TypeScale.Body);

    public static Paragraph Bold(string text) => new(text, TypeScale.BodyBold);
}
