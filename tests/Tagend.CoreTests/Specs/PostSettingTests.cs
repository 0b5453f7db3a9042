using MathNet.Numerics.Integration;
using Tagend.Measures;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Specs;

public class PostSettingTests
{
    private static readonly Length Pin = Length.FromInches(0.25);
    private static readonly Length Sixteenth = Length.FromInches(1.0 / 16);

    [Theory]
    [InlineData(0.25)]
    [InlineData(0.5)]
    [InlineData(1)]
    [InlineData(2.25)]
    public void Outside_AnyPost_LeavesTheLoopsPathAsLongAsOverThePins(double postInches)
    {
        // Source: path length of a loop around two round posts, integrated numerically along the curve.
        var laidUp = Length.FromInches(60.79);
        var posts = PostSetting.For(laidUp, Length.Zero, Length.FromInches(postInches), Pin, Sixteenth);
        Assert.Equal(PathLength(laidUp.Inches, 0.25), PathLength(posts.Outside.Inches, postInches), 1e-6);
    }

    [Fact]
    public void Outside_PostAsThickAsPin_IsLaidUpLength() =>
        Assert.Equal(Length.FromInches(60), PostSetting.For(Length.FromInches(60), Length.Zero, Pin, Pin, Sixteenth).Outside);

    [Fact]
    public void Centers_Always_AreOnePostInside()
    {
        var posts = PostSetting.For(Length.FromInches(60), Length.Zero, Length.FromInches(1), Pin, Sixteenth);
        Assert.Equal(posts.Outside - Length.FromInches(1), posts.Centers);
    }

    [Theory]
    [InlineData(60.29, 60.3125, 0.0225)]
    [InlineData(60.27, 60.25, -0.02)]
    [InlineData(60.25, 60.25, 0)]
    public void Tape_AnySetting_IsNearestMarkAndResidualTheRest(double outside, double tape, double residual)
    {
        var posts = new PostSetting(Length.FromInches(1), Pin, Length.FromInches(outside), Sixteenth);
        Assert.Equal(Length.FromInches(tape), posts.Tape);
        Assert.Equal(Length.FromInches(residual), posts.Residual);
    }

    [Fact]
    public void Tape_InMillimeters_IsWholeMillimeter()
    {
        var posts = new PostSetting(Length.FromMillimeters(25), Pin, Length.FromMillimeters(1531.6), Length.FromMillimeters(1));
        Assert.Equal(Length.FromMillimeters(1532), posts.Tape);
    }

    [Fact]
    public void For_PostsNotGiven_IsThePlainRuleAndSaysSo()
    {
        var plain = PostSetting.For(Length.FromInches(60), Length.FromInches(0.02), null, Pin, Sixteenth);
        Assert.Equal(PostSetting.For(Length.FromInches(60), Length.FromInches(0.02), Pin, Pin, Sixteenth).Outside, plain.Outside);
        Assert.False(plain.IsPostGiven);
        Assert.Equal(Pin, plain.PostDiameter);
    }

    [Fact]
    public void SettingRange_OfTheModels_IsWhereEachWouldSetThePosts()
    {
        var spec = SpecFixture.Good();
        var apart = spec.Twist.TakeUp with { Helix = spec.Twist.TakeUp.Rule + Length.FromInches(0.25) };
        Assert.Equal(
            (spec.Posts.Tape, spec.Posts.Tape + Length.FromInches(0.25)),
            (spec with { Twist = spec.Twist with { TakeUp = apart } }).SettingRange());
    }

    private static double PathLength(double outside, double diameter)
    {
        var radius = diameter / 2;
        var halfCircle = GaussLegendreRule.Integrate(
            angle => Math.Sqrt(Math.Pow(radius * Math.Sin(angle), 2) + Math.Pow(radius * Math.Cos(angle), 2)), 0, Math.PI, 32);
        return (2 * (outside - diameter)) + (2 * halfCircle);
    }
}
