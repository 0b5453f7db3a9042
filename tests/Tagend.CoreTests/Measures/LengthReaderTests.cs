using CsCheck;
using Tagend.Measures;
using Xunit;
using Length = Tagend.Measures.Length;
using LengthUnit = Tagend.Measures.LengthUnit;
using ReferenceUnit = UnitsNet.Units.LengthUnit;

namespace Tagend.Tests.Measures;

public class LengthReaderTests
{
    // NIST SP 811, appendix B.8: 1 in = 2.54 E-02 m and 1 ft = 3.048 E-01 m, both exact.
    private const long Inch = 25_400_000;
    private const long Foot = 304_800_000;
    private const long Millimeter = 1_000_000;
    private const long SixtyAndAQuarter = (60 * Inch) + (Inch / 4);

    public static TheoryData<string, long> ReadInInches => new()
    {
        { "60", 60 * Inch },
        { " 60 ", 60 * Inch },
        { "60 1/4", SixtyAndAQuarter },
        { "60-1/4", SixtyAndAQuarter },
        { "60  1/4", SixtyAndAQuarter },
        { "60\u00A01/4", SixtyAndAQuarter },
        { "60\u202F1/4", SixtyAndAQuarter },
        { "60\t1/4", SixtyAndAQuarter },
        { "60 1\u20444", SixtyAndAQuarter },
        { "60\u20111/4", SixtyAndAQuarter },
        { "60–1/4", SixtyAndAQuarter },
        { "60¼", SixtyAndAQuarter },
        { "60 ¼", SixtyAndAQuarter },
        { "60-¼", SixtyAndAQuarter },
        { "60.25", SixtyAndAQuarter },
        { "60,25", SixtyAndAQuarter },
        { "60 1/4\"", SixtyAndAQuarter },
        { "60 1/4″", SixtyAndAQuarter },
        { "60 1/4”", SixtyAndAQuarter },
        { "60 1/4''", SixtyAndAQuarter },
        { "60 1/4 \"", SixtyAndAQuarter },
        { "60¼\"", SixtyAndAQuarter },
        { "60 1/4 in", SixtyAndAQuarter },
        { "60 1/4in", SixtyAndAQuarter },
        { "60 1/4 in.", SixtyAndAQuarter },
        { "60 1/4 IN", SixtyAndAQuarter },
        { "60.25 inches", SixtyAndAQuarter },
        { "60.25 Inch", SixtyAndAQuarter },
        { "5' 0 1/4\"", SixtyAndAQuarter },
        { "5'0¼\"", SixtyAndAQuarter },
        { "5′ 0¼″", SixtyAndAQuarter },
        { "5’ 1/4”", SixtyAndAQuarter },
        { "5'-0 1/4\"", SixtyAndAQuarter },
        { "5 ft 1/4 in", SixtyAndAQuarter },
        { "5ft 0.25in", SixtyAndAQuarter },
        { "5 feet 0 1/4 inches", SixtyAndAQuarter },
        { "5' 1/4", SixtyAndAQuarter },
        { "5'", 5 * Foot },
        { "5.5 ft", 66 * Inch },
        { "5 1/2 ft", 66 * Inch },
        { "5' 6", 66 * Inch },
        { "60⅜", (60 * Inch) + (3 * Inch / 8) },
        { "60 ⅞ in", (60 * Inch) + (7 * Inch / 8) },
        { "1/2", Inch / 2 },
        { "½", Inch / 2 },
        { "½\"", Inch / 2 },
        { "0½", Inch / 2 },
        { ".5", Inch / 2 },
        { "0", 0 },
        { "60 1/64", (60 * Inch) + 396_875 },
        { "60 63/64", (60 * Inch) + (63 * 396_875) },
        { "0.0145", 368_300 },
        { "0,116", 2_946_400 },
        { "1530 mm", 1530 * Millimeter },
        { "1530mm", 1530 * Millimeter },
        { "1530.5mm", (1530 * Millimeter) + (Millimeter / 2) },
        { "1530,5 MM", (1530 * Millimeter) + (Millimeter / 2) },
        { "1530,125 mm", (1530 * Millimeter) + (Millimeter / 8) },
        { "1530 1/2 mm", (1530 * Millimeter) + (Millimeter / 2) },
        { "1530 millimeter", 1530 * Millimeter },
        { "1530 millimeters", 1530 * Millimeter },
        { "1530 millimetre", 1530 * Millimeter },
        { "1530 millimetres", 1530 * Millimeter },
        { "153 cm", 1530 * Millimeter },
        { "153 centimeter", 1530 * Millimeter },
        { "153 centimeters", 1530 * Millimeter },
        { "153 centimetre", 1530 * Millimeter },
        { "2 m", 2000 * Millimeter },
        { "2 meter", 2000 * Millimeter },
        { "2 meters", 2000 * Millimeter },
        { "2 metre", 2000 * Millimeter },
        { "2 metres", 2000 * Millimeter },
        { "60 1/4 inch", SixtyAndAQuarter },
        { "60 1/4′′", SixtyAndAQuarter },
        { "60 1/4’’", SixtyAndAQuarter },
        { "5 foot", 5 * Foot },
        { "5 ft.", 5 * Foot },
        { "60 3/4", (60 * Inch) + (3 * Inch / 4) },
        { "60¾", (60 * Inch) + (3 * Inch / 4) },
        { "60⅛", (60 * Inch) + (Inch / 8) },
        { "60⅝", (60 * Inch) + (5 * Inch / 8) },
        { "60 1\u22154", SixtyAndAQuarter },
        { "60\u20101/4", SixtyAndAQuarter },
        { "60\u20121/4", SixtyAndAQuarter },
        { "999999999 mm", 999_999_999 * Millimeter }, // nine digits at the most on either side
        { "1.123456789 in", 28_535_802 }, // 28.5358024406 mm
        { "0,125", Inch / 8 },
        { "1,25", Inch * 5 / 4 },
        { "153,0 cm", 1530 * Millimeter },
        { "153 centimetres", 1530 * Millimeter },
        { "1.53 m", 1530 * Millimeter },
        { "1,53 m", 1530 * Millimeter },
        { "1.530 m", 1530 * Millimeter },
    };

    [Theory]
    [MemberData(nameof(ReadInInches))]
    public void TryRead_Spelling_IsExactToTheNanometer(string text, long nanometers)
    {
        Assert.True(LengthReader.TryRead(text, LengthUnit.Inch, out var length));
        Assert.Equal(nanometers, length.Nanometers);
    }

    [Theory]
    [InlineData("1530", 1530 * Millimeter)]
    [InlineData("1530,4", 1_530_400_000)]
    [InlineData("2.946", 2_946_000)]
    [InlineData("60 1/4 in", SixtyAndAQuarter)]
    [InlineData("5' 1/4", SixtyAndAQuarter)]
    public void TryRead_BareNumberInMillimeters_HasTheShopsUnit(string text, long nanometers)
    {
        Assert.True(LengthReader.TryRead(text, LengthUnit.Millimeter, out var length));
        Assert.Equal(nanometers, length.Nanometers);
    }

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData("in")]
    [InlineData("6o 1/4")]
    [InlineData("60 l/4")]
    [InlineData("-60")]
    [InlineData("+60")]
    [InlineData("60 1/0")]
    [InlineData("60 1/3")]
    [InlineData("60 5/4")]
    [InlineData("60 4/4")]
    [InlineData("60 0/4")]
    [InlineData("5/4")]
    [InlineData("60 1/")]
    [InlineData("60 /4")]
    [InlineData("60 - 1/4")]
    [InlineData("60 -1/4")]
    [InlineData("60 1/4 1/8")]
    [InlineData("60 1 /4")]
    [InlineData("60.5 1/4")]
    [InlineData("60¼¼")]
    [InlineData("1¼2")]
    [InlineData("¼/2")]
    [InlineData("60.25.1")]
    [InlineData("60.")]
    [InlineData(".")]
    [InlineData("1,234.5")]
    [InlineData("1.234,5")]
    [InlineData("1,530")]
    [InlineData("1,530 mm")]
    [InlineData("1 530")]
    [InlineData("60 in 5")]
    [InlineData("60 in in")]
    [InlineData("60 1/4 yd")]
    [InlineData("60 i")]
    [InlineData("1e3")]
    [InlineData("NaN")]
    [InlineData("Infinity")]
    [InlineData("0x60")]
    [InlineData("٦٠")]
    [InlineData("5' 12\"")]
    [InlineData("5' 0 1/4 mm")]
    [InlineData("5.5' 3\"")]
    [InlineData("5' 3\" 2")]
    [InlineData("5' 3'")]
    [InlineData("60 1/4; 3")]
    [InlineData("1000000000")]
    [InlineData("1000000000.5")]
    [InlineData("1.1234567891")]
    [InlineData("12,530")]
    [InlineData("123,530")]
    [InlineData("0.0000000001")]
    [InlineData("99999999999999999999999999999999999999")]
    public void TryRead_AnythingElse_IsRefused(string text) =>
        Assert.False(LengthReader.TryRead(text, LengthUnit.Inch, out _));

    [Theory]
    [InlineData("60 1/4", true)]
    [InlineData("60 1/4 in", false)]
    [InlineData("5'", false)]
    [InlineData("0", false)]
    [InlineData("six", false)]
    public void IsBare_AnyText_IsALengthAboveZeroWithoutAUnit(string text, bool isBare) => Assert.Equal(isBare, LengthReader.IsBare(text));

    [Theory]
    [InlineData("98.4375 in", 98.4375, ReferenceUnit.Inch)]
    [InlineData("8.203125 ft", 8.203125, ReferenceUnit.Foot)]
    [InlineData("1530.25 mm", 1530.25, ReferenceUnit.Millimeter)]
    [InlineData("153.125 cm", 153.125, ReferenceUnit.Centimeter)]
    [InlineData("1.625 m", 1.625, ReferenceUnit.Meter)]
    public void TryRead_EveryUnit_AgreesWithUnitsNet(string text, double value, ReferenceUnit unit)
    {
        Assert.True(LengthReader.TryRead(text, LengthUnit.Inch, out var length));
        var reference = UnitsNet.Length.From(value, unit);
        Assert.Equal(reference.Nanometers, length.Nanometers, 0.5);
    }

    [Fact]
    public void TryRead_WrittenSixteenths_ComeBack() =>
        Gen.Long[0, 16 * 400].Sample(
            sixteenths =>
            {
                var length = Length.FromNanometers(sixteenths * Inch / 16);
                var written = LengthWriter.Tape(length, LengthUnit.Inch);
                return LengthReader.TryRead(written, LengthUnit.Millimeter, out var read) && read == length;
            },
            seed: "0N0XIzNsQ0O2",
            iter: 1000);

    [Fact]
    public void TryRead_WrittenTenthsOfAMillimeter_ComeBack() =>
        Gen.Long[0, 100_000].Sample(
            tenths =>
            {
                var length = Length.FromNanometers(tenths * Millimeter / 10);
                var written = LengthWriter.Exact(length, LengthUnit.Millimeter);
                return LengthReader.TryRead(written, LengthUnit.Inch, out var read) && read == length;
            },
            seed: "0N0XIzNsQ0O2",
            iter: 1000);

    [Fact]
    public void TryRead_AnyText_NeverThrows() =>
        Gen.OneOf(Gen.String, Gen.String["0123456789 .,/-'\"inmftc¼½\u00A0"]).Sample(
            text => LengthReader.TryRead(text, LengthUnit.Inch, out var length) ? length >= Length.Zero : true,
            seed: "0N0XIzNsQ0O2",
            iter: 5000);
}
