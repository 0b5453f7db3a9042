using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Labels;
using Xunit;

namespace Tagend.Tests.Pages;

public sealed class DotGridTests
{
    private static readonly DotGrid Grid = new(203);

    [Theory]
    [InlineData(0.1f, 1)] // never less than a dot
    [InlineData(0.4f, 1)]
    [InlineData(0.8f, 2)]
    public void Line_OnDots_IsABarOfWholeDotsThatTouchesNoOthers(float width, int dots)
    {
        var bar = Assert.IsType<BoxInk>(Grid.OnDots(new LineInk(10.1f, 20.3f, 100.7f, 20.3f, width)));
        Assert.Equal(dots, (bar.Height / Grid.Size) + 0.1f, 0.001f);
        foreach (var edge in new[] { bar.X, bar.Y, -(bar.X + bar.Width), -(bar.Y + bar.Height) })
        {
            var within = (edge / Grid.Size) - MathF.Floor(edge / Grid.Size);
            Assert.Equal(0.05f, within, 0.01f);
        }
    }

    [Fact]
    public void Line_ThatIsUpright_IsABarToo()
    {
        var bar = Assert.IsType<BoxInk>(Grid.OnDots(new LineInk(20.3f, 10.1f, 20.3f, 100.7f, 0.8f)));
        Assert.True(bar.Height > 90 && bar.Width < 1);
    }

    [Theory]
    [InlineData(4, 203, 812)]
    [InlineData(1.25, 203, 254)] // 253.75
    [InlineData(100 / 25.4, 300, 1181)] // 1181.1
    [InlineData(50 / 25.4, 600, 1181)]
    public void Side_OfALabel_IsWholeDotsAndNotAHairMore(double inches, int dotsPerInch, int dots)
    {
        var points = new DotGrid(dotsPerInch).WholeSide(Length.FromInches(inches));
        Assert.Equal(dots, Math.Ceiling((double)MathF.Round(points, 2) * dotsPerInch / Points.PerInch));
        Assert.Equal(dots, points * dotsPerInch / Points.PerInch, 0.1);
    }
}
