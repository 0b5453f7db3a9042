using Tagend.Measures;

namespace Tagend.Jobs.Sql;

/// <summary>Choices read from the words that stand for them in the tables.</summary>
internal static class BookWords
{
    /// <returns>Null where a job is neither shipped nor cancelled.</returns>
    /// <exception cref="InvalidDataException">The word is none of the marks.</exception>
    public static PieceState? Mark(string word) => word.Length == 0 ? null : Choice([PieceState.Shipped, PieceState.Cancelled], StateWords.Of, word);

    /// <exception cref="InvalidDataException">The word is no event.</exception>
    public static EventKind Event(string word) => Choice(Enum.GetValues<EventKind>(), StateWords.Of, word);

    /// <returns>Null where none is given.</returns>
    /// <exception cref="InvalidDataException">The word is no unit.</exception>
    public static LengthUnit? Unit(string word) => word.Length == 0 ? null : Choice(Enum.GetValues<LengthUnit>(), LengthWriter.Symbol, word);

    private static T Choice<T>(IEnumerable<T> choices, Func<T, string> wordOf, string word) => choices.Where(c => wordOf(c) == word).ToList() is [var choice]
        ? choice
        : throw new InvalidDataException($"\"{word}\" is none of {string.Join(", ", choices.Select(wordOf))}");
}
