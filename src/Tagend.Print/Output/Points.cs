using Tagend.Measures;

namespace Tagend.Output;

/// <summary>Points of 1/72 in: what everything on paper is placed in, from the page's top left, y downward.</summary>
public static class Points
{
    public const float PerInch = 72;

    /// <summary>A quarter of a dot at 600 dpi, thinner than any line, and a short number in a PDF.</summary>
    internal const float Step = 1f / 32;

    /// <summary>A length at true size on paper.</summary>
    public static float Of(Length length) => (float)(length.Inches * PerInch);

    /// <summary>The nearest place on a step.</summary>
    internal static float OnStep(float place) => MathF.Round(place / Step) * Step;
}
