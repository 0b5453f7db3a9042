using Tagend.Problems;

namespace Tagend.Output;

/// <summary>What a disk refuses, in a sentence with the file, the reason and what to do.</summary>
public static class WriteFault
{
    /// <summary>Does what may fail for the disk's sake, and names the file that it failed for.</summary>
    /// <param name="path">Of the file, or of the folder it is for.</param>
    /// <param name="act">What may fail.</param>
    /// <exception cref="TagendException">It failed.</exception>
    public static T Named<T>(string path, Func<T> act)
    {
        try
        {
            return act();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new TagendException($"{path}: {Reason(e)}", e);
        }
    }

    /// <summary>As for what has a result.</summary>
    /// <exception cref="TagendException">It failed.</exception>
    public static void Named(string path, Action act) => Named(path, () =>
    {
        act();
        return true;
    });

    private static string Reason(Exception e) => e switch
    {
        IsFolderException => "is a folder; name a file",
        IsSpecialException => "is a device or a pipe, which a file would replace; name a file",
        UnauthorizedAccessException => "may not be written; choose a folder you may write to, or close the program that has the file open",
        DirectoryNotFoundException => "its folder cannot be made; choose another folder",
        PathTooLongException => "the name is too long; choose a shorter one",
        _ when SystemReason.IsDiskFull(e) => "the disk is full; free some space and run again",
        IOException when SystemReason.IsNameTaken(e) => "a file stands where a folder is needed; choose another folder",
        _ => $"cannot be written ({SystemReason.Of(e)}); choose another folder or try again",
    };
}

/// <summary>A folder stands where a file is to be.</summary>
internal sealed class IsFolderException : IOException;

/// <summary>A device, a pipe or a socket stands where a file is to be.</summary>
internal sealed class IsSpecialException : IOException;
