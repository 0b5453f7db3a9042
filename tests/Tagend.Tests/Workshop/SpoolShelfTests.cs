using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Specs;
using Tagend.Tags;
using Tagend.Tests.Jobs;
using Tagend.Tests.Specs;
using Tagend.Workshop.Books;
using Xunit;

namespace Tagend.Tests.Workshop;

public sealed class SpoolShelfTests : IDisposable
{
    private static readonly BuildSpec Spec = SpecFixture.Good();

    private readonly TestBook _test = new();
    private readonly IJobBook _book;
    private readonly SpoolShelf _shelf;

    public SpoolShelfTests()
    {
        _book = _test.Open();
        _shelf = new SpoolShelf(_book.Spools, SpecFixture.Catalog, "left");
    }

    private BenchLog Bench => new(_book, LengthUnit.Inch, _shelf);

    private static Length Black => Stock.Of(Spec, SpecFixture.Catalog.Shop).Single(n => (n.Name, n.Color) == ("hmpe-0145", "black")).Length;

    [Fact]
    public void Find_NumberOrTag_IsTheSpool()
    {
        Receive("black");
        Assert.Equal(1, _shelf.Find(" 1 ").Spool!.Spool.Number);
        Assert.Equal(1, _shelf.Find(SpoolTag.Write(_shelf.Find("1").Spool!.Spool)).Spool!.Spool.Number);
    }

    [Fact]
    public void Find_AnythingElse_SaysWhy()
    {
        Receive("black");
        var spool = _shelf.Find("1").Spool!.Spool;
        Assert.Equal("there is no spool 2 in the job book: check the number, or scan its tag", _shelf.Find("2").Error);
        Assert.Equal("\"x\": expected the number of a spool, or its tag", _shelf.Find("x").Error);
        Assert.Equal("the job book has no spool 2: it is of another book, or was never entered", _shelf.Find(SpoolTag.Write(spool with { Number = 2 })).Error);
        var told = $"lot L1, {LengthWriter.Spool(spool.Length, LengthUnit.Inch)}, received {DateWriter.Iso(spool.Received)}";
        Assert.Equal(
            $"the tag is of hmpe-0145 red, {told}, and the job book's spool 1 is hmpe-0145 black, {told}: it is of another book",
            _shelf.Find(SpoolTag.Write(spool with { Color = "red" })).Error);
    }

    [Fact]
    public void UsesOf_PieceOfTwoColors_AreItsOwnLengths()
    {
        Receive("black");
        Receive("red");
        Assert.Equal([new SpoolUse(1, Black), new SpoolUse(2, Black)], _shelf.UsesOf(Spec, "1, 2").Uses);
        Assert.Equal([new SpoolUse(2, Black)], _shelf.UsesOf(Spec, "2,2").Uses);
        Assert.Empty(_shelf.UsesOf(Spec, "none").Uses);
    }

    [Fact]
    public void UsesOf_SpoolThatEndsInTheBuild_TakesTheRestFromTheNext()
    {
        Receive("black", "2 m");
        Receive("black");
        Assert.Equal([new SpoolUse(1, Length.FromMillimeters(2000)), new SpoolUse(2, Black - Length.FromMillimeters(2000))], _shelf.UsesOf(Spec, "1,2").Uses);
        Assert.Equal([new SpoolUse(1, Black)], _shelf.UsesOf(Spec, "1").Uses);
    }

    [Fact]
    public void UsesOf_SpoolOfSomethingElse_IsRefused()
    {
        Receive("blue");
        Assert.Equal(
            "spool 1 is hmpe-0145 blue, and D-101/string is made of hmpe-0145 black, hmpe-0145 red, t021 black, t019 red", _shelf.UsesOf(Spec, "1").Error);
        _book.Spools.Finish(1);
        Assert.Equal("spool 1 is finished, as the job book has it", _shelf.UsesOf(Spec, "1").Error);
    }

    [Fact]
    public void Log_WithoutSpoolsGiven_TakesThoseAtTheBench()
    {
        Receive("black");
        Receive("black");
        Receive("blue");
        _shelf.Mount(_shelf.Find("2").Spool!);
        _shelf.Mount(_shelf.Find("3").Spool!);
        var logged = Bench.Log("D-101/string", Given(("length", "60 1/4"), ("lots", "x9")), isAnother: false).Logged;
        Assert.Null(logged);
        _book.Record([new Build(Spec, Tagend.Orders.OrderSlip.Blank)]);
        logged = Bench.Log("D-101/string", Given(("length", "60 1/4"), ("lots", "x9")), isAnother: false).Logged!;
        Assert.Equal([new SpoolUse(2, Black)], logged.Build.Built.Spools);
        Assert.Equal(["X9", "L2"], logged.Build.Built.Lots);
        Assert.Equal(Length.FromMillimeters(1_568_000) - Black, Assert.Single(logged.Spools).Left);
        Assert.Equal("D-101", Assert.Single(_book.Find(new JobSearch { Lot = "l2" })).Order);
    }

    [Fact]
    public void Log_WithSpoolsThatDoNotServe_LogsNothing()
    {
        _book.Record([new Build(Spec, Tagend.Orders.OrderSlip.Blank)]);
        Assert.Equal(
            "spools no spool in the job book is of what D-101/string is made of: leave it out, or receive one first",
            Bench.Log("D-101/string", Given(("length", "60 1/4"), ("spools", "1")), isAnother: false).Error);
        Receive("black");
        Assert.Equal("spools there is no spool 7 in the job book: check the number, or scan its tag", Bench.Log("D-101/string", Given(("length", "60 1/4"), ("spools", "7")), isAnother: false).Error);
        Assert.Empty(_book.Built());
    }

    [Fact]
    public void Listed_Spools_BeginWithTheOneThatRunsOutFirst()
    {
        Receive("black");
        Receive("black", "40 m");
        Receive("red");
        _book.Log(Spec, TestBook.Built with { Spools = [new SpoolUse(1, Black), new SpoolUse(2, Black)] }, Guid.NewGuid());
        Assert.Equal([2, 1, 3], _shelf.Listed(withFinished: false).Select(s => s.Spool.Number));
    }

    [Theory]
    [InlineData("1568 m")]
    [InlineData("1567.999 m")]
    [InlineData("0 m")]
    public void Count_OfNoMoreThanCame_IsEntered(string text)
    {
        Receive("black");
        var count = _shelf.Count(_shelf.Find("1").Spool!, text, Guid.NewGuid());
        Assert.Null(count.Error);
        Assert.Equal(count.Left, _shelf.Find("1").Spool!.Left);
    }

    [Theory]
    [InlineData("1568.001 m", "was received with 1715 yd 0 ft")]
    [InlineData("1900 yd", "was received with 1715 yd 0 ft")]
    [InlineData("1568", "expected what is on the spool with its unit, such as 300 yd or 270 m")]
    public void Count_OfMoreThanCameOrOfNoLength_IsRefusedAndNotEntered(string text, string said)
    {
        Receive("black");
        var spool = _shelf.Find("1").Spool!;
        var error = _shelf.Count(spool, text, Guid.NewGuid()).Error;
        Assert.StartsWith($"\"{text}\": ", error, StringComparison.Ordinal);
        Assert.Contains(said, error, StringComparison.Ordinal);
        Assert.Equal(spool, _shelf.Find("1").Spool);
    }

    [Fact]
    public void Count_OfMoreThanCame_SaysWhatToDo()
    {
        Receive("black", "1000 yd");
        Assert.Equal(
            "\"1001 yd\": spool 1 was received with 1000 yd 0 ft, and no more can be left on it: count it again; if more came on it than was entered, finish this spool and receive it anew",
            _shelf.Count(_shelf.Find("1").Spool!, "1001 yd", Guid.NewGuid()).Error);
    }

    [Theory]
    [InlineData("nope", "Rot", "L1", "1000 yd", 1, "name")]
    [InlineData("hmpe-0145", "red!", "L1", "1000 yd", 1, "color")]
    [InlineData("hmpe-0145", "red", "", "1000 yd", 1, "lot")]
    [InlineData("hmpe-0145", "red", "L,1", "1000 yd", 1, "lot")]
    [InlineData("hmpe-0145", "red", "L1", "1000", 1, "length")]
    [InlineData("hmpe-0145", "red", "L1", "0 m", 1, "length")]
    [InlineData("hmpe-0145", "red", "L1", "1000 yd", 0, "count")]
    [InlineData("hmpe-0145", "red", "L1", "1000 yd", 101, "count")]
    public void Reception_FormWithAMistake_NamesTheField(string name, string color, string lot, string length, int count, string field)
    {
        var (spools, faults) = SpoolReception.Read(new SpoolForm(name, color, lot, length, count), SpecFixture.Catalog, SpecFixture.Date);
        Assert.Empty(spools);
        Assert.Equal(field, Assert.Single(faults).Field);
    }

    [Fact]
    public void Reception_GoodForm_IsReadAsTheShopNamesThings()
    {
        var (spools, faults) = SpoolReception.Read(new SpoolForm(" T021 ", "Rot", "h88-4", "100 yd", 2), SpecFixture.Catalog, SpecFixture.Date);
        Assert.Empty(faults);
        Assert.Equal(Enumerable.Repeat(new NewSpool(StockKind.Thread, "t021", "red", "H88-4", Length.FromMillimeters(91_440), SpecFixture.Date), 2), spools);
    }

    public void Dispose()
    {
        _book.Dispose();
        _test.Dispose();
    }

    private static Dictionary<string, string> Given(params (string Name, string Text)[] values) => values.ToDictionary(v => v.Name, v => v.Text);

    private void Receive(string color, string length = "1568 m")
    {
        var number = _shelf.Listed(withFinished: true).Count + 1;
        var (spools, faults) = SpoolReception.Read(new SpoolForm("hmpe-0145", color, $"L{number}", length, 1), SpecFixture.Catalog, SpecFixture.Date);
        Assert.Empty(faults);
        _book.Spools.Receive(spools, Guid.NewGuid());
    }
}
