using Tagend.Files;
using Tagend.Problems;

namespace Tagend.Output;

/// <summary>Files of drafts, in a folder of the run's own beside its papers. Each is gone when it is closed, the folder with the run.</summary>
/// <param name="folder">Of the papers; made if missing.</param>
public sealed class DraftFiles(string folder) : IDisposable
{
    private readonly Lazy<TempFiles> _files = new(() => TempFiles.In(folder));
    private readonly Lock _lock = new();
    private readonly List<FileStream> _open = [];

    /// <summary>A new file, to be read and written by one draft.</summary>
    /// <exception cref="TagendException">It cannot be made.</exception>
    public FileStream Make() => WriteFault.Named(folder, () =>
    {
        var made = _files.Value.Make($"{Guid.NewGuid():N}", isSecret: true, FileOptions.DeleteOnClose);
        lock (_lock)
        {
            _open.RemoveAll(f => !f.CanRead);
            _open.Add(made);
        }

        return made;
    });

    public void Dispose()
    {
        foreach (var file in _open)
        {
            try
            {
                file.Dispose();
            }
            catch (IOException)
            {
                // What of it was not on disk yet finds no room: nobody wants it any more.
            }
        }

        if (_files.IsValueCreated)
        {
            _files.Value.Dispose();
        }
    }
}
