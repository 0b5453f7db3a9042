using Tagend.Measures;
using Tagend.Orders;

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

    /// <summary>The order's notes; empty where there are none.</summary>
    public string Notes { get; init; } = "";

    /// <summary>Language of the customer's sheet; empty for the shop's own.</summary>
    public string Language { get; init; } = "";

    /// <summary>Of the customer's sheet; null for those of all other papers.</summary>
    public LengthUnit? Units { get; init; }

    /// <summary>What is packed with this piece.</summary>
    public ValueList<string> Accessories { get; init; } = [];

    /// <summary>The tag's text: the whole spec.</summary>
    public required string Tag { get; init; }

    /// <summary>When the job was entered, to the second.</summary>
    public required DateTimeOffset PrintedAt { get; init; }

    /// <summary>Where it was printed; empty where benches have no names.</summary>
    public string Bench { get; init; } = "";

    /// <summary>Shipped or cancelled; null where it is neither.</summary>
    public PieceState? Mark { get; init; }

    /// <summary>Builds from this number on are of the piece as it is made again; 0 where it never was.</summary>
    public long RemadeFrom { get; init; }

    /// <summary>What was built of it, in the order of logging, with builds that were struck.</summary>
    public ValueList<LoggedBuild> Builds { get; init; } = [];

    /// <summary>Builds that stand: neither struck, nor of before the piece was remade.</summary>
    public IEnumerable<LoggedBuild> Standing => Builds.Where(b => !b.IsStruck && (b.Replaces > 0 ? b.Replaces : b.Number) >= RemadeFrom);

    /// <summary>How far the piece has come by this issue.</summary>
    public PieceState State => Mark ?? (Standing.Any() ? PieceState.Built : RemadeFrom > 0 ? PieceState.Remade : PieceState.Printed);

    /// <summary>What its papers say beside the spec.</summary>
    public OrderSlip Slip => new(Customer, Bow, Due, Notes) { Language = Language, Units = Units, Accessories = Accessories };
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

    /// <summary>What it took from spools of the shop; none where they were not noted. Their lots are among <see cref="Lots"/>.</summary>
    public ValueList<SpoolUse> Spools { get; init; } = [];
}

/// <summary>A build in the log.</summary>
/// <param name="Number">The build's number in the book, from 1 and never used again.</param>
/// <param name="LoggedAt">When it was logged, to the second.</param>
/// <param name="IsLeftOut">It is left out of the fit, by choice.</param>
public sealed record LoggedBuild(long Number, AsBuilt Built, DateTimeOffset LoggedAt, bool IsLeftOut)
{
    /// <summary>Where it was logged; empty where benches have no names.</summary>
    public string Bench { get; init; } = "";

    /// <summary>It is none, or another stands for it: nothing is learned from it.</summary>
    public bool IsStruck { get; init; }

    /// <summary>The first of the builds that this one stands for, corrected; 0 for none.</summary>
    public long Replaces { get; init; }
}

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

    /// <summary>A lot that a build of the job was made of, the whole of it in any case; builds that were struck are none.</summary>
    public string? Lot { get; init; }

    /// <summary>Only jobs with a build, of struck ones too.</summary>
    public bool IsBuilt { get; init; }

    /// <summary>Only orders with a piece that is neither shipped nor cancelled.</summary>
    public bool IsOpen { get; init; }

    /// <summary>What was printed last comes first.</summary>
    public bool IsNewestFirst { get; init; }
}
