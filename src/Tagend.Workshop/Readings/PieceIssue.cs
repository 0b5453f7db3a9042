using Tagend.Specs;

namespace Tagend.Workshop.Readings;

/// <summary>An issue of a piece, as papers and tags name it.</summary>
/// <param name="Order">The order's number, in capitals.</param>
/// <param name="Piece">The piece's name, in lower case.</param>
/// <param name="Revision">From 1.</param>
public sealed record PieceIssue(string Order, string Piece, int Revision)
{
    /// <summary>The issue that a spec is.</summary>
    public static PieceIssue Of(BuildSpec spec) => new(spec.Order, spec.Piece, spec.Revision);

    /// <summary><c>701/buss, revision 1</c>.</summary>
    public override string ToString() => FormattableString.Invariant($"{Order}/{Piece}, revision {Revision}");
}
