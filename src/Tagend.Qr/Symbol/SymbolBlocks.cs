using ZXing.QrCode.Internal;

namespace Tagend.Qr.Symbol;

/// <summary>The blocks of a symbol's codewords.</summary>
/// <param name="Places">The codewords of each block, as numbers in the symbol's order; those of error correction are last.</param>
/// <param name="CorrectionCodewords">Of error correction, in each block.</param>
internal sealed record SymbolBlocks(IReadOnlyList<int[]> Places, int CorrectionCodewords)
{
    /// <summary>Interleaved as ISO/IEC 18004:2015, 7.6 says.</summary>
    public static SymbolBlocks Of(ZXing.QrCode.Internal.Version version, ErrorCorrectionLevel level)
    {
        var table = version.getECBlocksForLevel(level);
        var data = table.getECBlocks().SelectMany(b => Enumerable.Repeat(b.DataCodewords, b.Count)).ToList();
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

        for (var i = 0; i < table.ECCodewordsPerBlock; i++)
        {
            blocks.ForEach(b => b.Add(next++));
        }

        return new SymbolBlocks([.. blocks.Select(b => b.ToArray())], table.ECCodewordsPerBlock);
    }
}
