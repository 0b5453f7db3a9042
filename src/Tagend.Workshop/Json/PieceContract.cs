using System.Text.Json.Serialization;
using Tagend.Catalog;
using Tagend.Specs;

namespace Tagend.Workshop.Json;

/// <summary>A row of an order file that cannot be built.</summary>
internal sealed record BrokenPieceContract(string Order, string Piece, int Line, IReadOnlyList<ProblemContract> Problems)
{
    internal static BrokenPieceContract Of(PieceReport piece) => new(piece.Order, piece.Piece, piece.Line, ProblemContract.Of(piece));
}

/// <summary>A row of an order file: its piece, its problems, its spec, and the stock it takes.</summary>
internal sealed record PieceContract : SpecContract
{
    internal PieceContract(PieceReport piece, BuildSpec spec, Shop shop)
        : base(spec)
    {
        (Order, Piece, Line, Problems) = (piece.Order, piece.Piece, piece.Line, ProblemContract.Of(piece));
        Stock = [.. Specs.Stock.Of(spec, shop).Select(StockContract.Of)];
    }

    [JsonPropertyOrder(-4)]
    public string Order { get; }

    [JsonPropertyOrder(-3)]
    public string Piece { get; }

    [JsonPropertyOrder(-2)]
    public int Line { get; }

    [JsonPropertyOrder(-1)]
    public IReadOnlyList<ProblemContract> Problems { get; }

    [JsonPropertyOrder(1)]
    public IReadOnlyList<StockContract> Stock { get; }
}

/// <summary>What is wrong with a row; a warning holds nothing back.</summary>
internal sealed record ProblemContract(string Severity, string? Column, string? Text, string Message)
{
    internal static IReadOnlyList<ProblemContract> Of(PieceReport piece) =>
        [.. piece.Problems.Select(p => new ProblemContract(p.Severity == Tagend.Problems.Severity.Refusal ? "problem" : "warning", p.At.Column, p.Text, p.Message))];
}

/// <summary>A length to pull from one spool.</summary>
internal sealed record StockContract(string Kind, string Name, string Color, LengthContract Length)
{
    internal static StockContract Of(StockNeed need) =>
        new(need.Kind == StockKind.Strand ? "strand" : "thread", need.Name, need.Color, LengthContract.Of(need.Length));
}
