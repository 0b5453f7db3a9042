using Tagend.Measures;
using Tagend.Orders;
using Xunit;

namespace Tagend.Tests.Orders;

public class PositionReaderTests
{
    [Theory]
    [InlineData("A 7 1/2", PieceEnd.A, 7.5)]
    [InlineData("a7.5", PieceEnd.A, 7.5)]
    [InlineData("b 8", PieceEnd.B, 8)]
    [InlineData(" B  203.2 mm ", PieceEnd.B, 8)]
    [InlineData("26 1/4", PieceEnd.A, 26.25)]
    [InlineData("B½", PieceEnd.B, 0.5)]
    public void TryRead_Spelling_Reads(string text, PieceEnd end, double inches)
    {
        Assert.True(PositionReader.TryRead(text, LengthUnit.Inch, out var position));
        Assert.Equal(new Position(end, Length.FromInches(inches)), position);
    }

    [Theory]
    [InlineData(PieceEnd.A, 8)]
    [InlineData(PieceEnd.B, 52)]
    public void FromA_OfAPlace_IsItsDistanceFromA(PieceEnd end, double inches) =>
        Assert.Equal(Length.FromInches(inches), new Position(end, Length.FromInches(8)).FromA(Length.FromInches(60)));

    [Theory]
    [InlineData("")]
    [InlineData("A")]
    [InlineData("C 8")]
    [InlineData("AB 8")]
    [InlineData("8 A")]
    [InlineData("A A 8")]
    [InlineData("A -8")]
    public void TryRead_AnythingElse_IsRefused(string text) =>
        Assert.False(PositionReader.TryRead(text, LengthUnit.Inch, out _));
}
