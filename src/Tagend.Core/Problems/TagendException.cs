namespace Tagend.Problems;

/// <summary>Where the fault lies when something cannot be done.</summary>
public enum Blame
{
    /// <summary>With the world: a file cannot be read, a disk is full, a printer or a server does not answer.</summary>
    World,

    /// <summary>With who asked, by a name that the shop does not have: wrong usage, and nothing is broken.</summary>
    UnknownName,

    /// <summary>With who asked for an order, a build, a spool or a file that is not there, or not any more.</summary>
    Missing,

    /// <summary>With who gave a value that cannot be used, or none where one is needed.</summary>
    WrongValue,

    /// <summary>With nobody: what was to be changed is not any more as whoever changes it has seen it.</summary>
    Changed,
}

/// <summary>Something cannot be done: in most cases the world is broken, as when a disk is full. Says so in words.</summary>
public sealed class TagendException : Exception
{
    /// <summary>An exception without a sentence, which .NET asks every exception type for; the program never throws it so.</summary>
    public TagendException()
    {
    }

    /// <summary>An exception with its sentence.</summary>
    /// <param name="message">What is wrong, where, and what to do: a sentence for the user.</param>
    public TagendException(string message)
        : base(message)
    {
    }

    /// <summary>An exception with its sentence and what caused it.</summary>
    /// <param name="message">What is wrong, where, and what to do: a sentence for the user.</param>
    /// <param name="inner">The failure as .NET or a library reports it.</param>
    public TagendException(string message, Exception inner)
        : base(message, inner)
    {
    }

    /// <summary>Where the fault lies; with the world where nothing is said.</summary>
    public Blame Blame { get; init; }
}
