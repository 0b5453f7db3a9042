using Tagend.Qr.Symbol;

namespace Tagend.Qr.Read;

/// <summary>From the darkness of modules to text.</summary>
/// <remarks>One a picture: it counts what was tried, for the more readings are tried, the likelier one of them is chance.</remarks>
internal sealed class SymbolDecoder(CheckedTexts checkedTexts)
{
    /// <summary>
    /// Of all readings tried in a picture, one by chance must be rarer than 1 in 2 to this power, else only a text's own
    /// check makes it count. What correction without erasures leaves at the smallest symbol is 2⁻²⁰.
    /// </summary>
    private const double SureBits = 20;

    /// <summary>Format information that is likely enough to be tried.</summary>
    private const int FormatsTried = 2;

    /// <summary>Shares of the error correction codewords that are spent on erasures, in the order they are tried.</summary>
    private static readonly double[] ErasureShares = [0, 0.25, 0.5, 0.75, 0.95];

    private double _tried;

    /// <param name="layout">Of the symbol.</param>
    /// <param name="darkness">Of each module, above 0 where dark; its size says how sure that is.</param>
    /// <returns>The text; null where none can be trusted.</returns>
    public string? Decode(SymbolLayout layout, float[] darkness)
    {
        foreach (var format in FormatInformation.Likeliest(darkness, layout.Size, FormatsTried))
        {
            _tried += ErasureShares.Length;
            if (Correct(layout, format, darkness) is { } corrected
                && SegmentDecoder.Decode(corrected.Data, layout.Version.VersionNumber) is { } text
                && (corrected.Bits >= SureBits + Math.Log2(_tried) || checkedTexts.Include(text)))
            {
                return text;
            }
        }

        return null;
    }

    private static Corrected? Correct(SymbolLayout layout, FormatInformation format, float[] darkness)
    {
        var codewords = new byte[layout.Version.TotalCodewords];
        var sureness = new float[codewords.Length];
        for (var n = 0; n < codewords.Length; n++)
        {
            sureness[n] = float.MaxValue;
            for (var bit = 0; bit < 8; bit++)
            {
                var place = layout.DataModules[(n * 8) + bit];
                var dark = darkness[place] > 0;
                codewords[n] = (byte)(codewords[n] << 1 | (dark != format.Inverts(place % layout.Size, place / layout.Size) ? 1 : 0));
                sureness[n] = Math.Min(sureness[n], Math.Abs(darkness[place]));
            }
        }

        var blocks = layout.BlocksOf(format.Level);
        var bits = double.MaxValue;
        foreach (var places in blocks.Places)
        {
            if (CorrectBlock(codewords, sureness, places, blocks.CorrectionCodewords) is not { } sure)
            {
                return null;
            }

            // A text is no surer than its least sure block.
            bits = Math.Min(bits, sure);
        }

        return new Corrected([.. blocks.Places.SelectMany(places => places[..^blocks.CorrectionCodewords].Select(place => codewords[place]))], bits);
    }

    /// <returns>How many bits stand against a reading by chance; null where the block cannot be corrected.</returns>
    private static double? CorrectBlock(byte[] codewords, float[] sureness, int[] places, int correctionCodewords)
    {
        var block = new byte[places.Length];
        var leastSureFirst = Enumerable.Range(0, places.Length).OrderBy(i => sureness[places[i]]).ToArray();
        foreach (var share in ErasureShares)
        {
            var erasures = (int)(share * correctionCodewords);
            for (var i = 0; i < places.Length; i++)
            {
                block[i] = codewords[places[i]];
            }

            var errors = ReedSolomon.Correct(block, correctionCodewords, leastSureFirst.AsSpan(0, erasures));
            if (errors < 0)
            {
                continue;
            }

            for (var i = 0; i < places.Length; i++)
            {
                codewords[places[i]] = block[i];
            }

            return (8.0 * (correctionCodewords - erasures - errors)) - Choices(places.Length, errors);
        }

        return null;
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

    /// <param name="Data">Data codewords in the order of the text.</param>
    /// <param name="Bits">That stand against a reading by chance in each block.</param>
    private sealed record Corrected(byte[] Data, double Bits);
}
