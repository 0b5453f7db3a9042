using Tagend.Measures;
using Tagend.Orders;

namespace Tagend.Catalog;

/// <summary>The shop: who it is, how it measures, and the jig it lays up on. From shop.toml.</summary>
public sealed record Shop
{
    /// <summary>Turns per inch where a shop says nothing else: common practice.</summary>
    public const double CommonTurnsPerInch = 0.75;

    /// <summary>Take-up of one turn by the rule model where a shop says nothing else: common practice.</summary>
    public static readonly Length CommonTakeUpPerTurn = Length.FromInches(0.012);

    /// <summary>As papers print it; empty where the shop has not given it.</summary>
    public required string Name { get; init; }

    /// <summary>As papers print it; empty where the shop has not given it.</summary>
    public required string Phone { get; init; }

    /// <summary>As papers print it; empty where the shop has not given it.</summary>
    public required string Web { get; init; }

    /// <summary>Path of an SVG or a PNG picture for the head of customer sheets; null for none.</summary>
    public string? Logo { get; init; }

    /// <summary>Of titles and headings on customer sheets; dark enough to read. Null for black.</summary>
    public InkColor? Accent { get; init; }

    /// <summary>Of all papers, as the files of words are named: <c>en</c>; a customer's sheet may have its own.</summary>
    public string Language { get; init; } = "en";

    /// <summary>How the shop writes a date of numbers only.</summary>
    public DateStyle Dates { get; init; }

    /// <summary>How a bare number is read and how lengths are printed.</summary>
    public required LengthUnit Unit { get; init; }

    /// <summary>The sheets and cards that are printed on where a run says nothing else.</summary>
    public required PaperSet Paper { get; init; }

    /// <summary>Where jig cards are printed.</summary>
    public CardLayout Cards { get; init; }

    /// <summary>A shop's own column names: theirs, in lower case, to ours.</summary>
    public required IReadOnlyDictionary<string, string> Columns { get; init; }

    /// <summary>The jig that strands are laid on.</summary>
    public required Jig Jig { get; init; }

    /// <summary>Pins the finished length is measured over: 1/4 in by AMO Standards FP-3, 2000.</summary>
    public required Length PinDiameter { get; init; }

    /// <summary>Turns per inch where the order names none: 0.75, common practice.</summary>
    public required double TurnsPerInch { get; init; }

    /// <summary>The model that decides where the shop's own builds do not: rule or helix.</summary>
    public required TakeUpModel TakeUpModel { get; init; }

    /// <summary>Hand of the twist.</summary>
    public required Hand TwistHand { get; init; }

    /// <summary>Hand of the servings' wraps.</summary>
    public required Hand ServingHand { get; init; }

    /// <summary>Take-up of the rule model: 0.012 in a turn, common practice.</summary>
    public required Length RuleTakeUpPerTurn { get; init; }

    /// <summary>Nock throat minus center serving, as the shop likes it.</summary>
    public required Length WantedNockClearance { get; init; }

    /// <summary>A clearance farther than this from the wanted one is warned of.</summary>
    public required Length GreatestNockMisfit { get; init; }

    /// <summary>Thread for starting and finishing one serving.</summary>
    public required Length ThreadTail { get; init; }

    /// <summary>Share of strand material and thread lost.</summary>
    public required double Waste { get; init; }

    /// <summary>Strand material in one dummy tag.</summary>
    public required Length DummyTag { get; init; }

    /// <summary>Share of the strands' summed strength that the finished piece carries.</summary>
    public required double TerminationEfficiency { get; init; }

    /// <summary>Stock for the tag of a bag.</summary>
    public required string BagStock { get; init; }

    /// <summary>Stock for the tag of a loop.</summary>
    public required string LoopStock { get; init; }

    /// <summary>The finest mark of the tape used with a unit.</summary>
    public Length TapeStep(LengthUnit unit) => unit == LengthUnit.Inch ? Jig.InchTapeStep : Jig.MillimeterTapeStep;
}

/// <summary>Where a jig card is printed: what the hand works by is too large for one side of a card.</summary>
public enum CardLayout
{
    /// <summary>On both sides of a card: the work on its front, what it rests on on its back.</summary>
    TwoSided,

    /// <summary>On one side of a sheet.</summary>
    FullPage,
}

/// <summary>Hand of a helix by ISO 2:1973: held upright, its turns slope as the middle stroke of the letter does.</summary>
public enum Hand
{
    /// <summary>Left-handed: from upper left to lower right.</summary>
    S,

    /// <summary>Right-handed: from upper right to lower left.</summary>
    Z,
}

/// <summary>Where a take-up number comes from.</summary>
public enum TakeUpModel
{
    /// <summary>A length for each turn, whatever the bundle: common practice.</summary>
    Rule,

    /// <summary>An ideal helical yarn.</summary>
    Helix,

    /// <summary>The shop's own builds: <see cref="FittedTakeUp"/>.</summary>
    Fitted,
}

/// <summary>The jig: its posts, their reach outside to outside, and the tape beside it.</summary>
public sealed record Jig
{
    /// <summary>What a diameter of posts has to be, in words; null where it can be that of a jig's posts.</summary>
    public static string? WhyNotPosts(Length diameter) => LengthRange.Post.Holds(diameter) ? null : CatalogWording.Beyond(LengthRange.Post);

    /// <summary>Diameter of the posts the strands are laid around; null where the shop has not given it.</summary>
    public required Length? PostDiameter { get; init; }

    /// <summary>Least setting of the posts, outside to outside.</summary>
    public required Length Shortest { get; init; }

    /// <summary>Greatest setting of the posts, outside to outside.</summary>
    public required Length Longest { get; init; }

    /// <summary>Finest mark of the tape in inches.</summary>
    public required Length InchTapeStep { get; init; }

    /// <summary>Finest mark of the tape in millimeters.</summary>
    public required Length MillimeterTapeStep { get; init; }

    /// <summary>Length left at each tag end for tying.</summary>
    public required Length Tail { get; init; }
}
