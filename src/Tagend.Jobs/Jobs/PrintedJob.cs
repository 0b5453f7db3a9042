using Tagend.Measures;

namespace Tagend.Jobs;

/// <summary>One issue of a piece, as it was printed, and what was built of it.</summary>
public sealed record PrintedJob
{
    /// <summary>The job's number in the book; numbers grow in the order of printing.</summary>
    public required long Number { get; init; }

    /// <summary>The order's number, in capitals.</summary>
    public required string Order { get; init; }

    /// <summary>The piece's name, in lower case.</summary>
    public required string Piece { get; init; }

    /// <summary>1 for the first issue.</summary>
    public required int Revision { get; init; }

    /// <summary>The date on the pages.</summary>
    public required DateOnly Issued { get; init; }

    /// <summary>The plan that gave the defaults.</summary>
    public required string Kind { get; init; }

    /// <summary>The strand material's name in the catalog.</summary>
    public required string Material { get; init; }

    /// <summary>The number of strands.</summary>
    public required int Strands { get; init; }

    /// <summary>Over measuring pins, outside to outside.</summary>
    public required Length FinishedLength { get; init; }

    /// <summary>The finished length may be this much longer or shorter.</summary>
    public required Length Tolerance { get; init; }

    /// <summary>As the spec wants it: over measuring pins, before twisting, end loops closed.</summary>
    public required Length LaidUpLength { get; init; }

    /// <summary>As the spec wants them: exact, outside to outside.</summary>
    public required Length Posts { get; init; }

    /// <summary>The customer's name; empty where none was given.</summary>
    public required string Customer { get; init; }

    /// <summary>The bow; empty where none was given.</summary>
    public required string Bow { get; init; }

    /// <summary>When the order is due, as it was written; empty where nothing was.</summary>
    public required string Due { get; init; }

    /// <summary>The tag's text: the whole spec.</summary>
    public required string Tag { get; init; }

    /// <summary>When the job was entered, to the second.</summary>
    public required DateTimeOffset PrintedAt { get; init; }

    /// <summary>What was built of it, in the order of logging.</summary>
    public ValueList<LoggedBuild> Builds { get; init; } = [];
}

/// <summary>What was really done to a piece.</summary>
public sealed record AsBuilt
{
    /// <summary>The posts as they were set, outside to outside.</summary>
    public required Length Posts { get; init; }

    /// <summary>The turns as they were put in, halves too.</summary>
    public required double Turns { get; init; }

    /// <summary>The finished length over measuring pins, outside to outside, after stretching.</summary>
    public required Length Measured { get; init; }

    /// <summary>The load on the stretcher.</summary>
    public required Force Load { get; init; }

    /// <summary>The minutes on the stretcher.</summary>
    public required double Minutes { get; init; }

    /// <summary>Initials or name of the builder; may be empty.</summary>
    public required string Who { get; init; }

    /// <summary>The lots of strand material and thread it was built of, in capitals; none where they were not noted.</summary>
    public ValueList<string> Lots { get; init; } = [];
}

/// <summary>A build in the log.</summary>
/// <param name="Number">The build's number in the book, from 1 and never used again.</param>
/// <param name="LoggedAt">When it was logged, to the second.</param>
/// <param name="IsLeftOut">It is left out of the fit, by choice.</param>
public sealed record LoggedBuild(long Number, AsBuilt Built, DateTimeOffset LoggedAt, bool IsLeftOut);

/// <summary>What to look for in a job book; null stands for anything.</summary>
public sealed record JobSearch
{
    /// <summary>The order's number as in the book: in capitals.</summary>
    public string? Order { get; init; }

    /// <summary>The piece's name as in the book: in lower case.</summary>
    public string? Piece { get; init; }

    /// <summary>Any part of the customer's name, in any case.</summary>
    public string? Customer { get; init; }

    /// <summary>Any part of the bow, in any case.</summary>
    public string? Bow { get; init; }

    /// <summary>The first date of issue.</summary>
    public DateOnly? From { get; init; }

    /// <summary>The last date of issue.</summary>
    public DateOnly? To { get; init; }

    /// <summary>A lot that a build of the job was made of, the whole of it in any case.</summary>
    public string? Lot { get; init; }

    /// <summary>Only jobs with a build.</summary>
    public bool IsBuilt { get; init; }
}
