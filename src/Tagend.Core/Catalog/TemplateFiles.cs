using System.Text;
using Tagend.Problems;

namespace Tagend.Catalog;

/// <summary>Opens the files of a templates folder. What cannot be read, never ends or is far too large ends in a sentence.</summary>
public static class TemplateFiles
{
    private const int MostMegabytes = 16;
    private const int MostBytes = MostMegabytes << 20;

    /// <summary>Paths of a folder's files of a pattern, by name; none where there is no such folder.</summary>
    /// <exception cref="TagendException">The folder cannot be read.</exception>
    public static IReadOnlyList<string> In(string folder, string pattern) => Readable<IReadOnlyList<string>>(folder, () =>
        Directory.Exists(folder) ? [.. Directory.EnumerateFiles(folder, pattern).Order(StringComparer.Ordinal)] : []);

    /// <summary>A file's bytes; none of a pipe or a device, which may never end.</summary>
    /// <exception cref="TagendException">It cannot be read, or is too large for a template.</exception>
    public static byte[] Bytes(string path) => Readable(path, () =>
    {
        var info = new FileInfo(path);
        var length = (info.ResolveLinkTarget(returnFinalTarget: true) as FileInfo ?? info).Length;
        return length <= MostBytes
            ? length == 0 ? [] : File.ReadAllBytes(path)
            : throw new TagendException(CatalogWording.TooBig(path, MostMegabytes));
    });

    /// <summary>A file's text: UTF-8, or what its byte order mark says.</summary>
    /// <exception cref="TagendException">It cannot be read, or is too large for a template.</exception>
    public static string Text(string path)
    {
        var bytes = Bytes(path);
        if (bytes is [> 0 and < 0x80, ..])
        {
            return Encoding.UTF8.GetString(bytes); // no mark begins so
        }

        using var text = new StreamReader(new MemoryStream(bytes), Encoding.UTF8);
        return text.ReadToEnd();
    }

    private static T Readable<T>(string path, Func<T> read)
    {
        try
        {
            return read();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new TagendException(CatalogWording.Unreadable(path, SystemReason.Of(e)), e);
        }
    }
}
