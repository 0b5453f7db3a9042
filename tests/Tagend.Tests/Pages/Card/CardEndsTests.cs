using Tagend.Blocks;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Card;
using Tagend.Pages.Parts;
using Tagend.Specs;
using Tagend.Tests.Output;
using Tagend.Tests.Specs;
using Xunit;

namespace Tagend.Tests.Pages;

public sealed class CardEndsTests
{
    private static readonly BuildSpec Spec = SpecFixture.Good();

    public static TheoryData<string> Loops => ["3/4 in", "1 1/4 in", "21 mm"];

    [Theory]
    [MemberData(nameof(Loops))]
    public void Leg_AroundThePin_IsAsLongAsTheLoopItIsDrawnFor(string length)
    {
        Assert.True(LengthReader.TryRead(length, LengthUnit.Inch, out var loop));
        var end = new EndLoop(loop, Spec.Posts.PinDiameter, Spec.Bundle.Diameter);
        var shapes = ShapesOf(loop, "A");
        var axis = shapes[0].Corners.Zip(shapes[1].Corners, (o, i) => (X: (o.X + i.X) / 2, Y: (o.Y + i.Y) / 2)).ToList();
        var drawn = axis.Zip(axis.Skip(1)).Sum(p => Math.Sqrt(Math.Pow(p.Second.X - p.First.X, 2) + Math.Pow(p.Second.Y - p.First.Y, 2)));

        // Both legs; the corners of the arc lie on it, which shortens it by less than one part in two thousand.
        var expected = 2 * (end.Straight.Inches + (end.Radius.Inches * end.Arc)) * 72;
        Assert.InRange(drawn, expected * 0.9995, expected);
    }

    [Fact]
    public void Ends_OfAPiece_AreMirrored()
    {
        var a = ShapesOf(Length.FromInches(1), "A")[0].Corners.Select(c => c.X).ToList();
        var b = ShapesOf(Length.FromInches(1), "B")[0].Corners.Select(c => c.X).ToList();
        Assert.Equal(a.Max() - a.Min(), b.Max() - b.Min(), 1e-3);
        Assert.Equal(a.Select(x => x - a.Min()).Order(), b.Select(x => b.Max() - x).Order(), (x, y) => Math.Abs(x - y) < 1e-3);
    }

    [Theory]
    [InlineData(LengthUnit.Inch, 1.5)]
    [InlineData(LengthUnit.Millimeter, 40 / 25.4)]
    public void Scale_StartsAtTheOutsideOfThePin_AtTrueSize(LengthUnit unit, double inches)
    {
        var inks = InksOf(Length.FromInches(0.75), "A", unit);
        var pin = inks.OfType<OvalInk>().Single();
        Assert.Equal(72 / 8f, pin.RadiusX);
        var scale = inks.OfType<LineInk>().Single(l => l.Y1 == l.Y2);
        Assert.Equal(pin.CenterX - pin.RadiusX, scale.X1, 1e-3f);
        Assert.Equal(inches * 72, scale.X2 - scale.X1, 1e-3);
    }

    [Fact]
    public void Loop_WithoutALength_IsLeftOpen()
    {
        var texts = InksOf(Length.Zero, "A", LengthUnit.Inch).OfType<TextInk>().Select(t => t.Text);
        Assert.Contains("A, left open", texts);
        Assert.Contains("A, legs meet at 3/4 in", InksOf(Length.FromInches(0.75), "A", LengthUnit.Inch).OfType<TextInk>().Select(t => t.Text));
    }

    private static List<ShapeInk> ShapesOf(Length loop, string end) => [.. InksOf(loop, end, LengthUnit.Inch).OfType<ShapeInk>()];

    private static List<Ink> InksOf(Length loop, string end, LengthUnit unit)
    {
        var geometry = new EndLoop(loop, Spec.Posts.PinDiameter, Spec.Bundle.Diameter);
        var placement = new CardEnd(Spec, end, geometry, loop, new CardWriter(unit, SpecFixture.Catalog.Words)).Block.Place(TestFonts.Shipped, new Room(300, 300));
        return [.. Assert.IsType<Placed>(placement).InksAt(0, 0)];
    }
}
