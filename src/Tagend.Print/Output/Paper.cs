using Tagend.Measures;

namespace Tagend.Output;

/// <summary>A sheet of paper, upright.</summary>
/// <remarks>A sizes: ISO 216. Letter: ANSI/ASME Y14.1, size A; half letter is a letter sheet cut across.</remarks>
public sealed record Paper(string Title, Length Width, Length Height)
{
    public static Paper Letter { get; } = new("letter", Length.FromInches(8.5), Length.FromInches(11));

    public static Paper A4 { get; } = new("A4", Length.FromMillimeters(210), Length.FromMillimeters(297));

    public static Paper HalfLetter { get; } = new("half letter", Length.FromInches(5.5), Length.FromInches(8.5));

    public static Paper A5 { get; } = new("A5", Length.FromMillimeters(148), Length.FromMillimeters(210));
}
