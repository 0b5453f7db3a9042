using Tagend.Measures;
using Tagend.Orders;
using Xunit;

namespace Tagend.Tests.Orders;

public class ServingsReaderTests
{
    private const LengthUnit Inch = LengthUnit.Inch;

    [Fact]
    public void TryRead_EveryPart_IsKept()
    {
        Assert.True(ServingsReader.TryRead(
            "A 0..7 1/2 t021 black; 26 1/4..31 t019 Flo Red;\nB 0 … 8 in T021", Inch, out var servings, out _));
        Assert.Equal(
            [
                new OrderedServing(A(0), A(7.5), "t021", "black", "A 0..7 1/2 t021 black"),
                new OrderedServing(A(26.25), A(31), "t019", "flo-red", "26 1/4..31 t019 Flo Red"),
                new OrderedServing(B(0), B(8), "t021", null, "B 0 … 8 in T021"),
            ],
            servings);
    }

    [Theory]
    [InlineData("0..8", PieceEnd.A, 0, 8, null, null)]
    [InlineData("b0..8", PieceEnd.B, 0, 8, null, null)]
    [InlineData("0 to 8 t021", PieceEnd.A, 0, 8, "t021", null)]
    [InlineData("1/2..7½ 021 black", PieceEnd.A, 0.5, 7.5, "021", "black")]
    [InlineData("12.7 mm..2,54 cm t021", PieceEnd.A, 0.5, 1, "t021", null)]
    [InlineData("0..25,4 mm t021", PieceEnd.A, 0, 1, "t021", null)]
    [InlineData("A 0 .. 5' 0 1/4\" t021", PieceEnd.A, 0, 60.25, "t021", null)]
    [InlineData("26..31 black", PieceEnd.A, 26, 31, "black", null)]
    public void TryRead_Spelling_Reads(
        string text, PieceEnd end, double from, double to, string? thread, string? color)
    {
        Assert.True(ServingsReader.TryReadOne(text, Inch, out var serving, out _));
        Assert.Equal(
            new OrderedServing(
                new Position(end, Length.FromInches(from)), new Position(end, Length.FromInches(to)), thread, color, text),
            serving);
    }

    [Theory]
    [InlineData("", "expected servings such as A 0..7 1/2 t021 black; B 0..8 t021")]
    [InlineData(" ; ", "expected servings such as A 0..7 1/2 t021 black; B 0..8 t021")]
    [InlineData("t021", "expected where it starts and ends, such as A 0..7 1/2 t021 black")]
    [InlineData("0...8", "expected where it starts and ends, such as A 0..7 1/2 t021 black")]
    [InlineData("0-8 t021", "expected where it starts and ends, such as A 0..7 1/2 t021 black")]
    [InlineData(
        "0..8; A 0..7 1/2; 26 1/4 31",
        "item 3 \"26 1/4 31\": expected where it starts and ends, such as A 0..7 1/2 t021 black")]
    [InlineData(
        "0..8; O..8 t021",
        "item 2 \"O..8 t021\": cannot read where it starts, \"O\": expected a length such as 60 1/4, 60.25 in or 1530 mm")]
    [InlineData(
        "0..t021 black",
        "cannot read where it ends, \"t021 black\": expected a length such as 60 1/4, 60.25 in or 1530 mm")]
    [InlineData(
        "B 0..B 8",
        "cannot read where it ends, \"B 8\": expected a length such as 60 1/4, 60.25 in or 1530 mm")]
    [InlineData("1..30 mm", "give both lengths their unit, or neither")]
    [InlineData("1 in..30", "give both lengths their unit, or neither")]
    [InlineData("8..0", "it must end farther from its end of the piece than it starts")]
    [InlineData("8..8", "it must end farther from its end of the piece than it starts")]
    public void TryRead_AnythingElse_SaysWhatIsWrongWhere(string text, string error)
    {
        Assert.False(ServingsReader.TryRead(text, Inch, out _, out var actual));
        Assert.Equal(error, actual);
    }

    [Fact]
    public void TryReadOne_TwoServings_IsRefused()
    {
        Assert.False(ServingsReader.TryReadOne("0..8; 9..10", Inch, out _, out var error));
        Assert.Equal("expected one serving such as 26 1/4..31 t021 red", error);
    }

    private static Position A(double inches) => new(PieceEnd.A, Length.FromInches(inches));

    private static Position B(double inches) => new(PieceEnd.B, Length.FromInches(inches));
}
