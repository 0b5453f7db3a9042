using Tagend.Catalog;
using Tagend.Output;

namespace Tagend.Pages.Sheet;

/// <summary>Type and distances of a customer sheet, all from the size of its running text. In points.</summary>
/// <param name="Size">Of running text.</param>
/// <param name="Air">1 for comfortable distances, less for tighter ones.</param>
internal sealed record SheetStyle(float Size, float Air)
{
    /// <summary>Of title, headings and the letterhead's line; null for black.</summary>
    public InkColor? Accent { get; init; }

    /// <summary>From comfortable to as dense as a customer should have to read: 9.5 pt is the smallest running text.</summary>
    public static IReadOnlyList<SheetStyle> LooseToDense { get; } =
    [
        new(10.5f, 1),
        new(10, 1),
        new(9.75f, 1),
        new(9.5f, 1),
        new(9.5f, 0.85f),
        new(9.5f, 0.7f),
        new(9.5f, 0.55f),
        new(9.5f, 0.4f),
        new(9.5f, 0.3f),
        new(9.5f, 0.2f),
        new(9.5f, 0.1f),
        new(9.5f, 0),
        new(9.5f, -0.1f),
        new(9.5f, -0.2f),
    ];

    /// <summary>Which of them a sheet is most likely to get: the middle one of what shipped texts got with one to four pieces in four languages.</summary>
    public const int Likely = 8;

    public TextStyle Text => new(Weight.Regular, Size, Leading: 1.19f + (0.13f * Air));

    public TextStyle Strong => Text with { Weight = Weight.Bold };

    public TextStyle Title => new(Weight.Bold, Size * 1.95f, Tracking: -0.3f, Leading: 1.15f, Color: Accent) { HeadingLevel = 1 };

    public TextStyle Heading => new(Weight.Bold, Size * 1.25f, Leading: 1.25f, Color: Accent) { HeadingLevel = 2 };

    /// <summary>Headers of tables.</summary>
    public TextStyle Label => new(Weight.SemiBold, Size * 0.86f, Leading: 1.25f);

    /// <summary>In tables and drawings, which are not read line by line.</summary>
    public TextStyle Cell => Text with { Size = Size * 0.9f, Leading = 1.22f };

    public TextStyle Signal => new(Weight.Bold, Size * 1.05f, Tracking: 0.4f, Leading: 1.25f);

    public TextStyle ShopName => new(Weight.Bold, Size * 1.5f, Leading: 1.2f);

    public TextStyle Foot => new(Weight.Regular, Size * 0.86f, Leading: 1.25f);

    public float BetweenParagraphs => Size * (0.12f + (0.43f * Air));

    public float BeforeDrawing => 2 + (Size * 0.6f * Air);

    public float BetweenItems => Size * (0.06f + (0.26f * Air));

    public float BeforeHeading => Size * (0.4f + (0.85f * Air));

    public float AfterHeading => Size * (0.1f + (0.25f * Air));

    public float PanelPadding => 3 + (2.5f * Air);

    public float CellPadding => Size * (0.08f + (0.17f * Air));

    /// <summary>Between parts side by side.</summary>
    public float ColumnGap => Size * 2;

    public float Indent => Size * 1.9f;

    /// <summary>Height of a box to write into.</summary>
    public float FormRow => Size * (1.5f + (0.6f * Air));
}
