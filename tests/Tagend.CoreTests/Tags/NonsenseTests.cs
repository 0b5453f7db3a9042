using System.Globalization;
using System.IO.Hashing;
using System.Text;
using Tagend.Measures;
using Tagend.Tags;
using Tagend.Tags.Text;
using Tagend.Tests.Specs;
using Xunit;

namespace Tagend.Tests.Tags;

/// <summary>A right check over a field that is none, as another program might write it: the field is named, in both versions.</summary>
public class NonsenseTests
{
    private const string First =
        "TE1*D-101*STRING*COMPOUND-STRING*1*20260314*IN*L60.25/.0625*W70*MHMPE-0145/24/.07941976*T45/R/.54/.5186121/0/C"
        + "*J1/.25/60.38706386/.0625/5*CBLACK/12+RED/12*YT021/.021/BLACK+T019/.019/RED"
        + "*SA0/8/1+C26.25/31/2+B51.75/60.25/1*PPEEP/18*NS9+N29.5+S50.75*B696.9599998*X300/20/60.54963717*G*Q3882";

    private static readonly string Second = TagWriter.Write(SpecFixture.Good())[TagSigns.Words.Length..^10];

    [Theory]
    [InlineData("*D-101*", "*_*", "_", "an order number")]
    [InlineData("*STRING*", "*_*", "_", "a piece")]
    [InlineData("*STRING*", "*STR%4*", "STR%4", "a piece")] // half of an escape
    [InlineData("*STRING*", "**", "", "a piece")]
    [InlineData("*COMPOUND-STRING*", "*_*", "_", "a kind")]
    [InlineData("*1*2026", "*X*2026", "X", "a revision")]
    [InlineData("*IN*L", "*FT*L", "FT", "a unit")]
    [InlineData("*MHMPE-0145/", "*M_/", "_", "a material")]
    [InlineData("/24/.0794", "/X/.0794", "X", "strands")]
    [InlineData("*T45/", "*TX/", "X", "turns")]
    [InlineData("/R/", "/Q/", "Q", "a model")]
    [InlineData("*CBLACK/12+", "*C_/12+", "_", "a color")]
    [InlineData("*CBLACK/12+", "*CBLACK/X+", "X", "strands")]
    [InlineData("*YT021/", "*Y_/", "_", "a thread")]
    [InlineData("/.021/BLACK+", "/.021/_+", "_", "a color")]
    [InlineData("*PPEEP/", "*P_/", "_", "a separator")]
    [InlineData("*NS9+", "*NX9+", "X9", "a mark")]
    [InlineData("*X300/20/", "*X300/X/", "X", "minutes")]
    [InlineData("*Q3882", "*QX", "X", "a mass")]
    [InlineData("*SA0/", "*SX0/", "X0", "a serving")]
    [InlineData("/8/1+C", "/8/X+C", "X", "a thread of field Y")]
    public void Read_FieldThatIsNone_NamesItAndWhatWasExpected(string old, string now, string found, string expected) =>
        Assert.All(new[] { First, Second }, body =>
        {
            Assert.Contains(old, body, StringComparison.Ordinal);
            Assert.Equal($"the tag makes no sense at \"{found}\": expected {expected}", Fault(Checked(body.Replace(old, now, StringComparison.Ordinal))));
        });

    [Fact]
    public void Read_FieldsOfOneVersion_NameWhatWasExpected()
    {
        Assert.Equal(
            "the tag makes no sense at \"X\": expected builds",
            Fault(Checked(First.Replace("T45/R/.54/.5186121/0/C", "T45/F/.54/.5186121/0/C/.53/.01/X", StringComparison.Ordinal))));
        Assert.Equal(
            "the tag makes no sense at \"X\": expected builds",
            Fault(Checked(Second.Replace("T45/R/.54/.5186121/0/S", "T45/F/.54/.5186121/0/S/.53/.01/X", StringComparison.Ordinal))));
        Assert.Equal("the tag makes no sense at \"_\": expected a lot", Fault(Checked(Second + "*Z_")));
    }

    [Theory]
    [InlineData("*_*CSTRING/1", "_", "an order number")]
    [InlineData("*D-101*C_/1", "_", "a piece")]
    [InlineData("*D-101*CSTRING/X", "X", "a revision")]
    [InlineData("*D-101*CSTRING/1*X", "X", "nothing more")]
    public void Read_BagThatIsNone_NamesWhatWasExpected(string body, string found, string expected)
    {
        Assert.Equal($"the tag makes no sense at \"{found}\": expected {expected}", Fault(Checked("TB1" + body)));
        Assert.Equal($"the tag makes no sense at \"{found}\": expected {expected}", Fault(Checked("TB2" + body)));
    }

    [Fact]
    public void Read_BagWithOnePieceOfAnotherOrder_IsDamaged()
    {
        foreach (var (mark, piece) in new[] { ("TB1", First), ("TB2", Second) })
        {
            var other = piece.Replace("*D-101*STRING*", "*D-102*BUSS*", StringComparison.Ordinal);
            Assert.Equal(
                "the tag of the bag does not carry the pieces it lists: scan it again",
                Fault($"{Checked(mark + "*D-101*CSTRING/1+BUSS/1")}${Checked(piece)}${Checked(other)}"));
        }
    }

    [Fact]
    public void Read_ThreadWithoutAColor_HasNone() => Assert.All(new[] { First, Second }, body =>
    {
        var text = Checked(body.Replace("+T019/.019/RED", "+T019/.019", StringComparison.Ordinal));
        Assert.Equal(["black", "", "black"], Assert.IsType<TagReading.Piece>(TagReader.Read(text)).Spec.Servings.Select(s => s.Color));
    });

    [Theory]
    [InlineData(10, true)] // the least
    [InlineData(9.999999, false)]
    public void Read_PieceOfTenMillimeters_IsTheShortest(double millimeters, bool isPiece)
    {
        var number = millimeters.ToString(CultureInfo.InvariantCulture);
        var bare = $"TE1*D-101*STRING*COMPOUND-STRING*1*20260314*IN*L{number}M/.0625*W*MHMPE-0145/24/.07941976*T1/R/.1/.1/0/C"
            + "*J1/.25/60.38706386/.0625/5*CBLACK/24*Y*S*P*N*B696.9599998*X300/20/60*G*Q3882";
        Assert.Equal(isPiece, TagReader.Read(Checked(bare)) is TagReading.Piece);
    }

    /// <summary>In version 2 every length fits the piece, and colors are all of its strands.</summary>
    [Theory]
    [InlineData("/.0625*", "/61*", "tolerance")]
    [InlineData("BLACK/12", "BLACK/13", "number of strands a color")]
    [InlineData("A0/8/1", "A0/61/1", "serving")]
    [InlineData("A0/8/1", "A8/0/1", "serving")]
    [InlineData("PPEEP/18", "PPEEP/61", "place")]
    [InlineData("+N29.5", "+N61", "place")]
    public void Read_LengthBeyondThePiece_NamesIt(string old, string replacement, string value)
    {
        Assert.Contains(old, Second, StringComparison.Ordinal);
        var body = Second[..Second.IndexOf(old, StringComparison.Ordinal)] + replacement + Second[(Second.IndexOf(old, StringComparison.Ordinal) + old.Length)..];
        Assert.Equal($"the tag makes no sense: its {value} is none that a piece can have", Fault(Checked(body)));
    }

    [Fact]
    public void Number_InTheOtherUnit_HasItsLetter()
    {
        Assert.Equal("7.5I", TagNumber.Write(Length.FromInches(7.5), LengthUnit.Millimeter));
        Assert.Equal("600M", TagNumber.Write(Length.FromMillimeters(600), LengthUnit.Inch));
        Assert.Equal("70L", TagNumber.Write(Force.FromPounds(70), LengthUnit.Millimeter));
        Assert.Equal("1N", TagNumber.Write(Force.FromNewtons(1), LengthUnit.Inch));
        Assert.True(TagNumber.TryRead("70L", LengthUnit.Millimeter, out Force pounds));
        Assert.True(TagNumber.TryRead("1N", LengthUnit.Inch, out Force newton));
        Assert.True(TagNumber.TryRead("7.5I", LengthUnit.Millimeter, out Length inches));
        Assert.True(TagNumber.TryRead("600M", LengthUnit.Inch, out Length millimeters));
        Assert.Equal((Force.FromPounds(70), Force.FromNewtons(1)), (pounds, newton));
        Assert.Equal((Length.FromInches(7.5), Length.FromMillimeters(600)), (inches, millimeters));
        Assert.False(TagNumber.TryRead("70N", LengthUnit.Millimeter, out pounds)); // the tag's own unit has none
    }

    private static string Fault(string text) => Assert.IsType<TagReading.Damaged>(TagReader.Read(text)).Message;

    /// <summary>With the check that fits: CRC-32/ISO-HDLC of all before it.</summary>
    private static string Checked(string body) => $"{body}*E{Crc32.HashToUInt32(Encoding.ASCII.GetBytes(body)):X8}";
}
