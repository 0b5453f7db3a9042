using CsCheck;
using Tagend.Qr.Symbol;
using Xunit;
using ZXing.Common.ReedSolomon;

namespace Tagend.Tests.Qr;

/// <summary>Against the library's encoder, which shares nothing with our corrector.</summary>
public sealed class ReedSolomonTests
{
    private static readonly Gen<(byte[] Block, int Checks, int[] Places, int Erasures)> Damaged =
        from checks in Gen.Int[2, 30]
        from data in Gen.Byte.Array[1, 120]
        from places in Gen.Shuffle(Enumerable.Range(0, data.Length + checks).ToArray())
        from erasures in Gen.Int[0, checks]
        select (Encoded(data, checks), checks, places, erasures);

    [Fact]
    public void Correct_AsManyErrorsAsTheChecksAllow_BringsTheBlockBack() =>
        Damaged.Sample(
            damaged =>
            {
                var (block, checks, places, erasures) = damaged;
                erasures = Math.Min(erasures, block.Length);
                var errors = Math.Min((checks - erasures) / 2, block.Length - erasures);
                var broken = (byte[])block.Clone();
                foreach (var place in places.Take(erasures + errors))
                {
                    broken[place] ^= (byte)(1 + (place * 7 % 255));
                }

                var corrected = ReedSolomon.Correct(broken, checks, places.AsSpan(0, erasures));

                Assert.Equal(errors, corrected);
                Assert.Equal(block, broken);
            },
            seed: "0N0XIzNsQ0O2",
            iter: 500);

    [Fact]
    public void Correct_MoreErrorsThanTheChecksAllow_LeavesTheBlock()
    {
        var block = Encoded([.. Enumerable.Range(0, 60).Select(i => (byte)i)], 20);
        for (var place = 0; place < 14; place++)
        {
            block[place * 5] ^= 0x5A;
        }

        var before = (byte[])block.Clone();

        Assert.Equal(-1, ReedSolomon.Correct(block, 20, []));
        Assert.Equal(before, block);
    }

    private static byte[] Encoded(byte[] data, int checks)
    {
        var codewords = data.Select(d => (int)d).Concat(new int[checks]).ToArray();
        new ReedSolomonEncoder(GenericGF.QR_CODE_FIELD_256).encode(codewords, checks);
        return [.. codewords.Select(c => (byte)c)];
    }
}
