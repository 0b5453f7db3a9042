using Tagend.Catalog;
using Tagend.Output;
using Tagend.Problems;
using Tagend.Workshop.Checks;
using Tagend.Workshop.Printing;
using Xunit;

namespace Tagend.Tests.Workshop;

public sealed class PrintBatchTests : IDisposable
{
    private readonly WorkshopFolder _folder = new();

    [Fact]
    public void Print_GoodOrders_MakesAPdfOfEachUsualKind()
    {
        var volume = Assert.Single(Print(_folder.Check(), _folder.Plan()));
        Assert.Equal(["cards.pdf", "pulls.pdf", "sheets.pdf", "tags.pdf"], _folder.Files);
        Assert.Equal(["1001", "1002"], volume.Printed.Sets.Select(s => s.Order));
        Assert.Empty(volume.Printed.Withheld);
        Assert.Empty(volume.Printed.Problems);
        Assert.Equal(3, volume.PiecesSoFar);
        Assert.Equal(
            [("cards.pdf", "Tagend cards, 2 sets", 6), ("tags.pdf", "Tagend tags, 2 sets", 5), ("sheets.pdf", "Tagend sheets, 2 sets", 4), ("pulls.pdf", "Tagend pulls, 2 sets", 1)],
            volume.Printed.Papers.Select(p => (Path.GetFileName(p.Path), p.Title, p.Pages)));
    }

    [Theory]
    [InlineData("letter", 5.5, 8.5)]
    [InlineData("a4", 5.8268, 8.2677)]
    [InlineData("5x8", 5, 8)]
    public void Print_OnASetOfPaper_MakesCardsOfItsSize(string name, double width, double height)
    {
        var volume = Assert.Single(Print(_folder.Check(), _folder.Plan(PaperSet.Named(name), "cards", "pulls")));
        Assert.Empty(volume.Printed.Withheld);
        var card = volume.Printed.Papers[0].Paper;
        Assert.Equal((width, height), (Math.Round(card.Width.Inches, 4), Math.Round(card.Height.Inches, 4)));
        Assert.Equal(PaperSet.Named(name)!.Sheet, volume.Printed.Papers[1].Paper);
    }

    [Fact]
    public void Print_ASetThatDoesNotFitItsPaper_LeavesOutThatSetAlone()
    {
        var orders = _folder.Check(WorkshopFolder.Orders.Replace("Demo customer 2", "漢", StringComparison.Ordinal)); // not in the font
        var volume = Assert.Single(Print(orders, _folder.Plan()));
        Assert.Equal(["1002"], volume.Printed.Withheld);
        Assert.Equal(["1001"], volume.Printed.Sets.Select(s => s.Order));
        Assert.NotEmpty(volume.Printed.Problems);
        Assert.Equal("Tagend cards, 1001", volume.Printed.Papers[0].Title);
    }

    /// <summary>A set alone is printed kind by kind, each without waiting for the others.</summary>
    [Fact]
    public void Print_ASetAlone_HasThePapersItHasAmongOthers()
    {
        var orders = _folder.Check();
        var among = Assert.Single(Print(orders, _folder.Plan())).Printed;
        var alone = Assert.Single(Print(orders, _folder.Plan(), "1002")).Printed;
        Assert.Equal(["1002"], alone.Sets.Select(s => s.Order));
        Assert.Equal(["cards.pdf", "pulls.pdf", "sheets.pdf", "tags.pdf"], _folder.Files);
        Assert.Equal(among.Papers.Select(p => (p.Path, p.Paper)), alone.Papers.Select(p => (p.Path, p.Paper)));
        Assert.Equal([("Tagend cards, 1002", 2), ("Tagend tags, 1002", 2), ("Tagend sheets, 1002", 2), ("Tagend pulls, 1002", 1)], alone.Papers.Select(p => (p.Title, p.Pages)));
    }

    [Fact]
    public void Print_ASetAloneThatDoesNotFitOneKind_IsOnNone()
    {
        var plan = _folder.Plan(null, "cards", "tags");
        var small = Tagend.Tests.Specs.SpecFixture.Catalog.Stocks["roll-3x2"] with { LabelWidth = Tagend.Measures.Length.FromInches(0.5) };
        plan = plan with { Setting = plan.Setting with { BagStock = small, LoopStock = small } };
        var among = Assert.Single(Print(_folder.Check(), plan)).Printed;
        var alone = Assert.Single(Print(_folder.Check(), plan, "1002")).Printed;
        Assert.Equal(["1001", "1002"], among.Withheld);
        Assert.Equal(["1002"], alone.Withheld);
        Assert.Empty(alone.Papers);
        Assert.Empty(_folder.Files);
        Assert.NotEmpty(alone.Problems);
        Assert.Equal(among.Problems.Where(p => p.ToString().Contains("1002", StringComparison.Ordinal)), alone.Problems);
    }

    [Fact]
    public void Print_OnASheetOfLabels_SaysWhichIsNextAndStartsThereWhenItIsKept()
    {
        var stock = Tagend.Tests.Specs.SpecFixture.Catalog.Stocks["letter-2x5"];
        var plan = _folder.Plan(kinds: "tags");
        plan = plan with { Setting = plan.Setting with { BagStock = stock, LoopStock = stock } };
        _folder.Book.KeepLabels(Assert.Single(Print(_folder.Check(), plan)).Printed.NextLabels);
        var kept = _folder.Book.KeptLabels([stock.Name, "roll-4x2"]);
        Assert.Equal(new Dictionary<string, int> { ["letter-2x5"] = 6 }, kept); // two bags and three loops
        var next = Assert.Single(Print(_folder.Check(), plan with { Setting = plan.Setting with { Use = new(1, new HashSet<int> { 7 }) { Kept = kept } } })).Printed;
        Assert.Equal(2, Assert.Single(next.Papers).Pages); // 6, 8, 9, 10 and one on the next sheet
        Assert.Equal(2, next.NextLabels["letter-2x5"]);
        Assert.Empty(Assert.Single(Print(_folder.Check(), _folder.Plan(kinds: "tags"))).Printed.NextLabels); // a roll
    }

    [Fact]
    public void Print_OlderPapers_SaySoOnEveryKind()
    {
        var set = new Tagend.Specs.BuildSet("1001", [.. _folder.Check().Report.MakeSets()[0].Builds.Select((b, i) => b with { SupersededBy = i == 0 ? 3 : null })]);
        foreach (var name in new[] { "cards", "strips", "tags", "sheets" })
        {
            var plan = _folder.Plan(kinds: name);
            var batch = Assert.Single(plan.Kinds).Begin(Tagend.Tests.Specs.SpecFixture.Catalog, Output.TestFonts.Shipped, plan.Setting);
            var laid = batch.Lay(set);
            laid.Keep();
            var texts = batch.Bind(new Lazy<Tagend.Specs.BatchPull>()).Documents.SelectMany(d => d.Pages).SelectMany(p => p.Inks).OfType<TextInk>().ToList();
            var marks = texts.Count(t => t.Text.Replace('\u00A0', ' ').Contains("SUPERSEDED by rev 3", StringComparison.Ordinal));
            Assert.Equal(name switch { "cards" or "tags" => 2, "strips" => 2, _ => 1 }, marks); // both sides, bag and loop, both sheets
        }
    }

    [Fact]
    public void Print_NoSets_WritesNothing()
    {
        var volume = Assert.Single(Print(_folder.Check(WorkshopFolder.Header), _folder.Plan()));
        Assert.Empty(volume.Printed.Papers);
        Assert.Empty(_folder.Files);
    }

    [Fact]
    public void Print_SeveralVolumes_NumbersTheirFilesAndKeepsSetsWhole()
    {
        var orders = _folder.Check();
        var plan = _folder.Plan(null, "cards") with { VolumePieces = 2 };
        Assert.Equal([2, 3], Print(orders, plan).Select(v => v.PiecesSoFar));
        Assert.Equal(["cards-001.pdf", "cards-002.pdf"], _folder.Files);
        Assert.Equal([[2], [1]], PrintBatch.VolumesOf(orders.Report.Ready, 1).Select(v => v.Select(s => s.Pieces)));
        Assert.Equal([[2, 1]], PrintBatch.VolumesOf(orders.Report.Ready, 3).Select(v => v.Select(s => s.Pieces)));
    }

    /// <summary>Pages are kept where pictures are made of them too, and else written as they come.</summary>
    [Fact]
    public void Print_SeveralVolumes_WritesTheSameBytesWithPicturesAndWithout()
    {
        var (orders, plan) = (_folder.Check(), _folder.Plan(null, "cards", "strips", "sheets") with { VolumePieces = 2 });
        Print(orders, plan);
        var drafted = _folder.Files.Where(f => f.EndsWith(".pdf", StringComparison.Ordinal)).ToDictionary(f => f, f => File.ReadAllBytes(_folder[f]));
        Print(orders, plan with { PreviewDpi = 10 });
        Assert.Equal(6, drafted.Count);
        Assert.All(drafted, file => Assert.Equal(file.Value, File.ReadAllBytes(_folder[file.Key])));
        Assert.Contains("cards-001-01.png", _folder.Files);
    }

    /// <summary>The same of labels, on rolls and on sheets of which the first is part used.</summary>
    [Theory]
    [InlineData("roll-4x2", "roll-3x2")]
    [InlineData("letter-2x5", "letter-2x5")]
    [InlineData("letter-2x5", "roll-3x2")]
    public void Print_SeveralVolumesOfLabels_WritesTheSameWithPicturesAndWithout(string bag, string loop)
    {
        var stocks = Tagend.Tests.Specs.SpecFixture.Catalog.Stocks;
        var (orders, plan) = (_folder.Check(), _folder.Plan(null, "tags", "packing") with { VolumePieces = 2 });
        plan = plan with { Setting = plan.Setting with { BagStock = stocks[bag], LoopStock = stocks[loop], Use = new(8, new HashSet<int> { 9 }) } };
        var drafted = Print(orders, plan);
        var files = _folder.Files.Where(f => f.EndsWith(".pdf", StringComparison.Ordinal)).ToDictionary(f => f, f => File.ReadAllBytes(_folder[f]));
        var kept = Print(orders, plan with { PreviewDpi = 10 });
        Assert.Equal(4, files.Count);
        Assert.All(files, file => Assert.Equal(file.Value, File.ReadAllBytes(_folder[file.Key])));
        Assert.Equal(kept.Select(v => v.Printed.NextLabels), drafted.Select(v => v.Printed.NextLabels));
        Assert.Equal(kept.SelectMany(v => v.Printed.Papers), drafted.SelectMany(v => v.Printed.Papers));
        Print(orders, plan with { LabelDpi = 60 });
        Assert.Contains("tags-002-60dpi-01.png", _folder.Files);
    }

    [Fact]
    public void Print_IntoAFolderThatCannotBe_SaysSoAndWritesNothing()
    {
        File.WriteAllText(_folder["out"], "a file");
        var error = Assert.Throws<TagendException>(() => Print(_folder.Check(), _folder.Plan() with { Folder = _folder["out"] }));
        Assert.Contains("a file stands where a folder is needed", error.Message, StringComparison.Ordinal);
        Assert.Equal(["out"], _folder.Files);
    }

    [Fact]
    public void Print_AWriteThatFails_LeavesYesterdaysPapersAsTheyWere()
    {
        Print(_folder.Check(), _folder.Plan(null, "cards"));
        var before = File.ReadAllBytes(_folder["cards.pdf"]);
        Directory.CreateDirectory(_folder["tags.pdf"]);
        Assert.Throws<TagendException>(() => Print(_folder.Check(), _folder.Plan(PaperSet.A4, "cards", "tags")));
        Assert.Equal(before, File.ReadAllBytes(_folder["cards.pdf"]));
        Assert.Equal(["cards.pdf"], _folder.Files);
    }

    [Fact]
    public void Print_FewerVolumes_RemovesTheOthersAndNamesThem()
    {
        var orders = _folder.Check();
        var plan = _folder.Plan(null, "cards");
        Print(orders, plan with { VolumePieces = 2 });
        using var batch = new PrintBatch(orders.Catalog, plan);
        Assert.Single(batch.Print(PrintBatch.VolumesOf(orders.Report.Ready, 250), TestContext.Current.CancellationToken));
        Assert.Equal(["cards-001.pdf", "cards-002.pdf"], batch.Removed);
        Assert.Equal([".tagend.lock", "cards.pdf"], _folder.Files);
    }

    [Fact]
    public void Print_IntoAFolderThatAnotherRunHas_SaysSoAndWritesNothing()
    {
        using var other = FolderTurn.Take(_folder.Path);
        var error = Assert.Throws<TagendException>(() => Print(_folder.Check(), _folder.Plan(null, "cards")));
        Assert.Equal(
            $"{_folder.Path}: another run is printing into this folder; try again when it has ended, or choose another folder",
            error.Message);
        Assert.Equal([".tagend.lock"], _folder.Files);
    }

    [Fact]
    public void Print_Stopped_SaysSoAndWritesNothing()
    {
        var orders = _folder.Check();
        var volumes = PrintBatch.VolumesOf(orders.Report.Ready, 250);
        Assert.ThrowsAny<OperationCanceledException>(
            () =>
            {
                using var batch = new PrintBatch(orders.Catalog, _folder.Plan());
                batch.Print(volumes, new CancellationToken(canceled: true)).Count();
            });
        Assert.Empty(_folder.Files);
    }

    [Fact]
    public void Print_TagsOnTwoStocksForAPrinter_MakesADocumentAStock()
    {
        var plan = _folder.Plan(null, "tags");
        plan = plan with { Setting = plan.Setting with { HasOnePaperADocument = true } };
        Print(_folder.Check(), plan);
        Assert.Equal(
            plan.Setting.BagStock == plan.Setting.LoopStock
                ? ["tags.pdf"]
                : new[] { $"tags-{plan.Setting.BagStock.Name}.pdf", $"tags-{plan.Setting.LoopStock.Name}.pdf" }.Order(StringComparer.Ordinal),
            _folder.Files);
    }

    /// <param name="only">The one order that is printed; null for all.</param>
    private static List<PrintedVolume> Print(CheckedOrders orders, PrintPlan plan, string? only = null)
    {
        using var batch = new PrintBatch(orders.Catalog, plan);
        var sets = orders.Report.Ready.Where(s => only is null || s.Order == only);
        return [.. batch.Print(PrintBatch.VolumesOf(sets, plan.VolumePieces), TestContext.Current.CancellationToken)];
    }

    public void Dispose() => _folder.Dispose();
}
