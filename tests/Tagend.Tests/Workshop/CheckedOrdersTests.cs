using Tagend.Specs;
using Tagend.Workshop.Books;
using Tagend.Workshop.Readings;
using Xunit;

namespace Tagend.Tests.Workshop;

public sealed class CheckedOrdersTests : IDisposable
{
    private readonly WorkshopFolder _folder = new();

    [Fact]
    public void Read_GoodOrders_AreReadyWithoutARefusal()
    {
        var orders = _folder.Check();
        Assert.False(orders.HasRefusals);
        Assert.Equal(["1001", "1002"], orders.Report.Ready.Select(s => s.Order));
        Assert.Null(orders.MissingOrder(["1002"]));
        Assert.Empty(orders.CheckSheets());
    }

    [Fact]
    public void Read_ARowWithAMistake_IsARefusalOfItsSetAlone()
    {
        var orders = _folder.Check(WorkshopFolder.Orders.Replace("57 5/8", "57 5/x", StringComparison.Ordinal));
        Assert.True(orders.HasRefusals);
        Assert.Equal(["1001"], orders.Report.Ready.Select(s => s.Order));
        Assert.Equal(["1002"], orders.Report.Withheld);
    }

    [Fact]
    public void Read_WithABookThatFails_GoesOnWithoutAndSaysSo()
    {
        var book = new RunBook(new BrokenAddress(), TimeProvider.System);
        var orders = _folder.Check(book: book);
        Assert.Equal(2, orders.Report.Ready.Count);
        Assert.Equal(new BookFault(BrokenAddress.Reason, "nothing is entered in it, and take-up is as shop.toml says"), book.Fault);
    }

    [Fact]
    public void MissingOrder_OneNotInTheFile_SaysWhatThereIs() =>
        Assert.Equal("there is no order 1003 in the file; there are 1001, 1002", _folder.Check().MissingOrder(["1001", "1003"]));

    [Fact]
    public void Explain_APiece_HasItsStepsAndItsSpec()
    {
        var explained = _folder.Check().Explain(new PieceName("1001", "buss"));
        Assert.Equal(("1001", "buss", null), (explained.Spec!.Order, explained.Spec.Piece, explained.Missing));
        Assert.NotEmpty(explained.Steps);
    }

    [Theory]
    [InlineData("1001", "cable", "there is no piece cable in order 1001; there are string, buss")]
    [InlineData("1009", "string", "there is no order 1009 in the file; there are 1001, 1002")]
    public void Explain_APieceThatIsNotThere_SaysWhatThereIs(string order, string piece, string missing)
    {
        var explained = _folder.Check().Explain(new PieceName(order, piece));
        Assert.Equal((null, missing), (explained.Spec, explained.Missing));
        Assert.Empty(explained.Problems);
    }

    [Fact]
    public void Explain_APieceThatCannotBeBuilt_HasItsProblems()
    {
        var explained = _folder.Check(WorkshopFolder.Orders.Replace("57 5/8", "1 in", StringComparison.Ordinal)).Explain(new PieceName("1002", "string"));
        Assert.Equal(((BuildSpec?)null, (string?)null), (explained.Spec, explained.Missing));
        Assert.NotEmpty(explained.Problems);
    }

    [Fact]
    public void Explain_OfAFileWithoutPieces_HasTheFilesProblems()
    {
        var explained = _folder.Check("piece\nstring\n").Explain(new PieceName("1001", "string"));
        Assert.Null(explained.Missing);
        Assert.NotEmpty(explained.Problems);
    }

    [Theory]
    [InlineData("1001/string", "1001", "string", "")]
    [InlineData("d-1/Cable 1", "D-1", "cable 1", "")]
    [InlineData("1001", null, null, "\"1001\": expected an order and its piece, such as 1001/string")]
    [InlineData("1/2/3", null, null, "\"1/2/3\": expected an order and its piece, such as 1001/string")]
    [InlineData("", null, null, "\"\": expected an order and its piece, such as 1001/string")]
    public void PieceName_AnyText_IsReadOrSaysWhyNot(string text, string? order, string? piece, string error)
    {
        var name = PieceName.Read(text, out var said);
        Assert.Equal((order, piece, error), (name?.Order, name?.Piece, said));
    }

    public void Dispose() => _folder.Dispose();
}
