using Tagend.Measures;

namespace Tagend.Jobs;

/// <summary>One issue of a piece, as it was printed, and what was built of it.</summary>
/// <param name="Number">In the book, in the order of printing.</param>
/// <param name="Issued">The date on the pages.</param>
/// <param name="LaidUpLength">As the spec wants it: over measuring pins, before twisting, end loops closed.</param>
/// <param name="Posts">As the spec wants them, exact, outside to outside.</param>
/// <param name="Tag">The tag's text: the whole spec.</param>
public sealed record PrintedJob(
    long Number,
    string Order,
    string Piece,
    int Revision,
    DateOnly Issued,
    string Kind,
    string Material,
    int Strands,
    Length FinishedLength,
    Length Tolerance,
    Length LaidUpLength,
    Length Posts,
    string Customer,
    string Bow,
    string Due,
    string Tag,
    DateTimeOffset PrintedAt)
{
    public ValueList<LoggedBuild> Builds { get; init; } = [];
}

/// <summary>What was really done to a piece.</summary>
/// <param name="Posts">As they were set, outside to outside.</param>
/// <param name="Turns">As they were put in, halves too.</param>
/// <param name="Measured">Over measuring pins, outside to outside, after stretching.</param>
/// <param name="Load">On the stretcher.</param>
/// <param name="Minutes">On the stretcher.</param>
/// <param name="Who">Initials or name; may be empty.</param>
public sealed record AsBuilt(Length Posts, double Turns, Length Measured, Force Load, double Minutes, string Who);

/// <summary>A build in the log.</summary>
/// <param name="Number">In the book, from 1, never used again.</param>
/// <param name="IsLeftOut">Of the fit, by choice.</param>
public sealed record LoggedBuild(long Number, AsBuilt Built, DateTimeOffset LoggedAt, bool IsLeftOut);

/// <summary>What to look for; null for anything.</summary>
/// <param name="Order">As in the book: capitals.</param>
/// <param name="Piece">As in the book: lower case.</param>
/// <param name="Customer">Any part of it, in any case.</param>
/// <param name="Bow">Any part of it, in any case.</param>
/// <param name="From">First date of issue.</param>
/// <param name="To">Last date of issue.</param>
/// <param name="IsBuilt">Only jobs with a build.</param>
public sealed record JobSearch(
    string? Order = null,
    string? Piece = null,
    string? Customer = null,
    string? Bow = null,
    DateOnly? From = null,
    DateOnly? To = null,
    bool IsBuilt = false);
