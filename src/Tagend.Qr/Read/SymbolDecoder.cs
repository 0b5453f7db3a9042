using Tagend.Qr.Symbol;
using Tagend.Tags;
using ZXing;
using ZXing.Common;
using ZXing.QrCode.Internal;

namespace Tagend.Qr.Read;

/// <summary>From the darkness of modules to text.</summary>
internal static class SymbolDecoder
{
    /// <summary>
    /// A reading by chance must be rarer than 1 in 2 to this power, else only a tag's own check makes it count.
    /// What correction without doubtful places leaves at the smallest symbol is 2⁻²⁰.
    /// </summary>
    private const double SureBits = 20;

    private const uint AlphanumericMode = 0b0010;

    /// <summary>T is 29, E is 14, B is 11 in the alphanumeric set; a pair is 45 times the first and the second.</summary>
    private const uint TagPair = (45 * 29) + 14;

    private const uint BagPair = (45 * 29) + 11;

    /// <summary>Shares of the check codewords that are spent on doubtful places, in the order they are tried.</summary>
    private static readonly double[] DoubtfulShares = [0, 0.25, 0.5, 0.75, 0.95];

    private static readonly Dictionary<DecodeHintType, object> Hints = new() { [DecodeHintType.CHARACTER_SET] = "UTF-8" };

    /// <param name="darkness">Of each module, above 0 where dark; its size says how sure that is.</param>
    /// <returns>The text; null where none can be trusted.</returns>
    public static string? Decode(SymbolLayout layout, float[] darkness)
    {
        foreach (var format in FormatInformation.Likeliest(darkness, layout.Size).Take(2))
        {
            if (Blocks(layout, format, darkness) is not { } blocks || (blocks.Bits < SureBits && !BeginsAsATag(layout, format, blocks)))
            {
                continue;
            }

            if (Text(layout, format, blocks) is { } text
                && (blocks.Bits >= SureBits || TagReader.Read(text) is TagReading.Piece or TagReading.Bag))
            {
                return text;
            }
        }

        return null;
    }

    private static Corrected? Blocks(SymbolLayout layout, FormatInformation format, float[] darkness)
    {
        var total = layout.Version.TotalCodewords;
        var codewords = new byte[total];
        var sureness = new float[total];
        for (var n = 0; n < total; n++)
        {
            sureness[n] = float.MaxValue;
            for (var bit = 0; bit < 8; bit++)
            {
                var place = layout.DataPath[(n * 8) + bit];
                var dark = darkness[place] > 0;
                codewords[n] = (byte)(codewords[n] << 1 | (dark != format.Turns(place % layout.Size, place / layout.Size) ? 1 : 0));
                sureness[n] = Math.Min(sureness[n], Math.Abs(darkness[place]));
            }
        }

        var bits = double.MaxValue;
        foreach (var places in Interleaving(layout, format.Level))
        {
            if (Correct(codewords, sureness, places, ChecksOf(layout, format.Level)) is not { } sure)
            {
                return null;
            }

            // A text is no surer than its least sure block.
            bits = Math.Min(bits, sure);
        }

        return new Corrected(codewords, bits);
    }

    /// <returns>How many bits stand against a reading by chance; null where the block cannot be corrected.</returns>
    private static double? Correct(byte[] codewords, float[] sureness, int[] places, int checks)
    {
        var block = new byte[places.Length];
        var doubtfulFirst = Enumerable.Range(0, places.Length).OrderBy(i => sureness[places[i]]).ToArray();
        foreach (var share in DoubtfulShares)
        {
            var doubtful = (int)(share * checks);
            for (var i = 0; i < places.Length; i++)
            {
                block[i] = codewords[places[i]];
            }

            var errors = ReedSolomon.Correct(block, checks, doubtfulFirst.AsSpan(0, doubtful));
            if (errors < 0)
            {
                continue;
            }

            for (var i = 0; i < places.Length; i++)
            {
                codewords[places[i]] = block[i];
            }

            return (8.0 * (checks - doubtful - errors)) - Choices(places.Length, errors);
        }

        return null;
    }

    /// <summary>Alphanumeric mode, and TE or TB first: what a reading that its tag's check is to decide must have.</summary>
    private static bool BeginsAsATag(SymbolLayout layout, FormatInformation format, Corrected blocks)
    {
        var first = Interleaving(layout, format.Level).First();
        var head = (uint)(blocks.Codewords[first[0]] << 24 | blocks.Codewords[first[1]] << 16
            | blocks.Codewords[first[2]] << 8 | blocks.Codewords[first[3]]);
        // Bits of the character count: ISO/IEC 18004:2015, table 3.
        var count = layout.Version.VersionNumber switch { < 10 => 9, < 27 => 11, _ => 13 };
        var pair = head << (4 + count) >> 21;
        return head >> 28 == AlphanumericMode && pair is TagPair or BagPair;
    }

    /// <summary>Base 2 logarithm of the ways to choose k of n.</summary>
    private static double Choices(int n, int k)
    {
        var sum = 0.0;
        for (var i = 1; i <= k; i++)
        {
            sum += Math.Log2((n - k + i) / (double)i);
        }

        return sum;
    }

    private static int ChecksOf(SymbolLayout layout, ErrorCorrectionLevel level) => layout.Version.getECBlocksForLevel(level).ECCodewordsPerBlock;

    /// <summary>The codewords of each block, as numbers in the symbol's order: ISO/IEC 18004:2015, 7.6.</summary>
    private static IEnumerable<int[]> Interleaving(SymbolLayout layout, ErrorCorrectionLevel level)
    {
        var checks = ChecksOf(layout, level);
        var data = layout.Version.getECBlocksForLevel(level).getECBlocks()
            .SelectMany(b => Enumerable.Repeat(b.DataCodewords, b.Count)).ToList();
        var blocks = data.Select(d => new List<int>()).ToList();
        var next = 0;
        for (var i = 0; i < data[^1]; i++)
        {
            for (var b = 0; b < blocks.Count; b++)
            {
                if (i < data[b])
                {
                    blocks[b].Add(next++);
                }
            }
        }

        for (var i = 0; i < checks; i++)
        {
            blocks.ForEach(b => b.Add(next++));
        }

        return blocks.Select(b => b.ToArray());
    }

    /// <summary>The library reads modes and character sets, from a symbol without a mistake.</summary>
    private static string? Text(SymbolLayout layout, FormatInformation format, Corrected blocks)
    {
        var matrix = new BitMatrix(layout.Size);
        for (var place = 0; place < layout.Known.Length; place++)
        {
            matrix[place % layout.Size, place / layout.Size] = layout.Known[place] > 0;
        }

        for (var n = 0; n < blocks.Codewords.Length * 8; n++)
        {
            var (x, y) = (layout.DataPath[n] % layout.Size, layout.DataPath[n] / layout.Size);
            matrix[x, y] = (blocks.Codewords[n / 8] >> (7 - (n % 8)) & 1) == 1 != format.Turns(x, y);
        }

        format.Write(matrix);
        WriteVersion(layout, matrix);
        try
        {
            return new Decoder().decode(matrix, Hints) is { Text.Length: > 0 } result ? result.Text : null;
        }
        catch (Exception e) when (e is NullReferenceException or ReaderException or ArgumentException or IndexOutOfRangeException)
        {
            // What the library answers where the bits are no text.
            return null;
        }
    }

    /// <summary>Version information of symbols from version 7: ISO/IEC 18004:2015, 7.10.</summary>
    private static void WriteVersion(SymbolLayout layout, BitMatrix matrix)
    {
        for (var bit = 0; layout.Version.VersionNumber >= VersionInformation.First && bit < VersionInformation.Bits; bit++)
        {
            var dark = (VersionInformation.Word(layout.Version.VersionNumber) >> bit & 1) == 1;
            var (a, b) = (layout.Size - 11 + (bit % 3), bit / 3);
            matrix[a, b] = matrix[b, a] = dark;
        }
    }

    /// <param name="Bits">That stand against a reading by chance in each block.</param>
    private sealed record Corrected(byte[] Codewords, double Bits);
}
