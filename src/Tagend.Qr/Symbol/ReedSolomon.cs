using System.Collections.Concurrent;

namespace Tagend.Qr.Symbol;

/// <summary>Corrects blocks of codewords, some of which may be erasures: ISO/IEC 18004:2015, annex B.</summary>
internal static class ReedSolomon
{
    /// <summary>x⁸ + x⁴ + x³ + x² + 1.</summary>
    private const int Primitive = 0x11D;

    private static readonly byte[] Exp = new byte[510];
    private static readonly int[] Log = new int[256];
    private static readonly ConcurrentDictionary<int, int[]> Generators = new();

    static ReedSolomon()
    {
        for (int i = 0, x = 1; i < 255; i++, x = x << 1 ^ (x >= 128 ? Primitive : 0))
        {
            Exp[i] = Exp[i + 255] = (byte)x;
            Log[x] = i;
        }
    }

    /// <summary>Corrects in place.</summary>
    /// <param name="block">Data codewords, then those of error correction.</param>
    /// <param name="correctionCodewords">How many of them are for error correction, at the end.</param>
    /// <param name="erasures">Places whose value counts for nothing.</param>
    /// <returns>Errors corrected elsewhere; -1 where there are too many, and then the block is as it was.</returns>
    public static int Correct(Span<byte> block, int correctionCodewords, ReadOnlySpan<int> erasures)
    {
        var syndromes = new byte[correctionCodewords];
        if (AreZero(block, syndromes))
        {
            return 0;
        }

        // The erasures' locator polynomial, then by Berlekamp and Massey's algorithm that of the errors too.
        var locator = new byte[correctionCodewords + 1];
        locator[0] = 1;
        foreach (var place in erasures)
        {
            var root = Exp[block.Length - 1 - place];
            for (var i = correctionCodewords; i > 0; i--)
            {
                locator[i] ^= Times(locator[i - 1], root);
            }
        }

        var degree = BerlekampMassey(syndromes, locator, erasures.Length);
        if (degree < 0)
        {
            return -1;
        }

        var errors = new List<(int Place, byte Magnitude)>();
        for (var place = 0; place < block.Length; place++)
        {
            var inverse = (255 - (block.Length - 1 - place)) % 255;
            if (Value(locator, degree, inverse) == 0)
            {
                errors.Add((place, Magnitude(syndromes, locator, degree, inverse)));
            }
        }

        if (errors.Count != degree)
        {
            return -1;
        }

        foreach (var (place, magnitude) in errors)
        {
            block[place] ^= magnitude;
        }

        if (AreZero(block, syndromes))
        {
            return degree - erasures.Length;
        }

        foreach (var (place, magnitude) in errors)
        {
            block[place] ^= magnitude;
        }

        return -1;
    }

    /// <summary>Fills in what corrects errors: the remainder of the data by the generator polynomial, 7.5.2.</summary>
    /// <param name="block">Data codewords, then room for those of error correction.</param>
    /// <param name="correctionCodewords">How many of them are for error correction, at the end.</param>
    public static void Extend(Span<byte> block, int correctionCodewords)
    {
        var generator = Generators.GetOrAdd(correctionCodewords, Generator);
        var remainder = block[^correctionCodewords..];
        remainder.Clear();
        foreach (var data in block[..^correctionCodewords])
        {
            var lead = (byte)(data ^ remainder[0]);
            remainder[1..].CopyTo(remainder);
            remainder[^1] = 0;
            if (lead != 0)
            {
                var log = Log[lead];
                for (var i = 0; i < generator.Length; i++)
                {
                    remainder[i] ^= Exp[generator[i] + log];
                }
            }
        }
    }

    /// <summary>The product of (x − α⁰) to (x − αⁿ⁻¹) but for its leading 1, as logarithms: no coefficient of the standard's is 0.</summary>
    private static int[] Generator(int degree)
    {
        var product = new byte[degree];
        product[^1] = 1;
        for (var root = 0; root < degree; root++)
        {
            for (var i = 0; i < degree; i++)
            {
                product[i] = (byte)(Times(product[i], Exp[root]) ^ (i + 1 < degree ? product[i + 1] : 0));
            }
        }

        return [.. product.Select(coefficient => Log[coefficient])];
    }

    private static byte Times(byte a, byte b) => a == 0 || b == 0 ? (byte)0 : Exp[Log[a] + Log[b]];

    private static bool AreZero(ReadOnlySpan<byte> block, byte[] syndromes)
    {
        var wrong = false;
        for (var i = 0; i < syndromes.Length; i++)
        {
            byte sum = 0;
            foreach (var codeword in block)
            {
                sum = (byte)(Times(sum, Exp[i]) ^ codeword);
            }

            syndromes[i] = sum;
            wrong |= sum != 0;
        }

        return !wrong;
    }

    /// <summary>Blahut's form: the locator begins as that of the erasures.</summary>
    /// <returns>The locator's degree; -1 where it has more roots than can be told.</returns>
    private static int BerlekampMassey(byte[] syndromes, byte[] locator, int erasures)
    {
        var correctionCodewords = syndromes.Length;
        var previous = (byte[])locator.Clone();
        var length = erasures;
        for (var r = erasures; r < correctionCodewords; r++)
        {
            byte discrepancy = 0;
            for (var i = 0; i <= r; i++)
            {
                discrepancy ^= Times(locator[i], syndromes[r - i]);
            }

            for (var i = correctionCodewords; i > 0; i--)
            {
                previous[i] = previous[i - 1];
            }

            previous[0] = 0;
            if (discrepancy == 0)
            {
                continue;
            }

            var grows = 2 * length <= r + erasures;
            var before = grows ? (byte[])locator.Clone() : locator;
            for (var i = 0; i <= correctionCodewords; i++)
            {
                locator[i] ^= Times(discrepancy, previous[i]);
            }

            if (grows)
            {
                length = r + 1 + erasures - length;
                var inverse = Exp[255 - Log[discrepancy]];
                for (var i = 0; i <= correctionCodewords; i++)
                {
                    previous[i] = Times(before[i], inverse);
                }
            }
        }

        var degree = correctionCodewords;
        while (degree > 0 && locator[degree] == 0)
        {
            degree--;
        }

        return degree == length && (2 * (length - erasures)) + erasures <= correctionCodewords ? degree : -1;
    }

    private static byte Value(byte[] polynomial, int degree, int logX)
    {
        byte sum = 0;
        for (var i = degree; i >= 0; i--)
        {
            sum = (byte)(Times(sum, Exp[logX]) ^ polynomial[i]);
        }

        return sum;
    }

    /// <summary>Forney's formula, first root of the generator α⁰.</summary>
    private static byte Magnitude(byte[] syndromes, byte[] locator, int degree, int logInverse)
    {
        byte evaluator = 0;
        for (var i = degree - 1; i >= 0; i--)
        {
            byte coefficient = 0;
            for (var j = 0; j <= i; j++)
            {
                coefficient ^= Times(locator[j], syndromes[i - j]);
            }

            evaluator = (byte)(Times(evaluator, Exp[logInverse]) ^ coefficient);
        }

        byte slope = 0;
        for (var i = 1; i <= degree; i += 2)
        {
            slope ^= Times(locator[i], Exp[logInverse * (i - 1) % 255]);
        }

        return slope == 0 ? (byte)0 : Times(Times(evaluator, Exp[(255 - logInverse) % 255]), Exp[255 - Log[slope]]);
    }
}
