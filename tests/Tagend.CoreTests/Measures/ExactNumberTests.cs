using Tagend.Measures;
using Xunit;

namespace Tagend.Tests.Measures;

public class ExactNumberTests
{
    [Theory]
    [InlineData(190_500_000, LengthUnit.Inch, "7 1/2 in")]
    [InlineData(190_500_000, LengthUnit.Millimeter, "7 1/2 in")] // 190.5 mm is longer than 7.5 in
    [InlineData(1_530_746_875, LengthUnit.Inch, "60 17/64 in")]
    [InlineData(1_530_746_876, LengthUnit.Inch, "60.26562504 in")]
    [InlineData(600_000_000, LengthUnit.Inch, "600 mm")] // 23.62204724 in is longer
    [InlineData(1_587_500, LengthUnit.Millimeter, "1.5875 mm")] // .0625 in is as long with its letter
    [InlineData(0, LengthUnit.Inch, "0 in")]
    [InlineData(1, LengthUnit.Inch, ".000001 mm")]
    [InlineData(100_000_001, LengthUnit.Inch, "3.9370079 in")]
    public void Spelled_Length_IsAFractionOrTheShorterThatComesBack(long nanometers, LengthUnit unit, string text)
    {
        Assert.Equal(text, ExactNumber.Spelled(Length.FromNanometers(nanometers), unit));
        var (number, its) = ExactNumber.Of(Length.FromNanometers(nanometers), unit);
        Assert.True(ExactNumber.TryReadLength(number, its, out var length));
        Assert.Equal(nanometers, length.Nanometers);
    }

    [Theory]
    [InlineData(70, LengthUnit.Inch, "70 lbf")]
    [InlineData(70, LengthUnit.Millimeter, "70 lbf")] // 311.375513 N is longer
    [InlineData(0.22480894, LengthUnit.Inch, "1 N")] // 1 N to the micronewton
    public void Spelled_Pounds_AreTheShorterThatComesBack(double pounds, LengthUnit unit, string text) =>
        Assert.Equal(text, ExactNumber.Spelled(Force.FromPounds(pounds), unit));

    [Theory]
    [InlineData("100000", true)]
    [InlineData("100000.1", false)]
    [InlineData("", false)]
    [InlineData("-1", false)]
    [InlineData("1e3", false)]
    [InlineData("00000000000000000001", true)] // 20 characters
    [InlineData("000000000000000000001", false)]
    public void TryReadLength_AnyText_IsANumberFromZeroToAHundredThousand(string text, bool isOne)
    {
        Assert.Equal(isOne, ExactNumber.TryReadLength(text, LengthUnit.Millimeter, out _));
        Assert.Equal(isOne, ExactNumber.TryReadForce(text, LengthUnit.Inch, out _));
    }

    [Theory]
    [InlineData(0, "0")]
    [InlineData(1, "1/2")]
    [InlineData(2, "1")]
    [InlineData(13, "6 1/2")]
    public void Halves_Written_AreAsPeopleWriteThem(int halves, string text) => Assert.Equal(text, HalvesWriter.Write(halves));
}
