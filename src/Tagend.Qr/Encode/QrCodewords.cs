using System.Buffers;
using System.Text;
using Tagend.Qr.Symbol;
using ZXing.QrCode.Internal;

namespace Tagend.Qr.Encode;

/// <summary>A text as the codewords of the smallest symbol that holds it: ISO/IEC 18004:2015, 7.4 to 7.6.</summary>
/// <remarks>In one mode: of digits, of the 45 characters of the alphanumeric set, or of bytes, which are UTF-8.</remarks>
internal sealed class QrCodewords
{
    private const string Alphanumeric = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:";
    private const int ModeBits = 4;
    private const int LargestVersion = 40;

    private static readonly SearchValues<char> Digits = SearchValues.Create("0123456789");
    private static readonly SearchValues<char> Characters = SearchValues.Create(Alphanumeric);

    private int _bits;

    private QrCodewords(int version, bool isAlphanumeric, int room) => (Version, IsAlphanumeric, Bytes) = (version, isAlphanumeric, new byte[room]);

    /// <summary>The version, 1 to 40.</summary>
    public int Version { get; }

    /// <summary>Whether the text is in the alphanumeric mode.</summary>
    public bool IsAlphanumeric { get; }

    /// <summary>In the order of the symbol, those of error correction too.</summary>
    public byte[] Bytes { get; private set; }

    /// <returns>Null where no version holds it.</returns>
    public static QrCodewords? Of(string text, ErrorCorrectionLevel level)
    {
        var mode = !text.AsSpan().ContainsAnyExcept(Digits) ? Mode.NUMERIC
            : !text.AsSpan().ContainsAnyExcept(Characters) ? Mode.ALPHANUMERIC
            : Mode.BYTE;
        var bytes = mode == Mode.BYTE ? Encoding.UTF8.GetBytes(text) : [];
        var (count, bits) = mode == Mode.NUMERIC ? (text.Length, ((text.Length * 10) + 2) / 3)
            : mode == Mode.ALPHANUMERIC ? (text.Length, ((text.Length * 11) + 1) / 2)
            : (bytes.Length, bytes.Length * 8);
        for (var number = 1; number <= LargestVersion; number++)
        {
            var version = ZXing.QrCode.Internal.Version.getVersionForNumber(number);
            var table = version.getECBlocksForLevel(level);
            var room = version.TotalCodewords - table.TotalECCodewords;
            var countBits = mode.getCharacterCountBits(version);
            if (ModeBits + countBits + bits <= room * 8 && count < 1 << countBits)
            {
                var codewords = new QrCodewords(number, mode == Mode.ALPHANUMERIC, room);
                codewords.Add(mode.Bits, ModeBits);
                codewords.Add(count, countBits);
                codewords.AddText(text, bytes, mode);
                codewords.Fill();
                codewords.Bytes = Corrected(codewords.Bytes, SymbolLayout.Of(17 + (4 * number)).BlocksOf(level), version.TotalCodewords);
                return codewords;
            }
        }

        return null;
    }

    private void AddText(string text, byte[] bytes, Mode mode)
    {
        if (mode == Mode.NUMERIC)
        {
            for (var i = 0; i < text.Length; i += 3)
            {
                var three = text.AsSpan(i, Math.Min(3, text.Length - i));
                Add(int.Parse(three, System.Globalization.CultureInfo.InvariantCulture), (three.Length * 3) + 1);
            }
        }
        else if (mode == Mode.ALPHANUMERIC)
        {
            for (var i = 0; i + 1 < text.Length; i += 2)
            {
                Add((ValueOf(text[i]) * Alphanumeric.Length) + ValueOf(text[i + 1]), 11);
            }

            if (text.Length % 2 == 1)
            {
                Add(ValueOf(text[^1]), 6);
            }
        }

        foreach (var value in bytes)
        {
            Add(value, 8);
        }
    }

    private static int ValueOf(char character) => Alphanumeric.IndexOf(character, StringComparison.Ordinal);

    private void Add(int value, int bits)
    {
        for (var bit = bits - 1; bit >= 0; bit--, _bits++)
        {
            Bytes[_bits / 8] |= (byte)((value >> bit & 1) << (7 - (_bits % 8)));
        }
    }

    /// <summary>Ends the text and fills what room is left: 7.4.9 and 7.4.10.</summary>
    private void Fill()
    {
        var used = (Math.Min(_bits + ModeBits, Bytes.Length * 8) + 7) / 8;
        for (var i = used; i < Bytes.Length; i++)
        {
            Bytes[i] = (byte)((i - used) % 2 == 0 ? 0xEC : 0x11);
        }
    }

    /// <summary>Shares data among blocks, adds what corrects errors, and puts all in the symbol's order.</summary>
    private static byte[] Corrected(byte[] data, SymbolBlocks blocks, int total)
    {
        var all = new byte[total];
        var next = 0;
        foreach (var places in blocks.Places)
        {
            var length = places.Length - blocks.CorrectionCodewords;
            var block = new byte[places.Length];
            data.AsSpan(next, length).CopyTo(block);
            ReedSolomon.Extend(block, blocks.CorrectionCodewords);
            next += length;
            for (var i = 0; i < places.Length; i++)
            {
                all[places[i]] = block[i];
            }
        }

        return all;
    }
}
