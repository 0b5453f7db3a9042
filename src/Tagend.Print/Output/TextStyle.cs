namespace Tagend.Output;

public enum Weight
{
    Regular,
    SemiBold,
    Bold,
}

/// <summary>How a text looks.</summary>
/// <param name="Size">In points.</param>
/// <param name="Gray">0 is black, 255 is paper.</param>
/// <param name="Tracking">Added after each character, in points.</param>
/// <param name="Leading">Line to line, as a multiple of the size.</param>
public readonly record struct TextStyle(
    Weight Weight, float Size, byte Gray = 0, float Tracking = 0, float Leading = 1.25f)
{
    public float LineHeight => Size * Leading;
}
