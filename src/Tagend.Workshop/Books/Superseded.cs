using Tagend.Jobs;
using Tagend.Measures;

namespace Tagend.Workshop.Books;

/// <summary>Papers that are no longer the newest of their piece, in sentences.</summary>
internal static class Superseded
{
    internal const string Cancelled = "is cancelled, so no papers of it are printed: leave it out of the file, or reopen it first";

    /// <summary>Changes that are named one by one.</summary>
    private const int MostNamed = 6;

    /// <summary>That papers are superseded, by which, and what to do.</summary>
    /// <param name="newest">The issue that is to be built.</param>
    internal static string Sentence(PrintedJob newest) =>
        $"superseded by revision {newest.Revision} of {DateWriter.Iso(newest.Issued)}: do not build from it; find that card or print it again";

    internal static string NewIssue(int revision, PrintedJob newest, IReadOnlyList<string> changes)
    {
        var named = string.Join("; ", changes.Take(MostNamed)) + (changes.Count > MostNamed ? FormattableString.Invariant($"; {changes.Count - MostNamed} more") : "");
        return $"is now revision {revision}: {named}. Throw away the card, strip and tags of revision {newest.Revision}, printed {DateWriter.Iso(newest.Issued)}";
    }

    internal static string OtherCustomer(PrintedJob last, string now, NumberReuse reuse) =>
        $"was printed for {last.Customer} on {DateWriter.Iso(last.Issued)} ({last.Piece}), and here it is for {now}: give this order a number of its own, or say that the number is used again on purpose{(reuse.How.Length > 0 ? $" ({reuse.How})" : "")}";
}
