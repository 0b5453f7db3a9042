namespace Tagend.Fuzz;

/// <summary>A reader of the program and what comes after it, fed with spoiled inputs. Each thread has its own.</summary>
public interface ITarget : IDisposable
{
    /// <summary>Words that mean something to the reader.</summary>
    IReadOnlyList<byte[]> Tokens { get; }

    /// <summary>Feeds one spoiled input. Any exception but of a broken world is a fault of the program.</summary>
    /// <returns>It was accepted.</returns>
    /// <exception cref="FaultException">The program took it for something that it is not.</exception>
    bool Run(Mutation mutation);
}

/// <summary>Something wrong that no exception of the program has said.</summary>
public sealed class FaultException(string message) : Exception(message);
