using System.Text;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Specs;
using Tagend.Specs.Explained;
using Xunit;

namespace Tagend.Tests.Specs;

/// <summary>
/// The whole explanations of a few pieces that reach every branch of them, kept beside this file to be read by people.
/// Each line's result follows from its own numbers. TAGEND_KEEP=1 writes the file anew.
/// </summary>
public class ExplainedTextTests
{
    private static readonly string Kept = Path.Combine(TestFiles.Root, "tests", "Tagend.CoreTests", "Specs", "Explained.txt");

    private static readonly (string, string)[] NothingOnIt =
        [("servings", ""), ("center_serving", ""), ("nock_point", ""), ("peep", ""), ("speed_nocks", ""), ("draw_weight", "")];

    [Fact]
    public void Explanations_OfPiecesThatReachEveryBranch_AreAsKept()
    {
        var told = Told();
        if (Environment.GetEnvironmentVariable("TAGEND_KEEP") is { Length: > 0 })
        {
            File.WriteAllText(Kept, told);
        }

        Assert.Equal(File.ReadAllLines(Kept), told.Split('\n'));
    }

    private static string Told()
    {
        var text = new StringBuilder();
        Tell(text, "A string with all that it can have, of colors that end in half a loop", SpecFixture.Catalog, LengthUnit.Inch,
            ("colors", "black:11 red:7 blue:6"), ("nock_groove", "0.116 in"), ("twists", "0.7"));
        Tell(text, "A recurve string by its bow's length, in millimeters, its end loops served and different", SpecFixture.Catalog, LengthUnit.Millimeter,
            [.. NothingOnIt, ("kind", "recurve-string"), ("finished_length", ""), ("bow_length", "66 in"), ("material", "polyester-0180"), ("strands", "16"), ("colors", "white red")]);
        Tell(text, "A split-yoke cable of one color, at a shop that has not given its posts", WithoutPosts(), LengthUnit.Inch,
            [.. NothingOnIt, ("kind", "split-yoke-cable"), ("piece", "cable"), ("finished_length", "39 1/4 in"), ("colors", "black")]);
        Tell(text, "A cable with a serving of its own, by the shop's builds", WithFit(Length.FromInches(0.0625)), LengthUnit.Inch,
            [.. NothingOnIt, ("kind", "buss-cable"), ("piece", "buss"), ("finished_length", "38 1/2 in"), ("servings", "A 0 in..5 in; 17 1/2 in..25 in t019"), ("draw_weight", "70 lbf")]);
        Tell(text, "A piece with one closed end loop, by builds that tell nothing of the jig, in millimeters", WithOneLoop(), LengthUnit.Millimeter,
            [.. NothingOnIt, ("kind", "plain"), ("piece", "spare"), ("finished_length", "38 1/2 in")]);
        Tell(text, "A string by the helix, at a shop with values of its own whose servings have the hand of the twist", WithOwnValues(), LengthUnit.Inch,
            ("nock_groove", "0.125 in"), ("center_serving", "26 1/4 in..31 in"));
        Tell(text, "A piece without turns, servings and closed end loops", SpecFixture.Catalog, LengthUnit.Inch,
            [.. NothingOnIt, ("kind", "plain"), ("piece", "spare"), ("twists", "0")]);
        return text.ToString().TrimEnd();
    }

    private static void Tell(StringBuilder text, string heading, ShopCatalog catalog, LengthUnit unit, params (string, string)[] cells)
    {
        var line = SpecFixture.Order(cells);
        var spec = new SpecBuilder(catalog, unit, SpecFixture.Date).Build(line, []);
        var steps = Explanation.Of(spec!, line, catalog);
        ExplanationTests.AssertWorkable(spec!, steps);
        text.Append($"# {heading}\n");
        foreach (var step in steps)
        {
            var numbers = step.Numbers.Length > 0 ? $"\n    = {step.Numbers}" : "";
            text.Append($"{step.Name}: {step.Result}\n    {step.Formula}{numbers}\n    [{step.Source}]\n");
        }

        text.Append('\n');
    }

    private static ShopCatalog WithoutPosts() => SpecFixture.With(s => s with { Jig = s.Jig with { PostDiameter = null } });

    private static ShopCatalog WithOneLoop() => WithFit(Length.Zero) with
    {
        Plans = SpecFixture.WithPlan("plain", p => p with { EndLoopB = Length.FromInches(1) }).Plans,
    };

    private static ShopCatalog WithOwnValues() => SpecFixture.WithMaterial("hmpe-0145", m => m with { Settle = 0.0025, Packing = 0.72 }) with
    {
        Shop = SpecFixture.Catalog.Shop with
        {
            TakeUpModel = TakeUpModel.Helix,
            TurnsPerInch = 0.6,
            RuleTakeUpPerTurn = Length.FromInches(0.0135),
            TerminationEfficiency = 0.7,
            ServingHand = SpecFixture.Catalog.Shop.TwistHand,
        },
    };

    /// <summary>Of builds that tell the settle where they tell an offset.</summary>
    private static ShopCatalog WithFit(Length offset) => SpecFixture.Catalog with
    {
        Fits =
        [
            new FittedTakeUp
            {
                Material = "hmpe-0145",
                Strands = 24,
                Builds = 12,
                PerTurn = Length.FromInches(0.01634567),
                Settle = offset == Length.Zero ? 0 : 0.001780022,
                IsSettleFitted = offset != Length.Zero,
                Offset = offset,
                Variance = new FitVariance(1e-7, 1e-7, 2e-7),
                Scatter = Length.FromInches(0.02),
                LeastRate = 0.4,
                MostRate = 0.9,
            },
        ],
    };
}
