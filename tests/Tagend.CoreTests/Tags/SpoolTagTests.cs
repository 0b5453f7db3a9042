using CsCheck;
using Tagend.Measures;
using Tagend.Specs;
using Tagend.Tags;
using Xunit;

namespace Tagend.Tests.Tags;

public class SpoolTagTests
{
    private const string Alphanumeric = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:"; // ISO/IEC 18004:2015, table 5

    /// <summary>As docs/TAGTEXT.md has it; frozen.</summary>
    private const string Frozen = "BOWSTRING SPOOL TS1*12*STRAND*HMPE-0145*CBLACK*ZH88-4*L1568000*20260314*E6F95CFF6";

    private static readonly ReceivedSpool Spool =
        new(12, StockKind.Strand, "hmpe-0145", "black", "H88-4", Length.FromMillimeters(1_568_000), new DateOnly(2026, 3, 14));

    private static readonly Gen<ReceivedSpool> Spools = Gen.Select(
        Gen.Select(Gen.Long[1, 999_999_999], Gen.Enum<StockKind>(), Text(1), Text(0)),
        Gen.Select(Text(1), Gen.Int[0, 100_000_000], Gen.Int[0, 30000])).Select((a, b) => new ReceivedSpool(
            a.Item1, a.Item2, a.Item3, a.Item4, b.Item1.ToUpperInvariant(), Length.FromMillimeters(b.Item2), new DateOnly(2020, 1, 1).AddDays(b.Item3)));

    [Fact]
    public void Write_Spool_IsThisText() => Assert.Equal(Frozen, SpoolTag.Write(Spool));

    [Fact]
    public void Read_FrozenText_IsTheSpool() => Assert.Equal(Spool, Assert.IsType<TagReading.Spool>(TagReader.Read(Frozen)).Received);

    [Fact]
    public void Read_RandomSpools_ComeBackInTheAlphanumericSet() => Spools.Sample(
        spool =>
        {
            var text = SpoolTag.Write(spool);
            Assert.All(text, c => Assert.Contains(c, Alphanumeric));
            Assert.Equal(spool, Assert.IsType<TagReading.Spool>(TagReader.Read(text)).Received);
        },
        iter: 1_000 / Specimen.Share,
        seed: "0000KOIPe036");

    [Theory]
    [InlineData("*L1568000", "*L1568001", "the tag is damaged or was mistyped: its check does not match; scan it again, or scan the card")]
    [InlineData("TS1*", "TS2*", "the tag has version 2, and this program reads up to version 1: use a later Tagend")]
    [InlineData("TS1*", "TSX*", "this is not a Tagend tag: those begin with BOWSTRING, or with TE or TB and a number")]
    public void Read_TextThatWasChanged_SaysWhy(string was, string now, string said) => Assert.Equal(said, TagReader.Read(Frozen.Replace(was, now, StringComparison.Ordinal)) switch
    {
        TagReading.Damaged damaged => damaged.Message,
        TagReading.Later later => later.Message,
        TagReading.Foreign foreign => foreign.Message,
        var read => $"{read}",
    });

    [Fact]
    public void Read_TextTypedOnAGermanKeyboard_SaysWhichKeyboard() => Assert.Contains(
        "set to German",
        Assert.IsType<TagReading.Damaged>(TagReader.Read(ScannerKeyboard.Layouts.Single(k => k.Name == "German").Type(Frozen))).Message,
        StringComparison.Ordinal);

    private static Gen<string> Text(int least) => Gen.Char["abcdefghijklmnopqrstuvwxyzéß0123456789 -._/+*"].Array[least, 12].Select(c => new string(c));
}
