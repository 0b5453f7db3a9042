using System.Text;
using Tagend.Qr.Read;
using Xunit;

namespace Tagend.Tests.Qr;

/// <summary>Texts of all modes and character sets; bits as ISO/IEC 18004:2015 gives them where it has an example.</summary>
public sealed class SegmentDecoderTests
{
    private const string ByteMode = "0100";
    private const string KanjiMode = "1000";

    [Theory]
    [InlineData("0001 0000001000 0000001100 0101011001 1000011", "01234567")] // 7.4.3
    [InlineData("0010 000000101 00111001110 11100111001 000010", "AC-42")] // 7.4.4
    [InlineData("1000 00000010 0110110011111 1101010101010", "点茗")] // 7.4.6: 935F and E4AA in Shift JIS
    [InlineData("0001 0000000011 0001111011 0010 000000001 001010", "123A")] // two segments
    [InlineData("0111 00001001 0100 00000101 11000001 11000010 11000011 11000100 11000101", "ΑΒΓΔΕ")] // ECI 9: ISO/IEC 8859-7
    [InlineData("0111 00011010 0100 00000010 11000011 10111100", "ü")] // ECI 26: UTF-8
    [InlineData("0101 0010 000000011 00111101000 001011", "A\u001DB")] // FNC1: % stands for the separator
    [InlineData("0011 00000001 00000000 0001 0000000001 0001", "1")] // the first of two symbols with one text
    public void Decode_SegmentsOfEachMode_GivesTheText(string bits, string text) => Assert.Equal(text, Decode(bits, 1));

    [Theory]
    [InlineData("plain", "plain")]
    [InlineData("é × ½", "é × ½")]
    public void Decode_BytesInLatin1WithoutAnAssignment_AreTheDefaultSet(string text, string expected) =>
        Assert.Equal(expected, DecodeBytes(Encoding.Latin1.GetBytes(text)));

    [Theory]
    [InlineData("60 1/4 × ½ Ω")]
    [InlineData("弓の弦 60 1/4")]
    public void Decode_BytesInUtf8WithoutAnAssignment_AreUtf8(string text) => Assert.Equal(text, DecodeBytes(Encoding.UTF8.GetBytes(text)));

    [Theory]
    [InlineData("弓の弦は六十インチ")]
    [InlineData("No. 12 ひも")]
    public void Decode_BytesInShiftJisWithoutAnAssignment_AreShiftJis(string text) =>
        Assert.Equal(text, DecodeBytes(CodePagesEncodingProvider.Instance.GetEncoding(932)!.GetBytes(text)));

    [Fact]
    public void Decode_BytesOfWindowsWithoutAnAssignment_AreWindows() =>
        Assert.Equal("don’t – 5 €", DecodeBytes(CodePagesEncodingProvider.Instance.GetEncoding(1252)!.GetBytes("don’t – 5 €")));

    [Theory]
    [InlineData(9, 8)]
    [InlineData(10, 16)]
    [InlineData(26, 16)]
    [InlineData(40, 16)]
    public void Decode_ByteCount_HasTheVersionsLength(int version, int countBits) =>
        Assert.Equal("A", Decode(ByteMode + Bits(1, countBits) + Bits('A', 8), version));

    [Theory]
    [InlineData(9, 8)]
    [InlineData(10, 10)]
    [InlineData(27, 12)]
    public void Decode_KanjiCount_HasTheVersionsLength(int version, int countBits) =>
        Assert.Equal("点", Decode(KanjiMode + Bits(1, countBits) + "0110110011111", version));

    [Theory]
    [InlineData("0000")] // nothing but a terminator
    [InlineData("0001 0000000011 1111101000")] // 1000 in three digits
    [InlineData("0010 000000010 11111101001")] // 45 × 45
    [InlineData("0100 11111111 01000001")] // 255 bytes in one
    [InlineData("1111")] // no mode
    [InlineData("0111 01100011 0100 00000001 01000001")] // ECI 99 is not assigned
    public void Decode_BitsThatAreNoText_GivesNone(string bits) => Assert.Null(Decode(bits, 1));

    private static string? DecodeBytes(byte[] bytes) => Decode(ByteMode + Bits(bytes.Length, 8) + string.Concat(bytes.Select(b => Bits(b, 8))), 1);

    private static string Bits(int value, int length) => Convert.ToString(value, 2).PadLeft(length, '0');

    /// <summary>With the terminator and zeros to the end of the last codeword.</summary>
    private static string? Decode(string bits, int version)
    {
        bits = bits.Replace(" ", "", StringComparison.Ordinal) + "0000";
        bits = bits.PadRight((bits.Length + 7) / 8 * 8, '0');
        return SegmentDecoder.Decode([.. bits.Chunk(8).Select(b => Convert.ToByte(new string(b), 2))], version);
    }
}
