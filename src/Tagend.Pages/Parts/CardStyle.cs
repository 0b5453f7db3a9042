using Tagend.Blocks;
using Tagend.Output;

namespace Tagend.Pages.Parts;

/// <summary>How close a card stands; the first that fits is taken. All in points.</summary>
/// <param name="Gap">Between parts of the card.</param>
/// <param name="Body">Of tables and facts.</param>
/// <param name="RowPadding">Over and under the text of a table row.</param>
/// <param name="DrawingHeight">Of the drawing of the piece.</param>
/// <param name="BoxHeight">Of the boxes to write into.</param>
/// <param name="HasEnds">Both ends at true size; a card that is full leaves them to the marking strip.</param>
internal sealed record CardStyle(
    float Gap, TextStyle Body, float RowPadding, float DrawingHeight, float BoxHeight, bool HasEnds = true)
{
    private const float HeadingRule = 1;
    private const float UnderHeading = 1.5f;

    public static IReadOnlyList<CardStyle> FromRoomyToTight { get; } =
    [
        new(10, TypeScale.Body, 2.2f, 98, 34),
        new(8, TypeScale.Body, 1.4f, 92, 32),
        new(7, TypeScale.CloseBody, 1, 84, 28),
        new(5, TypeScale.CloseBody, 0.4f, 78, 26),
        new(5, TypeScale.CloseBody, 0.4f, 76, 25) { IsClose = true },
        new(3.2f, TypeScale.CloseBody, 0.1f, 72, 22) { IsClose = true },
        new(2.5f, TypeScale.TightBody, 0, 74, 24) { IsClose = true },
        new(5, TypeScale.TightBody, 0.6f, 78, 26, HasEnds: false) { IsClose = true },
        new(1.5f, TypeScale.TightBody, 0, 70, 20, HasEnds: false) { IsClose = true },
    ];

    /// <summary>No more lines and headings than needed.</summary>
    public bool IsClose { get; private init; }

    /// <summary>Small type.</summary>
    public bool IsTight => Body == TypeScale.TightBody;

    public TextStyle BodyBold => Body with { Weight = Weight.Bold };

    public Paragraph Text(string text) => new(text, Body);

    public Paragraph Bold(string text) => new(text, BodyBold);

    /// <summary>A name and what it stands for, in running text.</summary>
    public Paragraph Fact(string name, string value) => new([new Span(name + "\u00A0\u00A0", Body), new Span(value, BodyBold)]);

    /// <summary>A name at the left and what it stands for at the right.</summary>
    public Row Line(string name, string value) => new(
        [
            new Column(Text(name), ColumnWidth.Shared()),
            new Column(new Paragraph(value, BodyBold, Align.Right), ColumnWidth.Natural),
        ],
        Gap: 4,
        Level: Level.Baseline);

    /// <summary>A part of the card: a rule, a title with a remark at the right, and what it heads.</summary>
    public static Stack Part(string title, string remark, params IReadOnlyList<Block> blocks)
    {
        var line = new Row(
            [
                new Column(new Paragraph(title, TypeScale.Heading), ColumnWidth.Natural),
                new Column(new Paragraph(remark, TypeScale.Caption, Align.Right), ColumnWidth.Shared()),
            ],
            Gap: 8,
            Level: Level.Baseline);
        return new Stack([new Rule(HeadingRule), new Spacer(UnderHeading), line, new Spacer(UnderHeading), .. blocks]);
    }

    public Table Table(IReadOnlyList<TableColumn> columns, IEnumerable<IReadOnlyList<Block>> rows) =>
        new(columns, [.. rows], TypeScale.Caption) { Padding = RowPadding, Gap = 6, WidestGap = 16 };
}
