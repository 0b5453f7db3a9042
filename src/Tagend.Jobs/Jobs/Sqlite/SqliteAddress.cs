using Tagend.Jobs.Sql;

namespace Tagend.Jobs.Sqlite;

/// <summary>A job book in a file.</summary>
/// <param name="path">The file, which need not be there yet.</param>
/// <param name="patience">How long to wait for another run that writes, to whole seconds.</param>
public sealed class SqliteAddress(string path, TimeSpan? patience = null) : JobBookAddress(path)
{
    private readonly TimeSpan _patience = patience ?? Patience;

    public override IJobBook? OpenExisting(TimeProvider clock) =>
        File.Exists(Text) ? new SqlJobBook(SqliteStore.Open(Text, make: false, _patience), clock) : null;

    public override IJobBook OpenOrBegin(TimeProvider clock) =>
        new SqlJobBook(SqliteStore.Open(Text, make: true, _patience), clock);
}
