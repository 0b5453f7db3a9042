using Tagend.Problems;

namespace Tagend.Jobs;

/// <summary>Where a job book is, and how it is opened there.</summary>
/// <param name="text">The address as the user wrote it, without a secret.</param>
public abstract class JobBookAddress(string text)
{
    /// <summary>How long a run waits for another one that writes.</summary>
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    /// <summary>The address as messages show it.</summary>
    public string Text { get; } = text;

    /// <summary>Opens the book that has been begun here; an older one is brought to today's version.</summary>
    /// <param name="bench">Where this run is: kept with all it enters; empty where benches have no names.</param>
    /// <returns>Null where no book has been begun yet.</returns>
    /// <exception cref="TagendException">There is something, but it cannot be used.</exception>
    public abstract IJobBook? OpenExisting(TimeProvider clock, string bench = "");

    /// <summary>Opens the book here, and begins a new one where there is none.</summary>
    /// <param name="bench">Where this run is: kept with all it enters; empty where benches have no names.</param>
    /// <exception cref="TagendException">The book cannot be used or begun.</exception>
    public abstract IJobBook OpenOrBegin(TimeProvider clock, string bench = "");

    /// <summary>Lets the book here be filled in one go; where there is none, one appears with all that it is filled with, or not at all.</summary>
    /// <param name="fill">Fills the book; called again where a server's connection was lost.</param>
    /// <returns>What <paramref name="fill"/> returns.</returns>
    /// <exception cref="TagendException">The book cannot be used or begun.</exception>
    public abstract T Fill<T>(TimeProvider clock, Func<IJobBook, T> fill);
}
