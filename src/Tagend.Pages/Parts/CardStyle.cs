using Tagend.Blocks;
using Tagend.Output;

namespace Tagend.Pages.Parts;

/// <summary>How close a card stands; the first of its list that fits is taken. All in points.</summary>
/// <param name="Gap">Between parts of the card.</param>
/// <param name="Body">Of tables and facts.</param>
/// <param name="RowPadding">Over and under the text of a table row, and of a step.</param>
/// <param name="DrawingHeight">Of the drawing of the piece.</param>
/// <param name="BoxHeight">Of the boxes to write into.</param>
internal sealed record CardStyle(float Gap, TextStyle Body, float RowPadding, float DrawingHeight, float BoxHeight)
{
    private const float HeadingRule = 1;
    private const float UnderHeading = 1.5f;

    private static readonly CardStyle Roomy = new(7, TypeScale.Body, 1.6f, 98, 30);
    private static readonly CardStyle Usual = new(5, TypeScale.CloseBody, 0.8f, 92, 26);
    private static readonly CardStyle Close = new(3, TypeScale.CloseBody, 0.2f, 84, 23);
    private static readonly CardStyle Tight = new(2, TypeScale.TightBody, 0, 74, 21);
    private static readonly CardStyle Tightest = new(0.5f, TypeScale.TightBody, 0, 70, 15);

    /// <summary>Of a card's front: what does not fit goes to its back, marks first, then notes, then servings.</summary>
    public static IReadOnlyList<CardStyle> Front { get; } =
    [
        Roomy,
        Usual,
        Close,
        Close with { MarksAreOnBack = true },
        Close with { MarksAreOnBack = true, NotesAreOnBack = true },
        Tight with { MarksAreOnBack = true, NotesAreOnBack = true },
        Tight with { MarksAreOnBack = true, NotesAreOnBack = true, ServingsAreOnBack = true },
        Tightest with { MarksAreOnBack = true, NotesAreOnBack = true, ServingsAreOnBack = true },
    ];

    /// <summary>Of a front that fits in none of these: the boxes for what was built are on its back too.</summary>
    public static IReadOnlyList<CardStyle> FullFront { get; } = [Front[^1] with { BoxesAreOnBack = true }];

    /// <summary>Of a card's back: the ends at true size are left to the marking strip where they find no room.</summary>
    public static IReadOnlyList<CardStyle> Back { get; } =
        [Roomy with { HasEnds = true }, Usual with { HasEnds = true }, Roomy, Usual, Close, Tight, Tightest];

    /// <summary>The same with the boxes for what was built.</summary>
    public static IReadOnlyList<CardStyle> FullBack { get; } = [.. Back.Select(style => style with { BoxesAreOnBack = true })];

    /// <summary>Of a card that is one side of a sheet.</summary>
    public static IReadOnlyList<CardStyle> Sheet { get; } =
    [
        Roomy with { IsSheet = true, HasEnds = true },
        Usual with { IsSheet = true, HasEnds = true },
        Roomy with { IsSheet = true },
        Usual with { IsSheet = true },
        Close with { IsSheet = true },
        Tight with { IsSheet = true },
        Tightest with { IsSheet = true },
    ];

    /// <summary>Both ends at true size.</summary>
    public bool HasEnds { get; private init; }

    /// <summary>There is no back: all is on this side, and its tables have room for more columns.</summary>
    public bool IsSheet { get; private init; }

    public bool MarksAreOnBack { get; private init; }

    public bool NotesAreOnBack { get; private init; }

    public bool ServingsAreOnBack { get; private init; }

    public bool BoxesAreOnBack { get; private init; }

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
    public static Stack Section(string title, string remark, params IReadOnlyList<Block> blocks)
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
        new(columns, [.. rows], TypeScale.Caption) { Padding = RowPadding, Gap = 5, WidestGap = 14 };
}
