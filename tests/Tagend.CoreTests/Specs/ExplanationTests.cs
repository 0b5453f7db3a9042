using System.Globalization;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Specs;
using Tagend.Specs.Explained;
using Xunit;

namespace Tagend.Tests.Specs;

public class ExplanationTests
{
    /// <summary>Steps that are a rule in words, with nothing to work out.</summary>
    private static readonly string[] InWords =
        ["finished length", "take-up used", "end tags", "stretch", "servings wound", "thread of the center serving", "strength floor"];

    public static TheoryData<string, LengthUnit> Demos => new()
    {
        { "demo.csv", LengthUnit.Inch },
        { "demo.csv", LengthUnit.Millimeter },
        { "demo-mm.csv", LengthUnit.Inch },
        { "demo-mm.csv", LengthUnit.Millimeter },
    };

    [Theory]
    [MemberData(nameof(Demos))]
    public void Numbers_EveryStepOfEveryDemo_GiveTheResultToItsLastDigit(string file, LengthUnit unit)
    {
        foreach (var (spec, steps) in Demo(SpecFixture.Catalog, file, unit))
        {
            AssertWorkable(spec, steps);
        }
    }

    [Fact]
    public void Numbers_ShopWithItsOwnValues_GiveTheResultToItsLastDigit()
    {
        var shop = SpecFixture.Catalog.Shop with
        {
            TakeUpModel = TakeUpModel.Helix,
            TurnsPerInch = 0.6,
            RuleTakeUpPerTurn = Length.FromInches(0.0135),
            TerminationEfficiency = 0.7,
        };
        var materials = SpecFixture.Catalog.Materials.ToDictionary(m => m.Key, m => m.Value with { Settle = 0.0025, Packing = 0.72 });
        foreach (var (spec, steps) in Demo(SpecFixture.Catalog with { Shop = shop, Materials = materials }, "demo.csv", LengthUnit.Inch))
        {
            AssertWorkable(spec, steps);
            Assert.Equal("the shop's own value (shop.toml)", steps.Single(s => s.Name == "take-up by rule").Source);
            Assert.Equal("the shop's own value (materials.toml)", steps.Single(s => s.Name == "settle").Source);
            Assert.DoesNotContain("assumption", steps.Single(s => s.Name == "bundle diameter").Source, StringComparison.Ordinal);
            Assert.EndsWith(", by helix", steps.Single(s => s.Name == "take-up used").Result, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Numbers_ServedLoopsOnPostsNotGiven_GiveTheResultToItsLastDigit()
    {
        var catalog = SpecFixture.Catalog with
        {
            Shop = SpecFixture.Catalog.Shop with { Jig = SpecFixture.Catalog.Shop.Jig with { PostDiameter = null } },
            Plans = SpecFixture.Catalog.Plans.ToDictionary(p => p.Key, p => p.Value with { LoopThread = p.Value.EndLoopA > Length.Zero ? "t019" : null }),
        };
        foreach (var (spec, steps) in Demo(catalog, "demo.csv", LengthUnit.Inch))
        {
            AssertWorkable(spec, steps);
            Assert.Contains("has not given its posts", steps.Single(s => s.Name == "posts, outside to outside").Source, StringComparison.Ordinal);
            Assert.Contains(steps, s => s.Name.EndsWith("closing", StringComparison.Ordinal) && s.Formula.Contains("(r − thread)", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Of_AMaterialWithoutTexAndModulus_TellsNeitherMassNorReading()
    {
        var catalog = SpecFixture.WithMaterial("hmpe-0145", m => m with { LinearDensity = null, Modulus = null, Density = null });
        var line = SpecFixture.Order(("colors", "black:13 red:11"));
        var spec = new SpecBuilder(catalog, LengthUnit.Inch, SpecFixture.Date).Build(line, [])!;
        var steps = Explanation.Of(spec, line, catalog);
        AssertWorkable(spec, steps);
        Assert.Null(spec.Mass);
        Assert.Null(spec.Stretch.Reading);
        Assert.DoesNotContain(steps, s => s.Name.Contains("mass", StringComparison.Ordinal) || s.Name == "reading under load");
        Assert.Equal(spec, Assert.IsType<Tagend.Tags.TagReading.Piece>(Tagend.Tags.TagReader.Read(Tagend.Tags.TagWriter.Write(spec))).Spec);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Numbers_ShopWithBuilds_GiveTheResultToItsLastDigit(bool isSettleFitted)
    {
        var fits = SpecFixture.Catalog.Materials.Keys.SelectMany(m => Enumerable.Range(4, 20).Select(n => new FittedTakeUp
        {
            Material = m,
            Strands = 2 * n,
            Builds = 12,
            PerTurn = Length.FromInches(0.01634567),
            Settle = isSettleFitted ? 0.001780022 : 0,
            IsSettleFitted = isSettleFitted,
            Variance = new FitVariance(1e-7, 1e-7, 2e-7),
            Scatter = Length.FromInches(0.02),
            LeastRate = 0.4,
            MostRate = 0.9,
        }));
        foreach (var (spec, steps) in Demo(SpecFixture.Catalog with { Fits = fits.ToValueList() }, "demo.csv", LengthUnit.Inch))
        {
            AssertWorkable(spec, steps);
            Assert.EndsWith(", fitted", steps.Single(s => s.Name == "take-up used").Result, StringComparison.Ordinal);
            var source = steps.Single(s => s.Name == "settle").Source;
            Assert.Equal(isSettleFitted, source.Contains("job book", StringComparison.Ordinal));
        }
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void Results_OfWhatIsPrinted_AreTheSpecsOwn(string file, LengthUnit unit)
    {
        foreach (var (spec, steps) in Demo(SpecFixture.Catalog, file, unit))
        {
            foreach (var (name, number) in Printed(spec))
            {
                var (_, shown, lastDigit) = ShownArithmetic.Of(steps.Single(s => s.Name == name));
                Assert.True(Math.Abs(number - shown) <= 0.51 * lastDigit, $"{spec.Order}/{spec.Piece} {name}: {shown} shown, {number} in the spec");
            }

            Assert.EndsWith($"to whole turns: {spec.Twist.Turns}", steps.Single(s => s.Name == "turns").Result, StringComparison.Ordinal);
        }
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void Steps_EveryDemo_HaveASourceAndANameOfTheirOwn(string file, LengthUnit unit)
    {
        foreach (var (_, steps) in Demo(SpecFixture.Catalog, file, unit))
        {
            Assert.All(steps, s => Assert.DoesNotContain("", new[] { s.Name, s.Formula, s.Result, s.Source }));
            Assert.Equal(steps.Count, steps.Select(s => s.Name).Distinct().Count());
        }
    }

    [Fact]
    public void Of_NockGroove_JudgesEveryThreadOnHand()
    {
        var steps = Demo(SpecFixture.Catalog, "demo.csv", LengthUnit.Inch)[0].Steps;
        Assert.Equal(
            SpecFixture.Catalog.Threads.Keys,
            steps.Where(s => s.Name.StartsWith("nock clearance over ", StringComparison.Ordinal)).Select(s => s.Name.Split(' ')[^1]));
    }

    [Fact]
    public void Of_NoTurns_HasNoTurnsThatCancelTheResidual()
    {
        var file = SpecFixture.Order(("twists", "0"));
        var spec = new SpecBuilder(SpecFixture.Catalog, LengthUnit.Inch, SpecFixture.Date).Build(file, []);
        var steps = Explanation.Of(spec!, file, SpecFixture.Catalog);
        Assert.DoesNotContain(steps, s => s.Name == "turns that cancel the residual");
        AssertWorkable(spec!, steps);
    }

    [Fact]
    public void Of_PostsThatFallOnAMark_AreLaidAsWanted()
    {
        var line = SpecFixture.Order();
        var spec = new SpecBuilder(SpecFixture.Catalog, LengthUnit.Inch, SpecFixture.Date).Build(line, [])!;
        var steps = Explanation.Of(spec with { Posts = spec.Posts with { Outside = spec.Posts.Tape } }, line, SpecFixture.Catalog);
        Assert.Equal("0.00000 in, laid as wanted", steps.Single(s => s.Name == "residual").Result);
        Assert.Equal("0.00 turns, so none", steps.Single(s => s.Name == "turns that cancel the residual").Result);
    }

    internal static void AssertWorkable(BuildSpec spec, IEnumerable<ExplainedStep> steps)
    {
        foreach (var step in steps)
        {
            if (step.Numbers.Length == 0)
            {
                Assert.True(InWords.Contains(step.Name) || step.Name.EndsWith(", closing", StringComparison.Ordinal), step.Name);
                continue;
            }

            // Numbers are rounded before they are shown, so a last digit may be one off, and a half for rounding itself.
            var (worked, shown, lastDigit) = ShownArithmetic.Of(step);
            var allowed = lastDigit == 1 ? 1e-9 : 1.5 * lastDigit;
            Assert.True(
                Math.Abs(worked - shown) <= allowed,
                string.Create(CultureInfo.InvariantCulture, $"{spec.Order}/{spec.Piece} {step.Name}: {step.Numbers} is {worked}, not {step.Result}"));
        }
    }

    private static IEnumerable<(string Name, double Number)> Printed(BuildSpec spec)
    {
        double In(Length length) => spec.Unit == LengthUnit.Inch ? length.Inches : length.Millimeters;
        yield return ("take-up by rule", In(spec.Twist.TakeUp.Rule));
        yield return ("bundle diameter", In(spec.Bundle.Diameter));
        yield return ("take-up by helix", In(spec.Twist.TakeUp.Helix));
        yield return ("settle", In(spec.Settle));
        yield return ("laid-up length", In(spec.LaidUpLength));
        yield return ("posts, outside to outside", In(spec.Posts.Outside));
        yield return ("posts, center to center", In(spec.Posts.Centers));
        yield return ("residual", In(spec.Posts.Residual));
        yield return ("turn sensitivity", In(spec.TurnSensitivity));
        yield return ("turns that cancel the residual", spec.ResidualTurns);
        yield return ("reading under load", In(spec.Stretch.Reading!.Value));
        yield return ("stretch load over breaking load", spec.StretchShare * 100);
        yield return ("breaking load", spec.Strength.Breaking.Pounds);
        if (spec.Strength.Ratio is { } ratio)
        {
            yield return ("breaking load over floor", ratio);
        }

        yield return ("mass in grams", spec.Mass!.Value.Grams);
        yield return ("mass in grains", spec.Mass!.Value.Grains);
    }

    private static List<(BuildSpec Spec, ValueList<ExplainedStep> Steps)> Demo(ShopCatalog catalog, string name, LengthUnit unit)
    {
        var file = OrderReader.Read(Path.Combine(TestFiles.DemoOrders, name), LengthUnit.Inch, catalog.Shop.Columns);
        var report = SetBuilder.Build(file, new SpecBuilder(catalog, unit, SpecFixture.Date));
        Assert.NotEmpty(report.Pieces);
        return [.. report.Pieces.Select(p => (p.Spec!, Explanation.Of(p.Spec!, file.Lines.First(l => l.Row.Line == p.Line), catalog)))];
    }
}
