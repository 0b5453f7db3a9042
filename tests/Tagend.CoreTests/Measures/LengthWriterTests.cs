using Tagend.Measures;
using Xunit;

namespace Tagend.Tests.Measures;

public class LengthWriterTests
{
    [Theory]
    [InlineData(0, "0 yd 0 ft", "0.0 m")]
    [InlineData(0.1, "0 yd 1 ft", "0.1 m")]
    [InlineData(36, "1 yd 0 ft", "1.0 m")] // 0.9144 m
    [InlineData(36.01, "1 yd 1 ft", "1.0 m")]
    [InlineData(1476, "41 yd 0 ft", "37.5 m")] // 37.4904 m
    public void Spool_AnyLength_IsRoundedUp(double inches, string yards, string meters)
    {
        Assert.Equal(yards, LengthWriter.Spool(Length.FromInches(inches), LengthUnit.Inch));
        Assert.Equal(meters, LengthWriter.Spool(Length.FromInches(inches), LengthUnit.Millimeter));
    }

    [Theory]
    [InlineData(60.25, "60 1/4 in", "1530.4 mm")] // 1530.35 mm
    [InlineData(60.03124, "60 in", "1524.8 mm")] // less than half a sixteenth
    [InlineData(60.03125, "60 1/16 in", "1524.8 mm")] // half of one, away from zero
    [InlineData(-0.1875, "-3/16 in", "-4.8 mm")]
    [InlineData(-1.5, "-1 1/2 in", "-38.1 mm")]
    [InlineData(0, "0 in", "0.0 mm")]
    public void Tape_AnyLength_IsTheNearestMark(double inches, string fraction, string millimeters)
    {
        Assert.Equal(fraction, LengthWriter.Tape(Length.FromInches(inches), LengthUnit.Inch));
        Assert.Equal(millimeters, LengthWriter.Tape(Length.FromInches(inches), LengthUnit.Millimeter));
    }

    [Theory]
    [InlineData(60.25, "60 1/4 in", "60 1/4")]
    [InlineData(0.03125, "1/32 in", "1/32")]
    [InlineData(60.26, "60.260 in", "60.260")]
    [InlineData(60.2500001, "60.250 in", "60.250")] // 3 nm off the mark
    public void Mark_OffTheTapesMarks_IsADecimal(double inches, string mark, string bare)
    {
        Assert.Equal(mark, LengthWriter.Mark(Length.FromInches(inches), LengthUnit.Inch));
        Assert.Equal(bare, LengthWriter.Bare(Length.FromInches(inches), LengthUnit.Inch));
        Assert.Equal(mark, LengthWriter.Setting(Length.FromInches(inches), LengthUnit.Inch));
    }

    [Theory]
    [InlineData(1554, "1554.0 mm", "1554.0", "1554 mm", "1554.000 mm")]
    [InlineData(6.35, "6.4 mm", "6.4", "6.35 mm", "6.350 mm")]
    [InlineData(0.0505, "0.1 mm", "0.1", "0.05 mm", "0.051 mm")]
    public void Millimeters_OfEachKind_HaveItsDigits(double millimeters, string exact, string bare, string setting, string fine)
    {
        var length = Length.FromMillimeters(millimeters);
        Assert.Equal(exact, LengthWriter.Exact(length, LengthUnit.Millimeter));
        Assert.Equal(exact, LengthWriter.Mark(length, LengthUnit.Millimeter));
        Assert.Equal(bare, LengthWriter.Bare(length, LengthUnit.Millimeter));
        Assert.Equal(setting, LengthWriter.Setting(length, LengthUnit.Millimeter));
        Assert.Equal(fine, LengthWriter.Fine(length, LengthUnit.Millimeter));
    }

    [Theory]
    [InlineData(0.07941976, "0.079 in", "0.0794 in")]
    [InlineData(60.0625, "60.063 in", "60.0625 in")]
    public void Inches_OfEachKind_HaveItsDigits(double inches, string exact, string fine)
    {
        Assert.Equal(exact, LengthWriter.Exact(Length.FromInches(inches), LengthUnit.Inch));
        Assert.Equal(fine, LengthWriter.Fine(Length.FromInches(inches), LengthUnit.Inch));
    }

    [Theory]
    [InlineData(0, "0.0000 in", "0.000 mm")]
    [InlineData(0.00001, "0.0001 in", "0.001 mm")]
    [InlineData(0.0001, "0.0001 in", "0.003 mm")]
    [InlineData(0.00024, "0.0002 in", "0.006 mm")]
    public void Error_LessThanItsLastDigit_IsThatDigit(double inches, string inch, string millimeter)
    {
        Assert.Equal(inch, LengthWriter.Error(Length.FromInches(inches), LengthUnit.Inch));
        Assert.Equal(millimeter, LengthWriter.Error(Length.FromInches(inches), LengthUnit.Millimeter));
    }

    [Theory]
    [InlineData(0.5, 64, "1/2")]
    [InlineData(0.515625, 64, "33/64")]
    [InlineData(2, 32, "2")]
    [InlineData(-0.0078124, 64, "0")] // less than half a part
    [InlineData(-0.0078125, 64, "-1/64")]
    public void Fraction_OfParts_IsReduced(double inches, int parts, string text) =>
        Assert.Equal(text, LengthWriter.Fraction(Length.FromInches(inches), parts));

    [Fact]
    public void Date_Written_IsIso() => Assert.Equal("2026-03-04", DateWriter.Iso(new DateOnly(2026, 3, 4)));
}
