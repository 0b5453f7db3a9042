using System.Xml.Linq;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Card;
using Tagend.Pages.Steps;
using Tagend.Specs;
using Tagend.Tags;
using Tagend.Tests.Output;
using Tagend.Tests.Specs;
using Xunit;

namespace Tagend.Tests.Pages;

public sealed class BenchStepsTests
{
    [Theory]
    [InlineData(LengthUnit.Inch)]
    [InlineData(LengthUnit.Millimeter)]
    public void Steps_OfAString_HaveTheNumbersOfItsCard(LengthUnit unit)
    {
        var (spec, _) = SpecFixture.Build(unit);
        var card = JigCard.Compose(new Build(spec!, Tagend.Orders.OrderSlip.Blank), SpecFixture.Catalog, TagWriter.Write(spec!), Paper.Letter, TestFonts.Shipped);
        var printed = string.Join(' ', card.Pages.SelectMany(p => p.Inks).OfType<TextInk>().Select(t => t.Text.Replace('\u00A0', ' ')));
        foreach (var step in BenchSteps.Of(spec!, SpecFixture.Catalog))
        {
            Assert.Contains(step.Title, printed, StringComparison.Ordinal);
            Assert.All(
                step.Figures.SelectMany(f => f.Text.Split(' ', '\u00A0', '/')).Where(t => char.IsAsciiDigit(t[0])),
                number => Assert.Contains(number.TrimEnd(','), printed, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Steps_FollowTheShopsOwnOrderAndWords()
    {
        var catalog = SpecFixture.Catalog with
        {
            CardSteps = [new CardStep(CardStepKind.Measure), new CardStep(CardStepKind.Own, "Wax", "Twice."), new CardStep(CardStepKind.Stretch, Text: "Slowly.")],
        };
        var steps = BenchSteps.Of(SpecFixture.Good(), catalog);
        Assert.Equal(["SET THE POSTS", "MEASURE", "Wax", "STRETCH"], steps.Select(s => s.Title));
        Assert.Equal("Twice.", Assert.Single(steps[2].Facts).Value);
        Assert.Equal("Slowly.", steps[3].Facts[^1].Value);
        Assert.Equal((StepClock.Down, (double)SpecFixture.Good().Stretch.Minutes), (steps[3].Clock, steps[3].Minutes));
    }

    [Fact]
    public void Drawing_MarksWhereAServingIs()
    {
        var spec = SpecFixture.Good();
        var steps = BenchSteps.Of(spec, SpecFixture.Catalog);
        var drawing = StepDrawing.Of(spec, steps, SpecFixture.Catalog, 460, TestFonts.Shipped)!;
        var served = steps.Index().Where(s => s.Item is { Title: "SERVE", Figures.Count: 2 }).ToList();
        Assert.Equal(spec.Servings.Count, served.Count);
        var widths = served.Select(s => drawing.Bands[s.Index][0].Width - 10).ToList();
        Assert.Equal(spec.Servings[0].Length / spec.Servings[^1].Length, widths[0] / widths[^1], 0.02);
        Assert.Empty(drawing.Bands[0]);
    }

    [Fact]
    public void Svg_HasEveryTextOfThePage()
    {
        var spec = SpecFixture.Good();
        var page = StepDrawing.Of(spec, [], SpecFixture.Catalog, 460, TestFonts.Shipped)!.Page;
        var svg = XElement.Parse($"<svg>{SvgFile.Elements(page)}</svg>");
        Assert.Equal(page.Inks.OfType<TextInk>().Select(t => t.Text), svg.Elements("text").Select(t => t.Value));
        Assert.Equal(page.Inks.OfType<BoxInk>().Count(), svg.Elements("rect").Count());
    }
}
