using System.Text;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Specs;
using Tagend.Tests.Specs;
using Xunit;

namespace Tagend.Tests.Orders;

public class SpreadsheetTextTests
{
    [Theory]
    [InlineData("=1+1")]
    [InlineData("+1 555 0100")]
    [InlineData("-")]
    [InlineData("@shop")]
    [InlineData("＝1+1")]
    [InlineData("＠shop")]
    public void Guarded_WhatCouldBeAFormula_HasAnApostropheAndComesBack(string text)
    {
        Assert.Equal("'" + text, SpreadsheetText.Guarded(text));
        Assert.Equal(text, SpreadsheetText.Plain("'" + text));
    }

    [Theory]
    [InlineData("")]
    [InlineData("'")]
    [InlineData("'s Hertogenbosch archers")]
    [InlineData("60 1/4")]
    public void Plain_AnyOtherText_StaysAsItIs(string text)
    {
        Assert.Equal(text, SpreadsheetText.Plain(text));
        Assert.Equal(text, SpreadsheetText.Guarded(text));
    }

    [Theory]
    [InlineData("=1+1")]
    [InlineData("＝1+1")]
    public void File_OfACustomerLikeAFormula_IsReadAsThatCustomer(string customer)
    {
        var cells = Reorder.CellsOf(SpecFixture.Good(), OrderSlip.Blank with { Customer = customer });
        var bytes = Reorder.File([cells]);
        Assert.Contains("'" + customer, Encoding.UTF8.GetString(bytes), StringComparison.Ordinal);
        var file = OrderReader.Read("orders.csv", bytes, LengthUnit.Inch, new Dictionary<string, string>());
        Assert.Equal(customer, Assert.Single(file.Lines).Slip.Customer);
    }

    [Fact]
    public void Read_CellWithWhatCannotBeSeen_KeepsWhatCan()
    {
        var bytes = "order,piece,finished_length,customer\n10\u200B01,string,60,A\u202E B\u001B[2J\u00AD\n"u8.ToArray();
        var line = Assert.Single(OrderReader.Read("orders.csv", bytes, LengthUnit.Inch, new Dictionary<string, string>()).Lines);
        Assert.Equal(("1001", "A B [2J"), (line.Order, line.Slip.Customer));
    }
}
