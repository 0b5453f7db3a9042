using Tagend.Measures;

namespace Tagend.Output;

/// <summary>Points of 1/72 in: what everything on paper is placed in, from the page's top left, y downward.</summary>
public static class Points
{
    public const float PerInch = 72;

    /// <summary>Of a point, what places on a page are a whole number of: an eighth of a dot at 600 dpi, 0.006 mm.</summary>
    internal const float Step = 1f / 64;

    /// <summary>A length at true size on paper.</summary>
    public static float Of(Length length) => (float)(length.Inches * PerInch);

    /// <summary>The whole number of steps nearest to a place.</summary>
    internal static float InSteps(float place) => MathF.Round(place / Step);

    /// <summary>The same to a quarter of a step, for what is measured, or lies on a printer's dots.</summary>
    internal static float InFineSteps(float place) => MathF.Round(place / Step * 4) / 4;

    /// <summary>The place on a step that is nearest.</summary>
    internal static float OnStep(float place) => InSteps(place) * Step;
}
