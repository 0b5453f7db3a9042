using Tagend.Tests.Specs;
using Tagend.Workshop.Printing;
using Xunit;

namespace Tagend.Tests.Workshop;

public sealed class EarlierFilesTests : IDisposable
{
    private readonly WorkshopFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("cards-002.pdf", true)]
    [InlineData("cards-07.png", true)]
    [InlineData("cards-001-07.png", true)]
    [InlineData("tags-203dpi-11.png", true)]
    [InlineData("tags-letter-2x5.pdf", true)]
    [InlineData("tags-letter-2x5-003.pdf", true)]
    [InlineData("cards.pdf", false)]
    [InlineData("sheets-002.pdf", false)]
    [InlineData("cards-old.pdf", false)]
    [InlineData("cards-2.pdf", false)]
    [InlineData("my-cards-002.pdf", false)]
    [InlineData("cards-002.pdf.bak", false)]
    [InlineData("tags-unknown-stock.pdf", false)]
    public void Remove_FilesOfALargerRun_AreGoneAndOthersStay(string file, bool isRemoved)
    {
        var cards = _folder["cards.pdf"];
        File.WriteAllText(cards, "");
        File.WriteAllText(_folder[file], "");
        var removed = EarlierFiles.Remove(_folder.Plan(null, "cards", "tags"), SpecFixture.Catalog.Stocks.Keys, [cards]);
        string[] expected = isRemoved ? [file] : [];
        Assert.Equal(expected, removed);
        Assert.Equal(!isRemoved, File.Exists(_folder[file]));
        Assert.True(File.Exists(cards));
    }

    [Fact]
    public void Remove_RunThatWroteNothing_RemovesNothing()
    {
        File.WriteAllText(_folder["cards-002.pdf"], "");
        Assert.Empty(EarlierFiles.Remove(_folder.Plan(null, "cards"), [], []));
        Assert.Equal(["cards-002.pdf"], _folder.Files);
    }
}
