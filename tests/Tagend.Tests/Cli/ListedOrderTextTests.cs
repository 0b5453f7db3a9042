using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Texts;
using Tagend.Workshop.Books;
using Xunit;

namespace Tagend.Tests.Cli;

public class ListedOrderTextTests
{
    private static readonly DateOnly Today = new(2026, 12, 1);

    [Theory]
    [InlineData(OrderState.Printed, "701  due 2026-12-04  printed: string, buss; for Demo customer 1, hybrid cam", "string printed", "buss printed")]
    [InlineData(OrderState.New, "701  due 2026-12-04  new: string; for Demo customer 1, hybrid cam", "string new")]
    [InlineData(
        OrderState.PartBuilt,
        "701  due 2026-12-04  part-built by AB; never printed: yoke; still to build: control; for Demo customer 1, hybrid cam",
        "string built AB", "control printed", "yoke new")]
    [InlineData(
        OrderState.Remade,
        "701  due 2026-12-04  remade by AB, CD; to be remade: buss (loop cut); cancelled: yoke (wrong bow); for Demo customer 1, hybrid cam",
        "string built AB", "control built CD", "buss remade loop cut", "yoke cancelled wrong bow")]
    [InlineData(OrderState.Cancelled, "701  due 2026-12-04  cancelled: string (customer called off); for Demo customer 1, hybrid cam", "string cancelled customer called off")]
    [InlineData(OrderState.Built, "701  due 2026-12-04  built by AB; shipped: buss; for Demo customer 1, hybrid cam", "string built AB", "buss shipped AB")]
    [InlineData(OrderState.Shipped, "701  due 2026-12-04  shipped by AB; for Demo customer 1, hybrid cam", "string shipped AB")]
    public void Of_Order_SaysHowFarThenWhatIsLeftThenWhose(OrderState state, string line, params string[] pieces) =>
        Assert.Equal(line, ListedOrderText.Of(Order(state, pieces), Today, hasBenches: false));

    [Fact]
    public void Of_OrderOfOneOfSeveralBenches_NamesIt() => Assert.Equal(
        "701  due 2026-12-04  printed at left: string; for Demo customer 1, hybrid cam",
        ListedOrderText.Of(Order(OrderState.Printed, "string printed"), Today, hasBenches: true));

    [Theory]
    [InlineData("2026-11-30", "701  due 2026-11-30, late  printed: string; for hybrid cam")]
    [InlineData("soon", "701  due \"soon\"  printed: string; for hybrid cam")]
    [InlineData("", "701  no due date  printed: string; for hybrid cam")]
    public void Of_OrderThatIsLateOrHasNoDay_SaysSo(string due, string line) => Assert.Equal(
        line,
        ListedOrderText.Of(Order(OrderState.Printed, "string printed") with { DueText = due, Due = DueDate.Read(due, DateStyle.Unknown, Today), Customer = "" }, Today, hasBenches: false));

    /// <param name="pieces">Name, state, and who built it or why it is in this state.</param>
    private static ListedOrder Order(OrderState state, params string[] pieces) => new(
        "701", state, new DateOnly(2026, 12, 4), "2026-12-04", "Demo customer 1", "hybrid cam",
        pieces.Select(p => p.Split(' ', 3)).Select(p => Piece(p[0], Enum.Parse<PieceState>(p[1], ignoreCase: true), p.ElementAtOrDefault(2) ?? "")).ToValueList());

    private static ListedPiece Piece(string name, PieceState state, string rest) => new(
        name, state, 1, "left", state is PieceState.Built or PieceState.Shipped ? rest : "", state is PieceState.Remade or PieceState.Cancelled ? rest : "");
}
