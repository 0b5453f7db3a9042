namespace Tagend.Jobs;

/// <summary>The words that states and events have in a book, on the terminal, in JSON and in CSV.</summary>
public static class StateWords
{
    /// <summary>Of a piece.</summary>
    public static string Of(PieceState state) => state switch
    {
        PieceState.New => "new",
        PieceState.Printed => "printed",
        PieceState.Remade => "remade",
        PieceState.Built => "built",
        PieceState.Shipped => "shipped",
        PieceState.Cancelled => "cancelled",
        _ => throw new InvalidOperationException($"no word for {state}"),
    };

    /// <summary>Of what became of something.</summary>
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
}
