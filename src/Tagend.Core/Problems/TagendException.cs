namespace Tagend.Problems;

/// <summary>The world is broken: a file cannot be read, a disk is full, a printer does not answer. Says so in words.</summary>
public sealed class TagendException : Exception
{
    public TagendException()
    {
    }

    public TagendException(string message)
        : base(message)
    {
    }

    public TagendException(string message, Exception inner)
        : base(message, inner)
    {
    }
}
