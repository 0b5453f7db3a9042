using Tagend.Problems;

namespace Tagend.Jobs;

/// <summary>What can become of a piece or of a build, beside being printed and built.</summary>
public enum EventKind
{
    /// <summary>It has left the shop.</summary>
    Shipped,

    /// <summary>It is not to be made.</summary>
    Cancelled,

    /// <summary>It is worked on again: neither shipped nor cancelled any more.</summary>
    Reopened,

    /// <summary>It is to be made again, whatever was built.</summary>
    Remade,

    /// <summary>A build was logged with wrong values, and another stands for it.</summary>
    Corrected,

    /// <summary>A build is none: it was logged by mistake.</summary>
    Struck,
}

/// <summary>An entry in the log of a job book, which is only ever added to.</summary>
/// <param name="Number">Numbers grow in the order of logging.</param>
/// <param name="Order">The order's number, in capitals.</param>
/// <param name="Piece">The piece's name; empty for all pieces of the order.</param>
/// <param name="Build">The build that is corrected or struck; 0 for none.</param>
/// <param name="At">When it was logged, to the second.</param>
/// <param name="Note">Who, where and why.</param>
public sealed record BookEvent(long Number, string Order, string Piece, EventKind What, long Build, DateTimeOffset At, EventNote Note);

/// <summary>Who did something, where and why; each may be empty.</summary>
/// <param name="Who">Initials or a name.</param>
/// <param name="Bench">Where the run was that logged it.</param>
public sealed record EventNote(string Who, string Bench, string Reason)
{
    private const int LongestReason = 400;

    /// <summary>What is wrong with what somebody wrote of an event, after the name of what it is; null where nothing is.</summary>
    public static string? Fault(string who, string reason) =>
        BuiltQuestion.NameFault(who) is { } fault ? $"who \"{who}\": {fault}"
        : reason.Length <= LongestReason && ShownText.IsShown(reason) ? null
        : FormattableString.Invariant($"reason \"{reason}\": expected at most {LongestReason} visible characters");
}
