namespace Tagend.Qr.Read;

/// <summary>A picture that cannot be read: its message is a sentence with the picture's name, what is wrong and what helps.</summary>
public sealed class PictureException : Exception
{
    /// <summary>A picture that cannot be read, for a reason found in it.</summary>
    public PictureException(string message)
        : base(message)
    {
    }

    /// <summary>A picture that cannot be read, for a reason the system gave.</summary>
    public PictureException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
