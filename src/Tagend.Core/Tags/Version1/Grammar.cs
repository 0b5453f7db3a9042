using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Specs;
using Tagend.Tags.Text;

namespace Tagend.Tags.Version1;

/// <summary>The words and letters of tag text, version 1: frozen. Grammar: docs/TAGTEXT.md.</summary>
internal static class Grammar
{
    public const string Version = "1";
    public const string PieceMark = TagSigns.PieceWord + Version;
    public const string BagMark = TagSigns.BagWord + Version;

    public static readonly LetterCode<LengthUnit> UnitWords = new(
        (LengthUnit.Inch, "IN"), (LengthUnit.Millimeter, "MM"));

    public static readonly LetterCode<TakeUpModel> ModelLetters = new(
        (TakeUpModel.Rule, "R"), (TakeUpModel.Helix, "H"), (TakeUpModel.Fitted, "F"));

    /// <summary>Clockwise and counterclockwise, seen from end A: of its hook, which makes S and Z.</summary>
    public static readonly LetterCode<Hand> DirectionLetters = new((Hand.S, "C"), (Hand.Z, "A"));

    public static readonly LetterCode<ServingRole> RoleLetters = new(
        (ServingRole.EndA, "A"), (ServingRole.Center, "C"), (ServingRole.EndB, "B"), (ServingRole.Other, "O"));

    public static readonly LetterCode<MarkKind> MarkLetters = new(
        (MarkKind.NockPoint, "N"), (MarkKind.SpeedNock, "S"));
}
