namespace Tagend.Problems;

/// <summary>The world is broken: a file cannot be read, a disk is full, a printer does not answer. Says so in words.</summary>
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

    /// <summary>Something was asked for by a name that the shop does not have: wrong usage, and nothing is broken.</summary>
    public bool IsUnknownName { get; init; }
}
