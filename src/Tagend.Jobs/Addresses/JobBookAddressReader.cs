using Tagend.Jobs;
using Tagend.Jobs.Sqlite;
using Tagend.Problems;

namespace Tagend.Addresses;

/// <summary>Reads where a job book is.</summary>
public static class JobBookAddressReader
{
    /// <param name="text">A file's path.</param>
    /// <exception cref="TagendException">The text would name no file that stays: SQLite's memory, or its own way to write paths.</exception>
    public static JobBookAddress Read(string text) => text switch
    {
        ":memory:" => throw new TagendException($"{text}: what is entered there is gone when the run ends; name a file for the job book"),
        _ when text.StartsWith("file:", StringComparison.OrdinalIgnoreCase) =>
            throw new TagendException($"{text}: expected the path of the job book's file, without \"file:\" before it"),
        _ => new SqliteAddress(text),
    };
}
