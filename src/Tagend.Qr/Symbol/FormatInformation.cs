using ZXing.QrCode.Internal;

namespace Tagend.Qr.Symbol;

/// <summary>Correction level and mask of a symbol: ISO/IEC 18004:2015, 7.9.</summary>
internal sealed record FormatInformation(ErrorCorrectionLevel Level, int Mask)
{
    private const int Generator = 0x537;
    private const int Pattern = 0x5412;
    private const int Bits = 15;

    /// <summary>All marks, the likeliest first.</summary>
    /// <param name="darkness">Of each module, above 0 where dark.</param>
    public static IEnumerable<FormatInformation> Likeliest(float[] darkness, int size) =>
        Enumerable.Range(0, 32)
            .OrderByDescending(data => Places(size).Select((place, n) => (Word(data) >> (Bits - 1 - (n % Bits)) & 1) == 1 ? darkness[place] : -darkness[place]).Sum())
            .Select(data => new FormatInformation(ErrorCorrectionLevel.forBits(data >> 3), data & 7));

    /// <summary>Dark where the mark's own modules are dark: both copies.</summary>
    public void Write(ZXing.Common.BitMatrix matrix)
    {
        foreach (var (place, isDark) in Modules(matrix.Width))
        {
            matrix[place % matrix.Width, place / matrix.Width] = isDark;
        }
    }

    /// <summary>Both copies of the mark.</summary>
    public IEnumerable<(int Place, bool IsDark)> Modules(int size)
    {
        var word = Word((Level.Bits << 3) | Mask);
        return Places(size).Select((place, n) => (place, (word >> (Bits - 1 - (n % Bits)) & 1) == 1));
    }

    /// <summary>Whether the mask turns this module over.</summary>
    public bool Turns(int x, int y) => Mask switch
    {
        0 => (x + y) % 2 == 0,
        1 => y % 2 == 0,
        2 => x % 3 == 0,
        3 => (x + y) % 3 == 0,
        4 => ((y / 2) + (x / 3)) % 2 == 0,
        5 => (x * y % 2) + (x * y % 3) == 0,
        6 => ((x * y % 2) + (x * y % 3)) % 2 == 0,
        _ => (((x + y) % 2) + (x * y % 3)) % 2 == 0,
    };

    private static int Word(int data)
    {
        var rest = data << 10;
        for (var bit = 14; bit >= 10; bit--)
        {
            rest ^= (rest >> bit & 1) == 1 ? Generator << (bit - 10) : 0;
        }

        return (data << 10 | rest) ^ Pattern;
    }

    /// <summary>Modules of the first copy from the highest bit, then of the second.</summary>
    private static IEnumerable<int> Places(int size)
    {
        for (var x = 0; x < 9; x++)
        {
            if (x != 6)
            {
                yield return (8 * size) + x;
            }
        }

        for (var y = 7; y >= 0; y--)
        {
            if (y != 6)
            {
                yield return (y * size) + 8;
            }
        }

        for (var y = size - 1; y > size - 8; y--)
        {
            yield return (y * size) + 8;
        }

        for (var x = size - 8; x < size; x++)
        {
            yield return (8 * size) + x;
        }
    }
}
