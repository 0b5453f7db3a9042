using Tagend.Measures;

namespace Tagend.Tags.Text;

/// <summary>Numbers of a tag: exact, in the tag's unit, or in the other one with its letter where that is shorter.</summary>
internal static class TagNumber
{
    public static string Write(Length length, LengthUnit unit)
    {
        var (number, its) = ExactNumber.Of(length, unit);
        return its == unit ? number : number + LengthLetter(its);
    }

    /// <summary>In lbf where the tag is in inches, else in newtons.</summary>
    public static string Write(Force force, LengthUnit unit)
    {
        var (number, its) = ExactNumber.Of(force, unit);
        return its == unit ? number : number + ForceLetter(its);
    }

    public static bool TryRead(ReadOnlySpan<char> text, LengthUnit unit, out Length length)
    {
        var isOther = text.EndsWith(LengthLetter(ExactNumber.Other(unit)));
        return ExactNumber.TryReadLength(isOther ? text[..^1] : text, isOther ? ExactNumber.Other(unit) : unit, out length);
    }

    public static bool TryRead(ReadOnlySpan<char> text, LengthUnit unit, out Force force)
    {
        var isOther = text.EndsWith(ForceLetter(ExactNumber.Other(unit)));
        return ExactNumber.TryReadForce(isOther ? text[..^1] : text, isOther ? ExactNumber.Other(unit) : unit, out force);
    }

    private static string LengthLetter(LengthUnit unit) => unit == LengthUnit.Inch ? "I" : "M";

    /// <summary>Of pounds-force, which go with inches, and of newtons.</summary>
    private static string ForceLetter(LengthUnit unit) => unit == LengthUnit.Inch ? "L" : "N";
}
