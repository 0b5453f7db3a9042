using CsCheck;
using Tagend.Blocks;
using Tagend.Qr.Encode;
using Xunit;
using ZXing.QrCode.Internal;

namespace Tagend.Tests.Blocks;

public sealed class QrSymbolTests
{
    /// <summary>ISO/IEC 18004:2015, annex I: "01234567" in a symbol 1-M; 16 data codewords, 10 of error correction.</summary>
    [Fact]
    public void Codewords_OfTheStandardsExample_AreTheStandards()
    {
        var symbol = QrSymbol.Of("01234567")!;
        Assert.Equal(1, symbol.Version);
        Assert.Equal(21, symbol.Modules);
        Assert.Equal(
            "10 20 0C 56 61 80 EC 11 EC 11 EC 11 EC 11 EC 11 A5 24 D4 C1 ED 36 C7 87 2C 55",
            string.Join(' ', CodewordsOf(symbol).Select(c => c.ToString("X2"))));
    }

    // ISO/IEC 18004:2015, table 7: characters of the alphanumeric set that a symbol holds.
    [Theory]
    [InlineData(1, QrRecovery.M, 20)]
    [InlineData(1, QrRecovery.Q, 16)]
    [InlineData(4, QrRecovery.L, 114)]
    [InlineData(10, QrRecovery.M, 311)]
    [InlineData(40, QrRecovery.L, 4_296)]
    [InlineData(40, QrRecovery.H, 1_852)]
    public void Capacity_OfAVersion_IsTheStandards(int version, QrRecovery recovery, int characters)
    {
        var full = QrSymbol.Of(new string('A', characters), recovery)!;
        Assert.Equal(version, full.Version);
        Assert.True(full.IsAlphanumeric);
        Assert.Equal(17 + (4 * version), full.Modules);
        Assert.NotEqual(version, QrSymbol.Of(new string('A', characters + 1), recovery)?.Version);
    }

    /// <summary>ZXing.Net's own symbol, mask and all: the same standard in other hands. Of digits, of the alphanumeric set, of bytes.</summary>
    [Theory]
    [InlineData("0123456789")]
    [InlineData("0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:")]
    [InlineData("abcdefghijklmnopqrstuvwxyz0123456789:/?=&#-_~")]
    public void Modules_OfAnyText_AreTheOtherEncoders(string characters) =>
        Gen.Select(Gen.String[Gen.Char[characters], 1, 600], Gen.Enum<QrRecovery>()).Sample(
            (text, recovery) =>
            {
                var (symbol, other) = (QrSymbol.Of(text, recovery)!, Encoder.encode(text, ErrorCorrectionLevel.forBits((int)recovery ^ 1)));
                Assert.Equal((other.Version.VersionNumber, other.MaskPattern), (symbol.Version, symbol.Mask));
                Assert.Equal(
                    other.Matrix.Array.SelectMany(row => row).Select(module => module == 1),
                    Enumerable.Range(0, symbol.Modules * symbol.Modules).Select(i => symbol.IsDark(i % symbol.Modules, i / symbol.Modules)));
            },
            seed: "0000KOIPpN33",
            iter: 100);

    [Fact]
    public void Of_MoreThanAnySymbolHolds_IsNull() => Assert.Null(QrSymbol.Of(new string('A', 4_297), QrRecovery.L));

    [Fact]
    public void Bars_CoverDarkModulesAndTheEdgesBetweenThemOnly()
    {
        var symbol = QrSymbol.Of("AC-42")!;
        var bars = QrBars.Of(symbol);
        for (var row = 0; row < symbol.Modules; row++)
        {
            for (var column = 0; column < symbol.Modules; column++)
            {
                var dark = symbol.IsDark(column, row);
                Assert.Equal(dark, IsWithin(column, row, 1, 1));
                Assert.Equal(dark && column + 1 < symbol.Modules && symbol.IsDark(column + 1, row), IsWithin(column, row, 2, 1));
                Assert.Equal(dark && row + 1 < symbol.Modules && symbol.IsDark(column, row + 1), IsWithin(column, row, 1, 2));
            }
        }

        bool IsWithin(int x, int y, int width, int height) => bars.Any(b =>
            b.X <= x && b.Y <= y && x + width <= b.X + b.Width && y + height <= b.Y + b.Height);
    }

    [Fact]
    public void QrBlock_HasFourLightModulesAround()
    {
        var block = new QrBlock(QrSymbol.Of("AC-42")!, 2);
        Assert.Equal((21 + 8) * 2, block.Side);
        var ink = Assert.Single(Laid.Out(block, 100).InksAt(0, 0).OfType<Tagend.Output.BarsInk>());
        Assert.Equal((8, 8, 2, 21), (ink.X, ink.Y, ink.Unit, ink.Bars.Max(b => b.X + b.Width)));
        Assert.Equal(["a QR code of 58 pt has 50 × 60 pt"], Laid.Misfits(block, 50, 60));
    }

    /// <summary>Reads a version 1 symbol as the standard places its codewords: two columns at a time, from the bottom right.</summary>
    private static IEnumerable<int> CodewordsOf(QrSymbol symbol)
    {
        var bits = new List<int>();
        var upward = true;
        for (var right = 20; right > 0; right -= 2, upward = !upward)
        {
            right -= right == 6 ? 1 : 0;
            for (var step = 0; step < 21; step++)
            {
                var row = upward ? 20 - step : step;
                foreach (var column in new[] { right, right - 1 })
                {
                    if (IsData(column, row))
                    {
                        bits.Add(symbol.IsDark(column, row) ^ IsMasked(symbol.Mask, row, column) ? 1 : 0);
                    }
                }
            }
        }

        return bits.Chunk(8).Select(b => b.Aggregate(0, (sum, bit) => (sum * 2) + bit));
    }

    private static bool IsData(int column, int row) =>
        column != 6 && row != 6 && !(column < 9 && (row < 9 || row > 12)) && !(column > 12 && row < 9);

    /// <summary>ISO/IEC 18004:2015, table 10, with i the row and j the column.</summary>
    private static bool IsMasked(int mask, int i, int j) => mask switch
    {
        0 => (i + j) % 2 == 0,
        1 => i % 2 == 0,
        2 => j % 3 == 0,
        3 => (i + j) % 3 == 0,
        4 => ((i / 2) + (j / 3)) % 2 == 0,
        5 => ((i * j) % 2) + ((i * j) % 3) == 0,
        6 => (((i * j) % 2) + ((i * j) % 3)) % 2 == 0,
        7 => (((i + j) % 2) + ((i * j) % 3)) % 2 == 0,
        _ => throw new ArgumentOutOfRangeException(nameof(mask)),
    };
}
