using System.IO.Compression;
using System.IO.Hashing;

namespace Tagend.Pdf;

/// <summary>The objects of a PDF, written one after the other as they are finished; all are numbered from 1.</summary>
/// <remarks>
/// ISO 32000-1: 7.5.7, what is no stream goes into object streams; 7.5.8, a cross-reference stream tells where all are. The
/// same objects make the same bytes, the file's identifier (14.4) too: a hash of what was written.
/// </remarks>
internal sealed class PdfObjects(Stream output) : IDisposable
{
    private const int MostInAStream = 200;

    /// <summary>Level 3 of 9: six tenths of the time of the usual 6, and 6 % more bytes.</summary>
    private static readonly ZLibCompressionOptions Squeeze = new() { CompressionLevel = 3 };

    private readonly List<Entry> _entries = [new Entry(0, 65535, 0)];
    private readonly XxHash128 _hash = new();
    private readonly PdfBuffer _line = new();
    private readonly PdfBuffer _gathered = new();
    private readonly PdfBuffer _index = new();
    private readonly MemoryStream _squeezed = new();
    private int _gathering;
    private int _inStream;
    private long _written;

    /// <summary>The file's head; the four bytes above 127 tell programs that it is no text: 7.5.2.</summary>
    public void Begin() => Write([.. "%PDF-1.7\n%"u8, 0xE2, 0xE3, 0xCF, 0xD3, (byte)'\n']);

    /// <summary>A number for an object that is written later.</summary>
    public int Reserve()
    {
        _entries.Add(default);
        return _entries.Count - 1;
    }

    /// <summary>An object that is no stream.</summary>
    public void Add(int number, PdfBuffer content)
    {
        if (_gathering == 0)
        {
            _gathering = Reserve();
        }

        _entries[number] = new Entry(_gathering, _inStream, 2);
        _index.Add(number).Add(_gathered.Length);
        _gathered.Add(content.Bytes).Character((byte)'\n');
        _inStream++;
        if (_inStream == MostInAStream)
        {
            Flush();
        }
    }

    /// <summary>An object that is a stream, squeezed by Flate unless it is to be read as it is.</summary>
    /// <param name="dictionary">Its entries but length and filter.</param>
    public void AddStream(int number, ReadOnlySpan<byte> dictionary, ReadOnlySpan<byte> content, bool squeeze = true)
    {
        if (!squeeze)
        {
            AddStream(number, dictionary, default, content);
            return;
        }

        _squeezed.SetLength(0);
        using (var zlib = new ZLibStream(_squeezed, Squeeze, leaveOpen: true))
        {
            zlib.Write(content);
        }

        AddStream(number, dictionary, "/Filter/FlateDecode"u8, _squeezed.GetBuffer().AsSpan(0, (int)_squeezed.Length));
    }

    /// <summary>Ends the file.</summary>
    public void End(int catalog, int information)
    {
        Flush();
        var table = Reserve();
        _entries[table] = new Entry(_written, 0, 1);
        var offsetBytes = 1;
        while (_written >> (8 * offsetBytes) > 0)
        {
            offsetBytes++;
        }

        _gathered.Clear();
        foreach (var entry in _entries)
        {
            _gathered.Character(entry.Type);
            for (var i = offsetBytes - 1; i >= 0; i--)
            {
                _gathered.Character((byte)(entry.Place >> (8 * i)));
            }

            _gathered.Character((byte)(entry.Index >> 8)).Character((byte)entry.Index);
        }

        var identifier = Convert.ToHexString(_hash.GetCurrentHash());
        _index.Clear();
        _index.Add("/Type/XRef/Size "u8).Add(_entries.Count).Add("/W[1 "u8).Add(offsetBytes).Add("2]/Root "u8).Reference(catalog)
            .Add("/Info "u8).Reference(information).Add("/ID["u8);
        for (var i = 0; i < 2; i++)
        {
            _index.Character((byte)'<').Add(System.Text.Encoding.ASCII.GetBytes(identifier)).Character((byte)'>');
        }

        _index.Character((byte)']');
        var start = _written;
        AddStream(table, _index.Bytes, _gathered.Bytes);
        _line.Clear();
        Write(_line.Add("startxref\n"u8).Add((int)start).Add("\n%%EOF\n"u8).Bytes);
    }

    public void Dispose() => _squeezed.Dispose();

    /// <summary>Writes the objects gathered so far as an object stream.</summary>
    private void Flush()
    {
        if (_inStream == 0)
        {
            return;
        }

        _line.Clear();
        _line.Add("/Type/ObjStm/N "u8).Add(_inStream).Add("/First "u8).Add(_index.Length);
        var head = _line.Bytes.ToArray();
        _index.Add(_gathered.Bytes);
        AddStream(_gathering, head, _index.Bytes);
        _index.Clear();
        _gathered.Clear();
        (_gathering, _inStream) = (0, 0);
    }

    private void AddStream(int number, ReadOnlySpan<byte> dictionary, ReadOnlySpan<byte> filter, ReadOnlySpan<byte> content)
    {
        _entries[number] = new Entry(_written, 0, 1);
        _line.Clear();
        Write(_line.Add(number).Add("0 obj\n<<"u8).Add(dictionary).Add(filter).Add("/Length "u8).Add(content.Length).Add(">>stream\n"u8).Bytes);
        Write(content);
        Write("\nendstream\nendobj\n"u8);
    }

    private void Write(ReadOnlySpan<byte> bytes)
    {
        _hash.Append(bytes);
        output.Write(bytes);
        _written += bytes.Length;
    }

    /// <summary>Where an object is, table 18: in the file at a place (type 1), or in an object stream (type 2) at an index.</summary>
    /// <remarks>In the order that takes least: a volume of tagged pages has a hundred thousand.</remarks>
    private readonly record struct Entry(long Place, int Index, byte Type);
}
