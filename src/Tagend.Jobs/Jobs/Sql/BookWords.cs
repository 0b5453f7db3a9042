using Tagend.Measures;

namespace Tagend.Jobs.Sql;

/// <summary>The words that stand for choices in the tables.</summary>
internal static class BookWords
{
    public static string Of(PieceState mark) => mark switch
    {
        PieceState.Shipped => "shipped",
        PieceState.Cancelled => "cancelled",
        _ => throw new InvalidOperationException($"{mark} is no mark"),
    };

    public static string Of(EventKind what) => what switch
    {
        EventKind.Shipped => "shipped",
        EventKind.Cancelled => "cancelled",
        EventKind.Reopened => "reopened",
        EventKind.Remade => "remade",
        EventKind.Corrected => "corrected",
        EventKind.Struck => "struck",
        _ => throw new InvalidOperationException($"no word for {what}"),
    };

    public static PieceState? Mark(string word) => word switch
    {
        "" => null,
        "shipped" => PieceState.Shipped,
        "cancelled" => PieceState.Cancelled,
        _ => throw new InvalidDataException($"\"{word}\" is no mark of a job"),
    };

    public static EventKind Event(string word) => Enum.GetValues<EventKind>().FirstOrDefault(e => Of(e) == word) is var found && Of(found) == word
        ? found
        : throw new InvalidDataException($"\"{word}\" is nothing that the log has");

    public static LengthUnit? Unit(string symbol) => symbol.Length == 0 ? null
        : Enum.GetValues<LengthUnit>().Cast<LengthUnit?>().FirstOrDefault(u => LengthWriter.Symbol(u!.Value) == symbol)
            ?? throw new InvalidDataException($"\"{symbol}\" is no unit");
}
