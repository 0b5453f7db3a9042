using Tagend.Measures;
using Tagend.Orders;

namespace Tagend.Catalog;

/// <summary>The bows a piece is for: what its customer sheet says.</summary>
public enum BowSystem
{
    Compound,
    Recurve,
    Crossbow,
}

/// <summary>A kind of piece and its defaults. From plans/NAME.toml.</summary>
/// <param name="Name">As orders name it in the column kind, in lower case.</param>
/// <param name="Title">As pages name it.</param>
/// <param name="EndA">What end A is on the bow.</param>
/// <param name="EndB">What end B is on the bow.</param>
/// <param name="Shortest">Least usual finished length.</param>
/// <param name="Longest">Greatest usual finished length.</param>
/// <param name="Tolerance">±1/16 in by AMO Standards FP-3, 2000, where the plan says nothing else.</param>
/// <param name="NeedsPeep">A peep separator belongs into it.</param>
/// <param name="IsPaired">All pieces of this kind in a set are equal, such as twin cables.</param>
/// <param name="IsMirrored">Both ends are equal, such as the legs of a yoke.</param>
/// <param name="Partners">Kinds that a set with this piece has too.</param>
/// <param name="EndLoopA">From the outside of the measuring pin to where the legs meet; zero where the loop is left open.</param>
/// <param name="EndLoopB">The same at end B.</param>
/// <param name="Thread">Serving thread where none is named.</param>
/// <param name="Servings">Where the order has none.</param>
/// <param name="Separators">Besides the peep.</param>
/// <param name="FirstShots">Shots a new piece settles in, after which the bow is measured again.</param>
public sealed record PiecePlan(
    string Name,
    string Title,
    BowSystem System,
    string EndA,
    string EndB,
    Length Shortest,
    Length Longest,
    Length Tolerance,
    bool NeedsPeep,
    bool IsPaired,
    bool IsMirrored,
    ValueList<string> Partners,
    Length EndLoopA,
    Length EndLoopB,
    string? Material,
    int? Strands,
    string Thread,
    ValueList<OrderedServing> Servings,
    ValueList<PlannedSeparator> Separators,
    int FirstShots);

/// <summary>A separator that every piece of a kind has, such as a yoke's split.</summary>
public sealed record PlannedSeparator(string Name, Position At);
