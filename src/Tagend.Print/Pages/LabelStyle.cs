using Tagend.Output;

namespace Tagend.Pages;

/// <summary>Type sizes of labels, in points. Nothing on a label is smaller than 6.</summary>
internal sealed record LabelStyle(TextStyle Title, TextStyle Length, TextStyle Body, TextStyle BodyBold, float Gap)
{
    public static IReadOnlyList<LabelStyle> LargeToSmall { get; } = [Of(22, 15, 9, 2.5f), Of(18, 12.5f, 8, 2), Of(14, 10.5f, 7, 1.2f), Of(11, 9, 6, 0.6f)];

    private static LabelStyle Of(float title, float length, float body, float gap) => new(
        new TextStyle(Weight.Bold, title, Leading: 1.05f),
        new TextStyle(Weight.Bold, length, Leading: 1.1f),
        new TextStyle(Weight.Regular, body, Leading: 1.2f),
        new TextStyle(Weight.Bold, body, Leading: 1.2f),
        gap);
}
