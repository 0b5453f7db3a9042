using QRCoder;
using Tagend.Qr.Read;
using Tagend.Qr.Symbol;
using Xunit;

namespace Tagend.Tests.Qr;

public class SymbolDecoderTests
{
    private const int Blocks = 4; // of a symbol 6-M, each with 16 codewords of error correction: ISO/IEC 18004:2015, table 9
    private const int Size = 41;
    private const int QuietZone = 4;

    private static readonly string Text = new('a', 100);

    [Theory]
    [InlineData(0, true)]
    [InlineData(7, true)]
    [InlineData(15, false)] // of 16 one is left: chance makes such a block once in 256
    public void Decode_OneBlockThatChanceMayHaveMade_IsNoText(int erasures, bool isRead)
    {
        var layout = SymbolLayout.Of(Size);
        var rows = QRCodeGenerator.GenerateQrCode(Text, QRCodeGenerator.ECCLevel.M).ModuleMatrix;
        var darkness = new float[Size * Size];
        for (var place = 0; place < darkness.Length; place++)
        {
            darkness[place] = rows[QuietZone + (place / Size)][QuietZone + (place % Size)] ? 1 : -1;
        }

        foreach (var place in Enumerable.Range(0, erasures).SelectMany(n => layout.DataModules.Skip(8 * Blocks * n).Take(8)))
        {
            darkness[place] *= -0.1f;
        }

        Assert.Equal(isRead ? Text : null, new SymbolDecoder(CheckedTexts.None).Decode(layout, darkness));
    }
}
