using System.IO.MemoryMappedFiles;

namespace Tagend.Pdf;

/// <summary>A font's file, mapped and not read: of a face a few glyphs are looked at.</summary>
internal sealed unsafe class FontFile
{
    private readonly MemoryMappedViewAccessor _view;

    private FontFile(MemoryMappedViewAccessor view, int size) => (_view, Size) = (view, size);

    /// <summary>Where it begins in memory, for as long as this object is held.</summary>
    public nint Data => _view.SafeMemoryMappedViewHandle.DangerousGetHandle();

    /// <summary>In bytes.</summary>
    public int Size { get; }

    public ReadOnlySpan<byte> Bytes => new((byte*)Data, Size);

    /// <returns>Null where there is no such file, or none that can be read or has anything in it.</returns>
    public static FontFile? Of(string path)
    {
        try
        {
            using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 0);
            if (stream.Length is 0 or > int.MaxValue)
            {
                return null;
            }

            using var mapped = MemoryMappedFile.CreateFromFile(stream, null, 0, MemoryMappedFileAccess.Read, HandleInheritability.None, leaveOpen: true);
            return new FontFile(mapped.CreateViewAccessor(0, 0, MemoryMappedFileAccess.Read), (int)stream.Length);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }
}
