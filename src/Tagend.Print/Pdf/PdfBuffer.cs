using System.Buffers.Text;
using System.Globalization;
using System.Text;

namespace Tagend.Pdf;

/// <summary>A part of a PDF in the making: its words, numbers and strings as bytes. Kept and used again, so that no page leaves garbage.</summary>
/// <remarks>ISO 32000-1, 7.3. A number or a reference is followed by a space, so that any other may follow it.</remarks>
internal sealed class PdfBuffer
{
    /// <summary>Of a number: to 1/100,000 of its unit.</summary>
    private const int Decimals = 5;

    private const double Scale = 1e5;

    private byte[] _bytes = new byte[4096];

    public int Length { get; private set; }

    public ReadOnlySpan<byte> Bytes => _bytes.AsSpan(0, Length);

    public void Clear() => Length = 0;

    /// <summary>Syntax as it stands.</summary>
    public PdfBuffer Add(ReadOnlySpan<byte> syntax)
    {
        syntax.CopyTo(Room(syntax.Length));
        Length += syntax.Length;
        return this;
    }

    public PdfBuffer Character(byte character)
    {
        Room(1)[0] = character;
        Length++;
        return this;
    }

    public PdfBuffer Add(int number)
    {
        Digits(number);
        return Character((byte)' ');
    }

    /// <summary>A number to five decimals, in as few characters as it takes.</summary>
    public PdfBuffer Add(double number)
    {
        var scaled = (long)Math.Round(Math.Abs(number) * Scale);
        if (number < 0 && scaled > 0)
        {
            Character((byte)'-');
        }

        var (whole, fraction) = Math.DivRem(scaled, (long)Scale);
        if (whole > 0 || fraction == 0)
        {
            Digits(whole);
        }

        if (fraction > 0)
        {
            Fraction((int)fraction);
        }

        return Character((byte)' ');
    }

    /// <summary>A number to nine decimals, for what others are multiplied by.</summary>
    public PdfBuffer Precise(double number)
    {
        number.TryFormat(Room(32), out var written, "0.#########", CultureInfo.InvariantCulture);
        Length += written;
        return Character((byte)' ');
    }

    /// <summary>A reference to an object: 7.3.10.</summary>
    public PdfBuffer Reference(int number)
    {
        Digits(number);
        return Add(" 0 R "u8);
    }

    /// <summary>A text string, 7.9.2.2: as it is where it is ASCII, else in UTF-16.</summary>
    public PdfBuffer Text(string text)
    {
        Character((byte)'(');
        if (!Ascii.IsValid(text))
        {
            Add([0xFE, 0xFF]);
        }

        foreach (var c in text)
        {
            if (!Ascii.IsValid(text))
            {
                InString((byte)(c >> 8));
            }

            InString((byte)c);
        }

        return Character((byte)')');
    }

    /// <summary>A byte of a literal string, 7.3.4.2. A carriage return would be read as a line feed.</summary>
    public void InString(byte value)
    {
        if (value is (byte)'(' or (byte)')' or (byte)'\\')
        {
            Character((byte)'\\');
        }
        else if (value == (byte)'\r')
        {
            Character((byte)'\\');
            value = (byte)'r';
        }

        Character(value);
    }

    private void Digits(long number)
    {
        if (number is >= 0 and < 10) // so are most that a code's bars have
        {
            Character((byte)('0' + number));
            return;
        }

        Utf8Formatter.TryFormat(number, Room(20), out var written);
        Length += written;
    }

    private void Fraction(int fraction)
    {
        var room = Room(Decimals + 1);
        room[0] = (byte)'.';
        for (var i = Decimals; i > 0; i--)
        {
            (fraction, var digit) = Math.DivRem(fraction, 10);
            room[i] = (byte)('0' + digit);
        }

        var length = Decimals + 1;
        while (room[length - 1] == (byte)'0')
        {
            length--;
        }

        Length += length;
    }

    private Span<byte> Room(int length)
    {
        if (Length + length > _bytes.Length)
        {
            Array.Resize(ref _bytes, Math.Max(_bytes.Length * 2, Length + length));
        }

        return _bytes.AsSpan(Length);
    }
}
