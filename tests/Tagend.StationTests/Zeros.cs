namespace Tagend.StationTests;

/// <summary>So many bytes of nothing.</summary>
internal sealed class Zeros(long length) : Stream
{
    public override bool CanRead => true;

    public override bool CanSeek => true;

    public override bool CanWrite => false;

    public override long Length => length;

    public override long Position { get; set; }

    public override int Read(byte[] buffer, int offset, int count)
    {
        var read = (int)Math.Min(count, length - Position);
        Array.Clear(buffer, offset, read);
        Position += read;
        return read;
    }

    public override long Seek(long offset, SeekOrigin origin) => Position = origin == SeekOrigin.Begin ? offset : origin == SeekOrigin.Current ? Position + offset : length + offset;

    public override void Flush()
    {
    }

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
