namespace Tagend.Bows;

/// <summary>All wording about the bow book, so that tests can hold it.</summary>
internal static class BowWording
{
    /// <summary>Names of bows that are listed in one sentence.</summary>
    private const int MostListed = 12;

    public const string NoPieces = "expected a section for each piece of the bow, such as [string]";

    public static string NameTwice(string other) => $"is already a name of bows/{other}.toml: give each bow its own names";

    public static string NoBow(string? nearest, IReadOnlyList<string> bows) => bows.Count == 0
        ? "the row names no piece, and bows in the templates folder has no bow to take the pieces from: give each piece a row, or keep the bow"
        : $"the row names no piece, and there is no such bow in the bow book: {(nearest is null ? $"there are {Listed(bows)}" : $"did you mean {nearest}?")}";

    public static string NoPiece(BowRecipe bow) =>
        $"bows/{bow.Name}.toml has no such piece, and the row has no length: it has {string.Join(", ", bow.Pieces.Select(p => p.Name))}";

    public static string WhichPiece(BowRecipe bow) =>
        $"the row is for the whole set, and this may be of any piece of it: name the piece ({string.Join(", ", bow.Pieces.Select(p => p.Name))}) in a row of its own";

    public static string Origin(BowRecipe bow, BowPiece piece, string column) => $"{column} of {piece.Name} in bows/{bow.Name}.toml";

    /// <param name="others">Columns where the order says otherwise: its text and the book's.</param>
    public static string Note(BowRecipe bow, IReadOnlyList<(string Column, string Own, string Booked)> others) => others.Count == 0
        ? $"Bow book: {bow.Bow}"
        : $"Bow book: {bow.Bow}, but as ordered: {string.Join("; ", others.Select(o => $"{o.Column.Replace('_', ' ')} {o.Own} (book: {o.Booked})"))}";

    private static string Listed(IReadOnlyList<string> bows) => bows.Count <= MostListed
        ? string.Join(", ", bows)
        : FormattableString.Invariant($"{string.Join(", ", bows.Take(MostListed))} and {bows.Count - MostListed} more");
}
