using System.Text;

namespace Tagend.Qr.Read;

/// <summary>From data codewords to text: ISO/IEC 18004:2015, 7.4.</summary>
internal sealed class SegmentDecoder
{
    private const string Alphanumeric = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:";
    private const int ModeBits = 4;

    /// <summary>FNC1 within a text, as GS1's General Specifications have it sent.</summary>
    private const char GroupSeparator = '\x1D';

    private readonly BitReader _bits;
    private readonly int _version;
    private readonly StringBuilder _text = new();

    // Bytes wait for the end of their run, for a character may begin in one segment and end in the next.
    private readonly List<byte> _bytes = [];
    private Encoding? _characterSet;
    private bool _hasFunction1;

    private SegmentDecoder(byte[] codewords, int version) => (_bits, _version) = (new BitReader(codewords), version);

    private enum Mode
    {
        Terminator = 0b0000,
        Numeric = 0b0001,
        Alphanumeric = 0b0010,
        StructuredAppend = 0b0011,
        Byte = 0b0100,
        Function1First = 0b0101,
        ExtendedChannel = 0b0111,
        Kanji = 0b1000,
        Function1Second = 0b1001,
    }

    /// <returns>The text; null where the codewords are none.</returns>
    public static string? Decode(byte[] codewords, int version)
    {
        var decoder = new SegmentDecoder(codewords, version);
        return decoder.Segments() && decoder._text.Length > 0 ? decoder._text.ToString() : null;
    }

    private bool Segments()
    {
        // The terminator is cut short where a symbol is full: ISO/IEC 18004:2015, 7.4.9.
        while (_bits.Left >= ModeBits && (Mode)_bits.Take(ModeBits) is var mode && mode != Mode.Terminator)
        {
            if (mode is not Mode.Byte)
            {
                FlushBytes();
            }

            if (!Segment(mode))
            {
                return false;
            }
        }

        FlushBytes();
        return true;
    }

    private bool Segment(Mode mode)
    {
        switch (mode)
        {
            case Mode.Numeric:
                return CountOf(10, 12, 14) is { } digits && Numeric(digits);
            case Mode.Alphanumeric:
                return CountOf(9, 11, 13) is { } characters && AlphanumericText(characters);
            case Mode.Byte:
                return CountOf(8, 16, 16) is { } bytes && Bytes(bytes);
            case Mode.Kanji:
                return CountOf(8, 10, 12) is { } kanji && Kanji(kanji);
            case Mode.ExtendedChannel:
                return ExtendedChannel();
            case Mode.StructuredAppend:
                // Place, count and parity: each symbol's part of the text is given by itself.
                return Skip(16);
            case Mode.Function1First:
                _hasFunction1 = true;
                return true;
            case Mode.Function1Second:
                _hasFunction1 = true;
                return Skip(8);
            default:
                return false;
        }
    }

    /// <summary>The character count indicator: ISO/IEC 18004:2015, table 3.</summary>
    private int? CountOf(int to9, int to26, int to40)
    {
        var bits = _version < 10 ? to9 : _version < 27 ? to26 : to40;
        return _bits.Left >= bits ? _bits.Take(bits) : null;
    }

    private bool Skip(int bits)
    {
        var has = _bits.Left >= bits;
        if (has)
        {
            _bits.Take(bits);
        }

        return has;
    }

    private bool Numeric(int digits)
    {
        for (; digits > 0; digits -= 3)
        {
            var together = Math.Min(digits, 3);
            var bits = (3 * together) + 1;
            if (_bits.Left < bits || _bits.Take(bits) is var value && value >= Math.Pow(10, together))
            {
                return false;
            }

            _text.Append(value.ToString($"D{together}", System.Globalization.CultureInfo.InvariantCulture));
        }

        return true;
    }

    private bool AlphanumericText(int characters)
    {
        var from = _text.Length;
        for (; characters > 0; characters -= 2)
        {
            var (bits, limit) = characters > 1 ? (11, 45 * 45) : (6, 45);
            if (_bits.Left < bits || _bits.Take(bits) is var value && value >= limit)
            {
                return false;
            }

            _text.Append(characters > 1 ? $"{Alphanumeric[value / 45]}{Alphanumeric[value % 45]}" : $"{Alphanumeric[value]}");
        }

        if (_hasFunction1)
        {
            // ISO/IEC 18004:2015, 7.4.8.2: % is FNC1, and %% is %.
            var plain = _text.ToString(from, _text.Length - from).Replace("%%", "\0", StringComparison.Ordinal)
                .Replace('%', GroupSeparator).Replace('\0', '%');
            _text.Length = from;
            _text.Append(plain);
        }

        return true;
    }

    private bool Bytes(int count)
    {
        if (_bits.Left < 8 * count)
        {
            return false;
        }

        for (var i = 0; i < count; i++)
        {
            _bytes.Add((byte)_bits.Take(8));
        }

        return true;
    }

    /// <summary>Two bytes of Shift JIS in 13 bits: ISO/IEC 18004:2015, 7.4.6.</summary>
    private bool Kanji(int count)
    {
        if (_bits.Left < 13 * count)
        {
            return false;
        }

        var bytes = new byte[2 * count];
        for (var i = 0; i < count; i++)
        {
            var value = _bits.Take(13);
            var code = (value / 0xC0 << 8 | value % 0xC0) is var packed && packed < 0x1F00 ? packed + 0x8140 : packed + 0xC140;
            (bytes[2 * i], bytes[(2 * i) + 1]) = ((byte)(code >> 8), (byte)code);
        }

        if (!CharacterSets.IsShiftJis(bytes))
        {
            return false;
        }

        _text.Append(CharacterSets.ShiftJis.GetString(bytes));
        return true;
    }

    /// <summary>The designator of 8, 16 or 24 bits: ISO/IEC 18004:2015, table 4.</summary>
    private bool ExtendedChannel()
    {
        if (_bits.Left < 8)
        {
            return false;
        }

        var first = _bits.Take(8);
        var (more, kept) = first < 0x80 ? (0, first) : first < 0xC0 ? (8, first & 0x3F) : (16, first & 0x1F);
        if (first >= 0xE0 || _bits.Left < more)
        {
            return false;
        }

        _characterSet = CharacterSets.OfAssignment((kept << more) | _bits.Take(more));
        return _characterSet is not null;
    }

    private void FlushBytes()
    {
        byte[] bytes = [.. _bytes];
        _bytes.Clear();
        _text.Append((_characterSet ?? CharacterSets.Likeliest(bytes)).GetString(bytes));
    }
}
