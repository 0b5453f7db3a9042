using Tagend.Measures;
using Tagend.Specs;

namespace Tagend.Tags;

/// <summary>The fixed words and letters of tag text, version 1. Grammar: docs/TAGTEXT.md.</summary>
internal static class TagGrammar
{
    public const string Version = "1";
    public const string PieceWord = "TE";
    public const string BagWord = "TB";
    public const string PieceMark = PieceWord + Version;
    public const string BagMark = BagWord + Version;

    public const string DateFormat = "yyyyMMdd";

    public const char FieldSeparator = '*';
    public const char PartSeparator = '/';
    public const char ItemSeparator = '+';

    /// <summary>Between the texts on a bag.</summary>
    public const char TextSeparator = '$';

    public static readonly LetterCode<LengthUnit> UnitWords = new(
        (LengthUnit.Inch, "IN"), (LengthUnit.Millimeter, "MM"));

    public static readonly LetterCode<TakeUpModel> ModelLetters = new(
        (TakeUpModel.Rule, "R"), (TakeUpModel.Helix, "H"), (TakeUpModel.Fitted, "F"));

    public static readonly LetterCode<TwistDirection> DirectionLetters = new(
        (TwistDirection.Clockwise, "C"), (TwistDirection.Counterclockwise, "A"));

    public static readonly LetterCode<ServingRole> RoleLetters = new(
        (ServingRole.EndA, "A"), (ServingRole.Center, "C"), (ServingRole.EndB, "B"), (ServingRole.Other, "O"));

    public static readonly LetterCode<MarkKind> MarkLetters = new(
        (MarkKind.NockPoint, "N"), (MarkKind.SpeedNock, "S"));
}

/// <summary>Values and the letters that stand for them, both ways.</summary>
internal sealed class LetterCode<T>(params (T Value, string Letters)[] pairs)
    where T : struct
{
    public string this[T value] => Array.Find(pairs, p => EqualityComparer<T>.Default.Equals(p.Value, value)).Letters;

    public T? Find(ReadOnlySpan<char> letters)
    {
        foreach (var (value, code) in pairs)
        {
            if (letters.SequenceEqual(code))
            {
                return value;
            }
        }

        return null;
    }
}
