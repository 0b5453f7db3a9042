using Tagend.Blocks;
using Tagend.Output;
using Tagend.Pages.Parts;

namespace Tagend.Pages.Strip;

/// <summary>Type and distances of a marking strip, from its upper edge, where the string lies. All in points.</summary>
/// <param name="Figure">Distances from end A: read at the bench with wet hands.</param>
/// <param name="Words">What is there, and the distance from end B.</param>
/// <param name="Lanes">Lines of labels under each other.</param>
internal sealed record StripStyle(TextStyle Figure, TextStyle Words, int Lanes)
{
    /// <summary>Of the line at a place.</summary>
    public const float PlaceLine = 1.2f;

    public const float Hairline = 0.5f;

    public const float EdgeLine = 0.8f;

    /// <summary>Of the bars that say where to serve.</summary>
    public const float BarTop = 2;
    public const float BarBottom = 14;

    public const float TicksTop = 15;
    public const float NumbersBaseline = 27.5f;

    public const float LanesTop = 31;
    public const float FootTop = 92.5f;
    public const float Height = FootTop + CheckBar.Height;

    /// <summary>Over the edge, for the marks of joints.</summary>
    public const float Above = 8;

    /// <summary>The first in which a strip's labels find room is taken.</summary>
    public static IReadOnlyList<StripStyle> FromLargeToSmall { get; } =
    [
        new(TypeScale.Figure with { Size = 21, Tracking = -0.4f }, TypeScale.Body, 2),
        new(TypeScale.Figure, TypeScale.Caption, 3),
        new(TypeScale.BodyBold, TypeScale.Caption, 4),
    ];

    public static TextStyle Caption => TypeScale.Caption;

    /// <summary>Numbers of the scale, and words on bars.</summary>
    public static TextStyle CaptionBold { get; } = TypeScale.Heading with { Tracking = 0 };

    /// <summary>From a figure's baseline to the words under it: a decimal comma hangs below.</summary>
    public float UnderFigure => MathF.Max(3, Figure.Size * 0.24f);

    public float LaneHeight => (FootTop - LanesTop) / Lanes;
}
