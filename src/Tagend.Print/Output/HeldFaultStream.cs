using System.Runtime.ExceptionServices;

namespace Tagend.Output;

/// <summary>
/// Passes bytes on, and holds the first fault until it is asked for: an exception must not run through Skia's native code.
/// </summary>
internal sealed class HeldFaultStream(Stream output) : Stream
{
    private ExceptionDispatchInfo? _fault;
    private long _written;

    public override bool CanRead => false;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => _written;

    public override long Position
    {
        get => _written;
        set => throw new NotSupportedException();
    }

    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        _written += buffer.Length;
        if (_fault is not null)
        {
            return;
        }

        try
        {
            output.Write(buffer);
        }
        catch (IOException e)
        {
            _fault = ExceptionDispatchInfo.Capture(e);
        }
    }

    /// <exception cref="IOException">What went wrong while writing.</exception>
    public void ThrowIfFaulted() => _fault?.Throw();

    public override void Flush()
    {
    }

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();
}
