using System.Buffers;
using System.Text;
using Spectre.Console;
using Tagend.Problems;

namespace Tagend.Streams;

/// <summary>
/// The standard streams, so that nothing from outside makes a terminal do things, and what nobody takes stops no work: papers
/// and entries are made all the same, and the end says that output is lost.
/// </summary>
internal static class Terminal
{
    /// <summary>Written at once, where a season's texts are some hundred million.</summary>
    private const int ManyCharacters = 1 << 14;

    private static readonly LastingStream Standard = new(Console.OpenStandardOutput());
    private static readonly Lazy<IAnsiConsole> Spectre = new(() => AnsiConsole.Create(new AnsiConsoleSettings { Out = new Drawing() }));

    /// <summary>For what scripts read: as it is.</summary>
    public static Stream Output => Standard;

    /// <summary>For what has a shape. Its writer is not looked through: texts from outside go there by <see cref="ShownText"/>.</summary>
    public static IAnsiConsole Shapes => Spectre.Value;

    /// <summary>Why standard output was not taken; null where all of it was.</summary>
    public static Exception? OutputFault => Standard.Fault;

    /// <summary>Columns of a line; 80 where it is no terminal.</summary>
    public static int Width => Shapes.Profile.Width;

    /// <summary>Somebody may answer at standard input.</summary>
    public static bool IsAttended => !Console.IsInputRedirected;

    /// <summary>Puts itself before the system's streams.</summary>
    public static void Begin()
    {
        Console.SetOut(Text(isBuffered: false));
        Console.SetError(new ShownWriter(Writer(new LastingStream(Console.OpenStandardError()), isBuffered: false)));
    }

    /// <summary>Standard output for much text, which is written when it is disposed of.</summary>
    public static TextWriter Buffered() => Text(isBuffered: true);

    private static ShownWriter Text(bool isBuffered) => new(Writer(Standard, isBuffered));

    private static StreamWriter Writer(Stream stream, bool isBuffered) =>
        new(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), isBuffered ? ManyCharacters : -1, leaveOpen: true) { AutoFlush = !isBuffered };

    private sealed class Drawing : IAnsiConsoleOutput
    {
        public TextWriter Writer { get; } = Terminal.Writer(Standard, isBuffered: false);

        public bool IsTerminal => !Console.IsOutputRedirected;

        public int Width => Size(() => Console.BufferWidth, 80);

        public int Height => Size(() => Console.WindowHeight, 24);

        public void SetEncoding(Encoding encoding)
        {
        }

        private static int Size(Func<int> of, int otherwise)
        {
            try
            {
                return of() is > 0 and var size ? size : otherwise;
            }
            catch (IOException)
            {
                return otherwise;
            }
        }
    }
}

/// <summary>A stream to write to, that goes on where nobody takes what is written and remembers why.</summary>
internal sealed class LastingStream(Stream stream) : Stream
{
    public Exception? Fault { get; private set; }

    public override bool CanRead => false;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        if (Fault is not null)
        {
            return;
        }

        try
        {
            stream.Write(buffer);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Fault = e;
        }
    }

    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    public override void Flush()
    {
    }

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();
}

/// <summary>Writes texts with the numbers of characters that cannot be seen in their place, but for tabs and the ends of lines.</summary>
internal sealed class ShownWriter(TextWriter output) : TextWriter
{
    private static readonly string Kept = "\t" + Environment.NewLine + "\n";

    /// <summary>Nearly all of what is written: a season's specs are some million lines, and few characters need a look.</summary>
    /// <remarks>ASCII alone, which is looked through many characters at once.</remarks>
    private static readonly SearchValues<char> Plain =
        SearchValues.Create([.. Kept, .. Enumerable.Range(0, 0x80).Select(c => (char)c).Where(c => ShownText.IsShown(new Rune(c)))]);

    public override Encoding Encoding => output.Encoding;

    public override void Write(char value) => output.Write(ShownText.Of([value], Kept));

    public override void Write(ReadOnlySpan<char> buffer)
    {
        while (!buffer.IsEmpty)
        {
            var plain = buffer.IndexOfAnyExcept(Plain) is var end and >= 0 ? end : buffer.Length;
            output.Write(buffer[..plain]);
            buffer = buffer[plain..];
            var other = buffer.IndexOfAny(Plain) is var start and >= 0 ? start : buffer.Length;
            output.Write(ShownText.Of(buffer[..other], Kept));
            buffer = buffer[other..];
        }
    }

    public override void Write(char[] buffer, int index, int count) => Write(buffer.AsSpan(index, count));

    public override void Write(string? value) => Write(value.AsSpan());

    public override void WriteLine(string? value)
    {
        Write(value);
        output.WriteLine();
    }

    public override void Flush() => output.Flush();

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            output.Dispose();
        }

        base.Dispose(disposing);
    }
}
