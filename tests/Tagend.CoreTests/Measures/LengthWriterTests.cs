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
}
