using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;

namespace Tagend.Specs;

/// <summary>What became of one row of an order file.</summary>
/// <param name="problems">Of the row, of its spec, and of the piece among its set.</param>
/// <param name="made">Null where the piece cannot be built by itself; else made when it is asked for.</param>
public sealed class PieceReport(RowName name, IReadOnlyList<Problem> problems, Lazy<Build>? made)
{
    /// <summary>The set's number, in capitals.</summary>
    public string Order => name.Order;

    /// <summary>The piece's name, in lower case.</summary>
    public string Piece => name.Piece;

    /// <summary>The line its row starts on, from 1.</summary>
    public int Line => name.Line;

    /// <summary>Null where the piece cannot be built by itself.</summary>
    public BuildSpec? Spec => made?.Value.Spec;

    /// <summary>Blank where the piece cannot be built.</summary>
    public OrderSlip Slip => made?.Value.Slip ?? OrderSlip.Blank;

    /// <summary>The problems of the row, of its spec, and of the piece among its set.</summary>
    public IReadOnlyList<Problem> Problems => problems;
}

/// <summary>A set without a problem, whose pieces are computed only when it is made.</summary>
/// <param name="make">Makes it of its rows: equal sets each time, on any thread.</param>
/// <param name="only">Pieces that are wanted of it; null for all.</param>
public sealed class ReadySet(IGrouping<string, int> rows, Func<IGrouping<string, int>, BuildSet> make, IReadOnlySet<string>? only = null)
{
    /// <summary>The set's number, in capitals.</summary>
    public string Order => rows.Key;

    /// <summary>The number of its pieces that are wanted.</summary>
    public int Pieces => only?.Count ?? rows.Count();

    /// <summary>The same set with those of its pieces alone that are among these.</summary>
    public ReadySet Only(IReadOnlySet<string> pieces) => new(rows, make, only is null ? pieces : pieces.Where(only.Contains).ToHashSet());

    /// <summary>Computes its pieces: an equal set each time, on any thread.</summary>
    public BuildSet Make()
    {
        var set = make(rows);
        return only is null ? set : set with { Builds = set.Builds.Where(b => only.Contains(b.Spec.Piece)).ToValueList() };
    }
}

/// <summary>What became of a file of orders. It holds problems and names, and no spec: the specs of a season are too large.</summary>
/// <param name="Pieces">Every row that names a piece, in the file's order; each made when it is asked for.</param>
/// <param name="Ready">To print, in the file's order.</param>
/// <param name="Withheld">Orders with a problem in any of their pieces, or in the set as a whole.</param>
/// <param name="Problems">All of the file and all of its specs, in the file's order.</param>
public sealed record SetReport(
    IReadOnlyList<PieceReport> Pieces,
    IReadOnlyList<ReadySet> Ready,
    IReadOnlyList<string> Withheld,
    IReadOnlyList<Problem> Problems)
{
    /// <summary>Those that are ready, each made anew whenever it is asked for.</summary>
    public IReadOnlyList<BuildSet> MakeSets() => new MadeList<BuildSet>(Ready.Count, i => Ready[i].Make());
}
