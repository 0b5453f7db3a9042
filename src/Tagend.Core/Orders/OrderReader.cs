using Tagend.Measures;
using Tagend.Problems;

namespace Tagend.Orders;

/// <summary>Reads a file of orders, with all its problems at once.</summary>
public static class OrderReader
{
    // Some hundred thousand rows; what is larger, or never ends, is something else.
    private const int MostMegabytes = 64;
    private const int MostBytes = MostMegabytes << 20;

    /// <summary>Reads a file on disk.</summary>
    /// <param name="bareUnit">The unit of a length that names none.</param>
    /// <param name="columnAliases">A shop's own column names, to ours.</param>
    /// <exception cref="TagendException">The file is not there or cannot be read.</exception>
    public static OrderFile Read(
        string path, LengthUnit bareUnit, IReadOnlyDictionary<string, string> columnAliases) =>
        Read([path], bareUnit, new OwnColumns(columnAliases));

    /// <summary>Reads several files on disk; an order may have rows in more than one of them.</summary>
    /// <param name="format">Of all of them.</param>
    /// <param name="colors">The shop's colors; null where each is called what it is ordered by.</param>
    /// <exception cref="TagendException">A file is not there or cannot be read.</exception>
    public static OrderFile Read(
        IEnumerable<string> paths, LengthUnit bareUnit, OrderFormat format, ColorNames? colors = null) =>
        Read([.. paths.Select(path => (path, Load(path)))], bareUnit, format, colors);

    /// <summary>Reads orders that are in memory.</summary>
    /// <param name="file">Name of their source, for messages.</param>
    public static OrderFile Read(
        string file, byte[] bytes, LengthUnit bareUnit, IReadOnlyDictionary<string, string> columnAliases) =>
        Read([(file, bytes)], bareUnit, new OwnColumns(columnAliases));

    /// <summary>Reads files that are in memory, each with the name that messages have.</summary>
    public static OrderFile Read(
        IReadOnlyList<(string File, byte[] Bytes)> files, LengthUnit bareUnit, OrderFormat format, ColorNames? colors = null)
    {
        var reading = new OrderReading(bareUnit, colors ?? ColorNames.None);
        foreach (var (file, bytes) in files)
        {
            if (OrderText.Read(file, bytes, reading.Problems) is { } text)
            {
                reading.ReadAll(file, new OrderTable(text), format);
            }
        }

        return reading.Result(files.Select(f => f.File));
    }

    /// <summary>A file's bytes.</summary>
    /// <exception cref="TagendException">It is not there, cannot be read, or is larger than any file of orders.</exception>
    public static byte[] Load(string path)
    {
        if (Directory.Exists(path))
        {
            throw new TagendException(OrderWording.IsFolder(path));
        }

        if (!File.Exists(path))
        {
            throw new TagendException(OrderWording.NotFound(path));
        }

        try
        {
            // A spreadsheet program may have it open.
            using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            // As large as the file at once: its bytes are held as long as its rows, and should be held only once.
            var bytes = new MemoryStream(file.CanSeek ? (int)Math.Min(file.Length, MostBytes) : 0);
            var buffer = new byte[1 << 16];
            for (var count = file.Read(buffer); count > 0; count = file.Read(buffer))
            {
                bytes.Write(buffer, 0, count);
                if (bytes.Length > MostBytes)
                {
                    throw new TagendException(OrderWording.TooBig(path, MostMegabytes));
                }
            }

            return bytes.Length == bytes.Capacity ? bytes.GetBuffer() : bytes.ToArray();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new TagendException(OrderWording.Unreadable(path, SystemReason.Of(e)), e);
        }
    }
}
