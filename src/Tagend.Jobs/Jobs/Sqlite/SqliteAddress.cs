using Microsoft.Data.Sqlite;
using Tagend.Files;
using Tagend.Jobs.Sql;
using Tagend.Problems;

namespace Tagend.Jobs.Sqlite;

/// <summary>A job book in a file.</summary>
/// <remarks>A new book is made beside its place and then moved there, so that no program ever sees a part of one.</remarks>
/// <param name="path">The file, which need not be there yet.</param>
/// <param name="patience">How long to wait for another run that writes, to whole seconds.</param>
public sealed class SqliteAddress(string path, TimeSpan? patience = null) : JobBookAddress(path)
{
    private readonly TimeSpan _patience = patience ?? Patience;

    /// <inheritdoc/>
    public override IJobBook? OpenExisting(TimeProvider clock, string bench = "") => OpenStore() is { } store ? new SqlJobBook(store, clock, bench) : null;

    /// <inheritdoc/>
    public override IJobBook OpenOrBegin(TimeProvider clock, string bench = "")
    {
        if (!File.Exists(Text))
        {
            Begin();
        }

        return OpenExisting(clock, bench) ?? throw new TagendException(JobWording.CannotOpen(Text));
    }

    /// <inheritdoc/>
    public override T Fill<T>(TimeProvider clock, Func<IJobBook, T> fill)
    {
        if (OpenStore() is { } existing)
        {
            return Filled(existing, clock, fill);
        }

        var folder = Path.GetDirectoryName(Path.GetFullPath(Text))!;
        try
        {
            using var drafts = Directory.Exists(folder) ? TempFiles.In(folder) : throw new DirectoryNotFoundException();
            var draft = Path.Combine(drafts.Folder, Path.GetFileName(Text));
            var filled = Filled(SqliteStore.Open(draft, Text, SqliteOpenMode.ReadWriteCreate, _patience), clock, fill);
            File.Move(draft, Text);
            DiskSync.ForceNames(folder);
            return filled;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new TagendException(CannotBegin(e), e);
        }
    }

    private static T Filled<T>(SqliteStore store, TimeProvider clock, Func<IJobBook, T> fill)
    {
        using var book = new SqlJobBook(store, clock, "");
        return store.Write(() => fill(book));
    }

    private SqliteStore? OpenStore() => new FileInfo(Text) switch
    {
        { Exists: false } => null,
        { Length: 0 } => throw new TagendException(JobWording.Empty(Text)),
        _ => SqliteStore.Open(Text, Text, SqliteOpenMode.ReadWrite, _patience),
    };

    /// <remarks>
    /// All who begin at once make the same draft, one after the other by its lock. Who moves it first takes it away from the
    /// others, and the book is there for all.
    /// </remarks>
    private void Begin()
    {
        var draft = Text + ".new";
        try
        {
            SqliteStore.Open(draft, Text, SqliteOpenMode.ReadWriteCreate, _patience).Dispose();
            File.Move(draft, Text);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or TagendException && File.Exists(Text))
        {
            File.Delete(draft);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new TagendException(CannotBegin(e), e);
        }
    }

    private string CannotBegin(Exception e) => SystemReason.IsDiskFull(e) ? JobWording.DiskFull(Text) : JobWording.CannotOpen(Text);
}
