using Tagend.Blocks;
using Tagend.Output;

namespace Tagend.Pages.Labels;

/// <summary>Type sizes of labels, in points. Nothing on a label is smaller than 7, and its name not smaller than 14, a word of it that is too wide for its line not than 8.</summary>
internal sealed record LabelStyle(TextStyle Title, TextStyle Length, TextStyle Body, float Gap)
{
    /// <summary>A longer last word, in characters and the space before it, is no orphan; held to the word before it, the two might be broken.</summary>
    private const int LongestOrphan = 9;

    public static IReadOnlyList<LabelStyle> LargeToSmall { get; } =
    [
        Of(30, 22, 10, 3),
        Of(27, 19, 9, 2.5f),
        Of(23, 17, 8.5f, 2),
        Of(20, 15, 8, 1.5f),
        Of(17, 14, 7.5f, 1),
        Of(14, 12, 7, 0.4f, leading: 1.05f),
    ];

    public TextStyle BodyBold => Body with { Weight = Weight.Bold };

    /// <summary>Nothing smaller is left: a long name is broken rather than refused.</summary>
    public bool IsSmallest => this == LargeToSmall[^1];

    /// <summary>A line of plain text; where it wraps, a short last word does not stand alone.</summary>
    public Paragraph Line(string text)
    {
        var last = text.LastIndexOf(' ');
        return new Paragraph(last < 0 || text.Length - last > LongestOrphan ? text : $"{text[..last]}\u00A0{text[(last + 1)..]}", Body);
    }

    private static LabelStyle Of(float title, float length, float body, float gap, float leading = 1.2f) => new(
        new TextStyle(Weight.Bold, title, Tracking: -0.01f * title, Leading: 1),
        new TextStyle(Weight.Bold, length, Leading: 1.1f),
        new TextStyle(Weight.Regular, body, Leading: leading),
        gap);
}
