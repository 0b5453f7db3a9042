using Tagend.Measures;
using Tagend.Pages;
using Tagend.Pages.Parts;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Tags;
using Tagend.Tests.Output;
using Tagend.Tests.Specs;
using Tagend.Tests.Workshop;
using Xunit;

namespace Tagend.Tests.Pages.Parts;

public class ProvenTagTests
{
    private static readonly Place At = new("card 1");

    [Fact]
    public void Of_ASpecThatIsReadAgain_IsItsText()
    {
        var spec = SpecFixture.Good();
        Assert.Equal(TagWriter.Write(spec), ProvenTag.Of(spec, At, out var problem));
        Assert.Null(problem);
    }

    /// <summary>By an order none of these can be had: each is a fault of the program, which nobody would see on the paper.</summary>
    [Theory]
    [InlineData("draw weight", "51000000")]
    [InlineData("strand diameter", "its code would not be read: the tag makes no sense")]
    public void Of_AValueThatReadersRefuse_IsAProblemThatNamesIt(string what, string said)
    {
        _ = ProvenTag.Of(Impossible(what), At, out var problem);
        Assert.Equal(At, problem?.At);
        Assert.Contains(said, problem!.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("cards", "jig card D-101 string")]
    [InlineData("tags", "loop tag D-101 string")]
    public void Kinds_WithACode_RefuseAPieceWhoseCodeWouldNotBeRead(string kind, string place)
    {
        using var folder = new WorkshopFolder();
        var batch = PageKinds.All.Single(k => k.Name == kind).Begin(SpecFixture.Catalog, TestFonts.Shipped, folder.Plan().Setting);
        Assert.Empty(Lay(SpecFixture.Good()).Problems);
        Assert.Equal(place, Assert.Single(Lay(Impossible("strand diameter")).Problems).At.File);

        LaidSet Lay(BuildSpec spec) => batch.Lay(new BuildSet("D-101", [new Build(spec, Tagend.Orders.OrderSlip.Blank)]));
    }

    private static BuildSpec Impossible(string what)
    {
        var spec = SpecFixture.Good();
        return what == "draw weight" ? spec with { DrawWeight = Force.FromPounds(51_000_000), Strength = spec.Strength with { Floor = null } }
            : spec with { Bundle = spec.Bundle with { Diameter = Length.FromInches(100) } };
    }
}
