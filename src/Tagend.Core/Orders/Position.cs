using Tagend.Measures;

namespace Tagend.Orders;

/// <summary>An end of a piece; A is the upper one on the bow, unless the plan says otherwise.</summary>
public enum PieceEnd
{
    /// <summary>The upper end.</summary>
    A,

    /// <summary>The lower end.</summary>
    B,
}

/// <summary>A place on a piece, as ordered: a distance from one of its ends, on the finished piece.</summary>
/// <param name="End">The end it is measured from.</param>
/// <param name="Distance">0 or more.</param>
public readonly record struct Position(PieceEnd End, Length Distance)
{
    /// <summary>The same place as a distance from end A.</summary>
    public Length FromA(Length finishedLength) => End == PieceEnd.A ? Distance : finishedLength - Distance;
}

/// <summary>A serving as ordered: two places, and the thread and color if they are named.</summary>
/// <param name="From">Where it starts; measured from the same end as <paramref name="To"/>.</param>
/// <param name="Text">The words it was read from, for messages.</param>
public sealed record OrderedServing(Position From, Position To, string? Thread, string? Color, string Text);
