using Tagend.Measures;

namespace Tagend.Output;

/// <summary>Points of 1/72 in: what everything on paper is placed in, from the page's top left, y downward.</summary>
public static class Points
{
    public const float PerInch = 72;

    /// <summary>A length at true size on paper.</summary>
    public static float Of(Length length) => (float)(length.Inches * PerInch);
}
