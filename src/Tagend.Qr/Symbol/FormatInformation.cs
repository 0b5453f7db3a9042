using ZXing.QrCode.Internal;

namespace Tagend.Qr.Symbol;

/// <summary>Error correction level and data mask of a symbol: ISO/IEC 18004:2015, 7.9.</summary>
internal sealed record FormatInformation(ErrorCorrectionLevel Level, int Mask)
{
    private const int Generator = 0x537;
    private const int MaskPattern = 0x5412;
    private const int Bits = 15;
    private const int Kinds = 32;

    private static readonly int[] Words = [.. Enumerable.Range(0, Kinds).Select(Word)];

    /// <summary>The likeliest of the 32, first the one that agrees best.</summary>
    /// <param name="darkness">Of each module, above 0 where dark.</param>
    /// <param name="size">Modules a side.</param>
    /// <param name="count">How many.</param>
    public static IEnumerable<FormatInformation> Likeliest(float[] darkness, int size, int count)
    {
        var bits = new float[Bits];
        var n = 0;
        foreach (var place in Places(size))
        {
            bits[n++ % Bits] += darkness[place];
        }

        return Enumerable.Range(0, Kinds)
            .OrderByDescending(Agreement)
            .Take(count)
            .Select(data => new FormatInformation(ErrorCorrectionLevel.forBits(data >> 3), data & 7));

        float Agreement(int data)
        {
            var sum = 0f;
            for (var bit = 0; bit < Bits; bit++)
            {
                sum += IsDark(Words[data], bit) ? bits[bit] : -bits[bit];
            }

            return sum;
        }
    }

    /// <summary>The modules of both copies.</summary>
    public IEnumerable<(int Place, bool IsDark)> Modules(int size)
    {
        var word = Words[(Level.Bits << 3) | Mask];
        return Places(size).Select((place, n) => (place, IsDark(word, n % Bits)));
    }

    /// <summary>Whether the data mask inverts this module: ISO/IEC 18004:2015, table 10.</summary>
    public bool Inverts(int x, int y) => Mask switch
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

    private static bool IsDark(int word, int bit) => (word >> (Bits - 1 - bit) & 1) == 1;

    private static int Word(int data)
    {
        var rest = data << 10;
        for (var bit = 14; bit >= 10; bit--)
        {
            rest ^= (rest >> bit & 1) == 1 ? Generator << (bit - 10) : 0;
        }

        return (data << 10 | rest) ^ MaskPattern;
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
