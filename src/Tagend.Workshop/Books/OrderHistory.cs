using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Workshop.Readings;

namespace Tagend.Workshop.Books;

/// <summary>Something that was done to a piece or an order.</summary>
/// <param name="At">When it was logged, to the second.</param>
/// <param name="Piece">Empty for all pieces of the order.</param>
/// <param name="What">In words.</param>
/// <param name="Note">Who, where and why.</param>
public sealed record HistoryEntry(DateTimeOffset At, string Piece, string What, EventNote Note);

/// <summary>All that was done to an order: printed, built, and whatever became of it.</summary>
public static class OrderHistory
{
    /// <summary>Reads it from the book.</summary>
    /// <param name="unit">Of its lengths.</param>
    /// <returns>The first first; of one second, printed before built before all else. None where the book does not have it.</returns>
    /// <exception cref="Problems.TagendException">The book cannot be used.</exception>
    public static IReadOnlyList<HistoryEntry> Of(OrderPart part, IJobBook book, LengthUnit unit)
    {
        var jobs = book.Find(new JobSearch { Order = part.Order, Piece = part.Piece }).ToList();
        var printed = jobs.Select(j => new HistoryEntry(
            j.PrintedAt, j.Piece, FormattableString.Invariant($"revision {j.Revision} printed"), new EventNote("", j.Bench, "")));
        var built = jobs.SelectMany(j => j.Builds, (j, b) => new HistoryEntry(b.LoggedAt, j.Piece, Said(j, b, unit), new EventNote(b.Built.Who, b.Bench, "")));
        var others = book.Events(part.Order).Where(e => part.Piece is null || e.Piece.Length == 0 || e.Piece == part.Piece)
            .Select(e => new HistoryEntry(e.At, e.Piece, e.Build > 0 ? $"build {e.Build} {StateWords.Of(e.What)}" : StateWords.Of(e.What), e.Note));
        return [.. printed.Concat(built).Concat(others).OrderBy(e => e.At)];
    }

    private static string Said(PrintedJob job, LoggedBuild build, LengthUnit unit) =>
        $"build {build.Number}{(build.Replaces > 0 ? $", in place of {build.Replaces}" : "")}, revision {job.Revision}: "
        + $"{LengthWriter.Mark(build.Built.Measured, unit)}, {FormattableString.Invariant($"{build.Built.Turns:0.##}")} turns";
}
