using Tagend.Jobs;
using Tagend.Jobs.Sqlite;

namespace Tagend.Addresses;

/// <summary>Reads where a job book is.</summary>
public static class JobBookAddressReader
{
    /// <param name="text">A file's path.</param>
    public static JobBookAddress Read(string text) => new SqliteAddress(text);
}
