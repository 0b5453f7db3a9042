using Tagend.Tests.Specs;
using Tagend.Workshop.Printing;
using Xunit;

namespace Tagend.Tests.Workshop;

public sealed class EarlierFilesTests : IDisposable
{
    private readonly WorkshopFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("cards.pdf", true)]
    [InlineData("cards-002.pdf", true)]
    [InlineData("cards-07.png", true)]
    [InlineData("cards-001-07.png", true)]
    [InlineData("tags-203dpi-11.png", true)]
    [InlineData("tags-letter-2x5.pdf", true)]
    [InlineData("tags-letter-2x5-003.pdf", true)]
    [InlineData("sheets-002.pdf", false)]
    [InlineData("cards-old.pdf", false)]
    [InlineData("cards-2.pdf", false)]
    [InlineData("my-cards-002.pdf", false)]
    [InlineData("cards-002.pdf.bak", false)]
    [InlineData("tags-unknown-stock.pdf", false)]
    public void Of_AFolder_AreThePapersOfTheRunsKinds(string file, bool isOfThem)
    {
        File.WriteAllText(_folder[file], "");
        string[] expected = isOfThem ? [_folder[file]] : [];
        Assert.Equal(expected, EarlierFiles.Of(_folder.Plan(null, "cards", "tags"), SpecFixture.Catalog.Stocks.Keys));
    }
}
