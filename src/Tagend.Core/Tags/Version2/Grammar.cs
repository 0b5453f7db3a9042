using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Specs;
using Tagend.Tags.Text;

namespace Tagend.Tags.Version2;

/// <summary>The words and letters of tag text, version 2: frozen. Grammar: docs/TAGTEXT.md.</summary>
internal static class Grammar
{
    public const string Version = "2";
    public const string PieceMark = TagSigns.PieceWord + Version;
    public const string BagMark = TagSigns.BagWord + Version;

    public static readonly LetterCode<LengthUnit> UnitWords = new(
        (LengthUnit.Inch, "IN"), (LengthUnit.Millimeter, "MM"));

    public static readonly LetterCode<TakeUpModel> ModelLetters = new(
        (TakeUpModel.Rule, "R"), (TakeUpModel.Helix, "H"), (TakeUpModel.Fitted, "F"));

    public static readonly LetterCode<Hand> HandLetters = new((Hand.S, "S"), (Hand.Z, "Z"));

    /// <summary>Hand of the servings behind that of the twist: the same letter, or none for the other hand.</summary>
    public static readonly LetterCode<Hand> ServingHandsOfS = new((Hand.Z, ""), (Hand.S, "S"));

    public static readonly LetterCode<Hand> ServingHandsOfZ = new((Hand.S, ""), (Hand.Z, "Z"));

    /// <summary>Behind the breaking force: there is a draw weight, and the floor of four times it is not meant for the piece.</summary>
    public const string NoFloor = "N";

    public static readonly LetterCode<ServingRole> RoleLetters = new(
        (ServingRole.EndA, "A"), (ServingRole.Center, "C"), (ServingRole.EndB, "B"), (ServingRole.Other, "O"));

    public static readonly LetterCode<MarkKind> MarkLetters = new(
        (MarkKind.NockPoint, "N"), (MarkKind.SpeedNock, "S"));
}
