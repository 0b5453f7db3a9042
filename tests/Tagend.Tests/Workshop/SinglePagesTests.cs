using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Problems;
using Tagend.Tests.Specs;
using Tagend.Workshop.Printing;
using Tagend.Workshop.Shops;
using Xunit;

namespace Tagend.Tests.Workshop;

/// <summary>Pages that are not of orders: ruler, outlines of labels, fits.</summary>
public sealed class SinglePagesTests : IDisposable
{
    private static readonly PrinterScale Office = new("office", Length.FromMillimeters(149.3), Length.FromMillimeters(149.8));

    private readonly WorkshopFolder _folder = new();

    [Fact]
    public void Ruler_OfAPaper_IsAFile()
    {
        var (paper, problems) = RulerPaper.Print(SpecFixture.Catalog, Paper.A4, null, _folder.Path, SpecFixture.Date);
        Assert.Equal((_folder["ruler.pdf"], 1, Paper.A4), (paper!.Path, paper.Pages, paper.Paper));
        Assert.Empty(problems);
        Assert.Equal(["ruler.pdf"], _folder.Files);
    }

    [Fact]
    public void Ruler_OfAPrinterTheFontCannotName_IsAProblemAndNoFile()
    {
        var (paper, problems) = RulerPaper.Print(SpecFixture.Catalog, Paper.A4, Office with { Printer = "漢" }, _folder.Path, SpecFixture.Date);
        Assert.Null(paper);
        Assert.NotEmpty(problems);
        Assert.Empty(_folder.Files);
    }

    [Fact]
    public void Outlines_OfASheet_IsAFileOnItsPaper()
    {
        var sheet = SpecFixture.Catalog.Stocks.Values.First(s => s.LabelsPerPage > 1);
        var paper = OutlinesPaper.Print(sheet.Name, SpecFixture.Catalog, _folder.Path, SpecFixture.Date);
        Assert.Equal((_folder[$"{sheet.Name}-outlines.pdf"], sheet.PageWidth), (paper.Path, paper.Paper.Width));
        Assert.Single(_folder.Files);
    }

    [Fact]
    public void Outlines_OfWhatIsNoSheet_SaysWhatThereIs()
    {
        var roll = SpecFixture.Catalog.Stocks.Values.First(s => s.LabelsPerPage == 1);
        Assert.Contains("has one label per page", Error(() => OutlinesPaper.Print(roll.Name, SpecFixture.Catalog, _folder.Path, SpecFixture.Date)), StringComparison.Ordinal);
        Assert.StartsWith("there is no label stock x in stocks.toml; there are ", Error(() => OutlinesPaper.Print("x", SpecFixture.Catalog, _folder.Path, SpecFixture.Date)), StringComparison.Ordinal);
    }

    [Fact]
    public void LabelStocks_WithDots_AreRollsOnly()
    {
        var (roll, sheet) = (SpecFixture.Catalog.Stocks.Values.First(s => s.LabelsPerPage == 1), SpecFixture.Catalog.Stocks.Values.First(s => s.LabelsPerPage > 1));
        Assert.Equal(600, LabelStocks.Named(roll.Name, SpecFixture.Catalog, 600).DotsPerInch);
        Assert.Equal(sheet, LabelStocks.Named(sheet.Name, SpecFixture.Catalog, null));
        Assert.StartsWith("--dpi is for label printers", Error(() => LabelStocks.Named(sheet.Name, SpecFixture.Catalog, 600)), StringComparison.Ordinal);
    }

    [Fact]
    public void PrinterScales_KeptTwice_AreAsMeasuredLast()
    {
        Assert.Null(PrinterScales.Of("office", _folder.Path));
        PrinterScales.Keep(Office, _folder.Path);
        PrinterScales.Keep(Office with { MeasuredAlong = Length.FromMillimeters(150.1) }, _folder.Path);
        Assert.Equal(Length.FromMillimeters(150.1), PrinterScales.Of("office", _folder.Path)!.MeasuredAlong);
        Assert.Null(PrinterScales.Of("other", _folder.Path));
    }

    [Fact]
    public void PrinterScales_OfAFileWithMistakes_SayWhatToDo()
    {
        File.WriteAllText(_folder["printers.toml"], "x = 1\n");
        Assert.Contains("or delete it and measure the printers again", Error(() => PrinterScales.Of("office", _folder.Path)), StringComparison.Ordinal);
    }

    [Fact]
    public void Fit_WithNothingToDraw_SaysSo() => Assert.Equal(
        "fit.pdf: there is nothing to plot before two builds of a material and strand count are logged",
        Error(() => FitPaper.Draw([], SpecFixture.Catalog, "fit.pdf", SpecFixture.Date)));

    [Theory]
    [InlineData("templates/shop.toml")]
    [InlineData("templates/plans/compound-string.toml")]
    public void Templates_Begun_AreTheShippedOnes(string file)
    {
        ShopTemplates.Begin(TestFiles.Templates, _folder["templates"], ShopOwn.Nothing);
        Assert.Equal(File.ReadAllBytes(Path.Combine(TestFiles.Root, file)), File.ReadAllBytes(_folder[file]));
        Assert.Empty(ShopTemplates.Read(_folder["templates"]).Problems);
        Assert.Contains("already exists", Error(() => ShopTemplates.Begin(TestFiles.Templates, _folder["templates"], ShopOwn.Nothing)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(LengthUnit.Inch, "in", 1.125)]
    [InlineData(LengthUnit.Millimeter, "mm", 1.125)]
    public void Templates_OfAShop_HaveWhatItSaysOfItself(LengthUnit unit, string word, double inches)
    {
        var own = new ShopOwn("The \"Loop\" \\ Café", "555\t0100", unit, Length.FromInches(inches));
        Assert.Empty(ShopTemplates.Begin(TestFiles.Templates, _folder["templates"], own));
        var shop = ShopTemplates.Read(_folder["templates"]).Catalog!.Shop;
        Assert.Equal((own.Name, own.Phone, unit, own.PostDiameter), (shop.Name, shop.Phone, shop.Unit, shop.Jig.PostDiameter));
        Assert.Contains($"unit = \"{word}\"", File.ReadAllText(_folder["templates/shop.toml"]), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.1, 0)]
    [InlineData(0.0999, 1)]
    [InlineData(3, 0)]
    [InlineData(3.0001, 1)]
    public void Templates_OfPostsThatCannotBe_AreNotWritten(double inches, int problems)
    {
        var own = ShopOwn.Nothing with { PostDiameter = Length.FromInches(inches) };
        Assert.Equal(problems, ShopTemplates.Begin(TestFiles.Templates, _folder["templates"], own).Count);
        Assert.Equal(problems == 0, Directory.Exists(_folder["templates"]));
    }

    [Fact]
    public void Templates_ThatCannotBeCopied_LeaveNothingBehind()
    {
        Assert.StartsWith("cannot copy the templates to", Error(() => ShopTemplates.Begin(_folder["none"], _folder["templates"], ShopOwn.Nothing)), StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(_folder.Path));
    }

    [Fact]
    public void Templates_AfterARunThatWasKilled_ClearWhatItLeft()
    {
        Directory.CreateDirectory(_folder[$".tagend-{Environment.MachineName}-0/templates/plans"]);
        File.WriteAllText(_folder[$".tagend-{Environment.MachineName}-0/templates/plans/yoke.toml"], "");
        ShopTemplates.Begin(TestFiles.Templates, _folder["templates"], ShopOwn.Nothing);
        Assert.Equal([_folder["templates"]], Directory.GetFileSystemEntries(_folder.Path));
    }

    private static string Error(Action act) => Assert.Throws<TagendException>(act).Message;

    public void Dispose() => _folder.Dispose();
}
