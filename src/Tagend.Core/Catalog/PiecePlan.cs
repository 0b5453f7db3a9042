using Tagend.Measures;
using Tagend.Orders;

namespace Tagend.Catalog;

/// <summary>The bows a piece is for: what its customer sheet says.</summary>
public enum BowSystem
{
    /// <summary>Compound bows: a string and cables on cams.</summary>
    Compound,

    /// <summary>Recurves and longbows: a string alone.</summary>
    Recurve,

    /// <summary>Crossbows, with cables or without.</summary>
    Crossbow,
}

/// <summary>A kind of piece and its defaults. From plans/NAME.toml.</summary>
public sealed record PiecePlan
{
    /// <summary>As orders name it in the column kind, in lower case.</summary>
    public required string Name { get; init; }

    /// <summary>Other names that pieces of this kind are ordered by.</summary>
    public ValueList<string> Also { get; init; } = [];

    /// <summary>As pages name it.</summary>
    public required string Title { get; init; }

    /// <summary>The bows it is for; null where nothing says it, as of a piece of no kind.</summary>
    public required BowSystem? System { get; init; }

    /// <summary>What end A is on the bow.</summary>
    public required string EndA { get; init; }

    /// <summary>What end B is on the bow.</summary>
    public required string EndB { get; init; }

    /// <summary>Least usual finished length.</summary>
    public required Length Shortest { get; init; }

    /// <summary>Greatest usual finished length.</summary>
    public required Length Longest { get; init; }

    /// <summary>A finished piece may be this much longer or shorter: ±1/16 in by AMO Standards FP-3, 2000, where the plan says nothing else.</summary>
    public required Length Tolerance { get; init; }

    /// <summary>Whether a peep separator belongs into it.</summary>
    public required bool NeedsPeep { get; init; }

    /// <summary>Whether all pieces of this kind in a set are equal, such as twin cables.</summary>
    public required bool IsPaired { get; init; }

    /// <summary>Whether both ends are equal, such as the legs of a yoke.</summary>
    public required bool IsMirrored { get; init; }

    /// <summary>Kinds that a set with this piece has too.</summary>
    public required ValueList<string> Partners { get; init; }

    /// <summary>From the outside of the measuring pin at end A to where the legs meet; zero where the loop is left open.</summary>
    public required Length EndLoopA { get; init; }

    /// <summary>From the outside of the measuring pin at end B to where the legs meet; zero where the loop is left open.</summary>
    public required Length EndLoopB { get; init; }

    /// <summary>Thread the end loops are served with, so that it lies between pin and strand; null where they stay bare.</summary>
    public required string? LoopThread { get; init; }

    /// <summary>From end A to where the strands split into two legs, half of them each; null for a piece without legs.</summary>
    public required Length? Split { get; init; }

    /// <summary>Length left at each tag end; null for the shop's.</summary>
    public required Length? Tail { get; init; }

    /// <summary>Whether a piece without a center serving is warned of.</summary>
    public required bool NeedsCenterServing { get; init; }

    /// <summary>Whether the floor of four times the draw weight is meant for it: a rule for strings, not for cables.</summary>
    public required bool HasStrengthFloor { get; init; }

    /// <summary>Turns per inch for pieces of this kind; null where material or shop say.</summary>
    public required double? TurnsPerInch { get; init; }

    /// <summary>Take-up of one turn by the rule model for pieces of this kind; null where material or shop say.</summary>
    public required Length? RuleTakeUpPerTurn { get; init; }

    /// <summary>Strand material where the order names none; null where the order must.</summary>
    public required string? Material { get; init; }

    /// <summary>Strands where the order names none; null where the order must.</summary>
    public required int? Strands { get; init; }

    /// <summary>Serving thread where none is named.</summary>
    public required string Thread { get; init; }

    /// <summary>Color of servings and served loops where none is named; empty where the shop's stock decides.</summary>
    public required string ThreadColor { get; init; }

    /// <summary>Servings where the order has none.</summary>
    public required ValueList<OrderedServing> Servings { get; init; }

    /// <summary>Separators besides the peep.</summary>
    public required ValueList<PlannedSeparator> Separators { get; init; }

    /// <summary>Shots a new piece settles in, after which the bow is measured again.</summary>
    public required int FirstShots { get; init; }

    /// <summary>Whether an order calls it by this name or one of its others: letter case, spaces and hyphens do not matter.</summary>
    public bool IsCalled(string name) => Also.Prepend(Name).Any(n => Plain(n) == Plain(name));

    private static string Plain(string name) =>
        string.Join(' ', name.ToLowerInvariant().Split([' ', '-', '_'], StringSplitOptions.RemoveEmptyEntries));
}

/// <summary>A separator that every piece of a kind has, such as a yoke's split.</summary>
/// <param name="Name">As cards name it.</param>
/// <param name="At">Its place on the finished piece.</param>
public sealed record PlannedSeparator(string Name, Position At);
