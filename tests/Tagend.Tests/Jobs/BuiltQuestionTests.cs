using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Tests.Specs;
using Xunit;

namespace Tagend.Tests.Jobs;

public class BuiltQuestionTests
{
    [Fact]
    public void Of_Spec_AsksWhatTheCardHasBoxesFor()
    {
        // 60.387 in exact is 60 3/8 in on a tape of sixteenths.
        Assert.Equal(
            [("posts", "60 3/8 in"), ("turns", "45"), ("length", null), ("load", "300 lbf"), ("minutes", "20"), ("who", ""), ("lots", "")],
            BuiltQuestion.Of(SpecFixture.Good(), LengthUnit.Inch).Select(q => (q.Name, q.AsCarded)));
    }

    [Theory]
    [InlineData("posts", "60 7/16", 60.4375)]
    [InlineData("posts", "1535 mm", 60.4330708)]
    [InlineData("turns", "45.5", 45.5)]
    [InlineData("turns", "0", 0)]
    [InlineData("length", "60 9/32\"", 60.28125)]
    [InlineData("load", "1330 N", 298.996)]
    [InlineData("load", "250", 250)]
    [InlineData("minutes", "7.5", 7.5)]
    public void Read_Number_IsPutAmongTheValues(string name, string text, double value)
    {
        var built = Read(name, text).Built!;
        var read = name switch
        {
            "posts" => built.Posts.Inches,
            "turns" => built.Turns,
            "length" => built.Measured.Inches,
            "load" => built.Load.Pounds,
            _ => built.Minutes,
        };
        Assert.Equal(value, read, 1e-3);
    }

    [Theory]
    [InlineData("posts", "6 3/8", "\"6 3/8\": expected about 60.375 in, as on the card: check the digits and the unit")]
    [InlineData("posts", "60 3/8 mm", "\"60 3/8 mm\": expected about 60.375 in, as on the card: check the digits and the unit")]
    [InlineData("length", "6o", "\"6o\": expected a length such as 60 1/4, 60.25 in or 1530 mm")]
    [InlineData("length", "", "\"\": expected a length such as 60 1/4, 60.25 in or 1530 mm")]
    [InlineData("turns", "-3", "\"-3\": expected turns such as 45 or 45.5")]
    [InlineData("turns", "-Infinity", "\"-Infinity\": expected turns such as 45 or 45.5")]
    [InlineData("turns", "NaN", "\"NaN\": expected turns such as 45 or 45.5")]
    [InlineData("turns", "4500", "\"4500\": expected turns such as 45 or 45.5")]
    [InlineData("load", "heavy", "\"heavy\": expected a load such as 300 or 1330 N")]
    [InlineData("minutes", "1e9", "\"1e9\": expected minutes such as 20")]
    [InlineData("who", "a name that is much too long for the list of jobs", "\"a name that is much too long for the list of jobs\": expected a name or initials of at most 40 visible characters")]
    [InlineData("who", "A\u001bB", "\"A\u001bB\": expected a name or initials of at most 40 visible characters")]
    [InlineData("who", "A\u202eB", "\"A\u202eB\": expected a name or initials of at most 40 visible characters")]
    public void Read_WhatMakesNoSense_IsRefused(string name, string text, string error) =>
        Assert.Equal(new BuiltAnswer(null, error), Read(name, text));

    [Theory]
    [InlineData("605/16", "60 5/16")]
    [InlineData("6013/32", "60 13/32")]
    public void Read_ANumberWrittenTogetherWithItsFraction_AsksForTheOneThatIsNear(string text, string meant) => Assert.Equal(
        new BuiltAnswer(null, $"\"{text}\": expected a space between the number and its fraction: is it {meant}?") { Meant = meant },
        Read("length", text));

    [Fact]
    public void Read_ANumberThatNoSpaceBringsNear_AsksForNone() => Assert.Null(Read("length", "905/16").Meant);

    [Theory]
    [InlineData("h88-4, T0210 ,h88-4,,", "H88-4+T0210")]
    [InlineData("", "")]
    [InlineData(" lot 7 ", "LOT 7")]
    public void Read_Lots_AreEachOnceInCapitals(string text, string lots) => Assert.Equal(lots, string.Join('+', Read("lots", text).Built!.Lots));

    [Theory]
    [InlineData(20, 40, true)]
    [InlineData(21, 40, false)]
    [InlineData(20, 41, false)]
    public void Read_LotsAtTheLimitOrOnePast_AreReadAtItAlone(int count, int length, bool isRead) => Assert.Equal(
        isRead, Read("lots", string.Join(',', Enumerable.Range(10, count).Select(i => $"{i}".PadRight(length, 'X')))).Built is not null);

    private static BuiltAnswer Read(string name, string text)
    {
        var spec = SpecFixture.Good();
        return BuiltQuestion.Of(spec, LengthUnit.Inch).Single(q => q.Name == name).Read(BuiltQuestion.CardOf(spec), text);
    }
}
