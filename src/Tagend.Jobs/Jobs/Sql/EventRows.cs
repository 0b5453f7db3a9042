using System.Data.Common;
using Tagend.Problems;

namespace Tagend.Jobs.Sql;

/// <summary>The rows of the log, which are added and never changed.</summary>
internal static class EventRows
{
    private static readonly SealedColumns Columns =
        new(["order_number", "piece", "what", "build", "at", "who", "bench", "reason", "write_key"], []);

    /// <summary>Adds an event.</summary>
    /// <returns>False where this write has added it before.</returns>
    /// <exception cref="TagendException">Its note has characters that nobody can see.</exception>
    public static bool Add(SqlStore store, BookEvent entry, Guid key) => EventNote.Fault(entry.Note.Who, entry.Note.Reason) is { } fault ? throw new TagendException(fault) { Blame = Blame.WrongValue } : store.Run(
        $"INSERT INTO events ({string.Join(", ", Columns.All)}, seal) VALUES ({string.Join(", ", Columns.All.Select(c => "@" + c))}, @seal) ON CONFLICT DO NOTHING",
        Columns.Sealed(
        [
            ("order_number", entry.Order),
            ("piece", entry.Piece),
            ("what", StateWords.Of(entry.What)),
            ("build", entry.Build),
            ("at", UtcTime.Write(entry.At)),
            ("who", entry.Note.Who),
            ("bench", entry.Note.Bench),
            ("reason", entry.Note.Reason),
            ("write_key", key.ToString()),
        ])) > 0;

    /// <summary>All of an order, in the order of logging.</summary>
    public static List<BookEvent> Of(SqlStore store, string order) => store.Read(
        $"SELECT number, {string.Join(", ", Columns.All)}, seal FROM events WHERE order_number = @order ORDER BY number", Event, ("order", order));

    private static BookEvent Event(DbDataReader row)
    {
        Columns.Hold(row, "seal", $"entry {row["number"]} of the log");
        return new BookEvent(
            row.Whole("number"),
            row.Text("order_number"),
            row.Text("piece"),
            BookWords.Event(row.Text("what")),
            row.Whole("build"),
            UtcTime.Read(row.Text("at")),
            new EventNote(row.Text("who"), row.Text("bench"), row.Text("reason")));
    }
}
