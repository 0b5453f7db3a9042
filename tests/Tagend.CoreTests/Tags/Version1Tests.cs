using System.IO.Hashing;
using System.Text;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Specs;
using Tagend.Tags;
using Tagend.Tests.Specs;
using Xunit;

namespace Tagend.Tests.Tags;

/// <summary>Tags of version 1 read for ever, and mean what they meant.</summary>
public class Version1Tests
{
    private const string Body =
        "TE1*D-101*STRING*COMPOUND-STRING*1*20260314*IN*L60.25/.0625*W70*MHMPE-0145/24/.07941976*T45/R/.54/.5186121/0/C"
        + "*J1/.25/60.38706386/.0625/5*CBLACK/12+RED/12*YT021/.021/BLACK+T019/.019/RED"
        + "*SA0/8/1+C26.25/31/2+B51.75/60.25/1*PPEEP/18*NS9+N29.5+S50.75*B696.9599998*X300/20/60.54963717*G*Q3882";

    /// <summary>As it stood on tags before there was a version 2.</summary>
    private const string Check = "*E7746C85C";

    [Fact]
    public void Read_FullString_IsTheSpecItWas()
    {
        var spec = Assert.IsType<TagReading.Piece>(TagReader.Read(Checked(Body))).Spec;
        Assert.Equal(SpecFixture.Good() with { EndLoops = null }, spec);
        Assert.Equal((Hand.S, Hand.Z), (spec.Twist.Hand, spec.Twist.ServingHand));
    }

    [Theory]
    [InlineData("/0/C*J", "/0/A*J", Hand.Z, Hand.S)]
    [InlineData("/0/C*J", "/0/C*J", Hand.S, Hand.Z)]
    public void Read_Direction_IsThatOfTheHookAtA(string old, string replacement, Hand twist, Hand servings)
    {
        var spec = Piece(old, replacement);
        Assert.Equal((twist, servings), (spec.Twist.Hand, spec.Twist.ServingHand));
    }

    [Fact]
    public void Read_FittedTakeUp_HasItsErrorAndBuilds()
    {
        var takeUp = Piece("T45/R/.54/.5186121/0/C", "T45/F/.54/.5186121/.02/C/.53/.01/9").Twist.TakeUp;
        Assert.Equal(new FittedAmount(Length.FromInches(0.53), Length.FromInches(0.01), 9), takeUp.Fitted);
        Assert.Equal(Length.FromInches(0.53), takeUp.Amount);
    }

    [Fact]
    public void Read_EveryFieldThatMayBeEmpty_IsReadAsNothing()
    {
        var body = Body.Replace("*W70", "*W", StringComparison.Ordinal)
            .Replace("*YT021/.021/BLACK+T019/.019/RED*SA0/8/1+C26.25/31/2+B51.75/60.25/1*PPEEP/18*NS9+N29.5+S50.75", "*Y*S*P*N", StringComparison.Ordinal);
        var spec = Assert.IsType<TagReading.Piece>(TagReader.Read(Checked(body))).Spec;
        Assert.Null(spec.DrawWeight);
        Assert.Null(spec.Strength.Floor);
        Assert.Null(spec.NockGroove);
        Assert.Equal((0, 0, 0), (spec.Servings.Count, spec.Separators.Count, spec.Marks.Count));
        Assert.Equal(Length.FromInches(0.118), Piece("*G*", "*G.118*").NockGroove);
    }

    [Theory]
    [InlineData("*L60.25/", "*L60.2X/", "the tag makes no sense at \"60.2X\": expected a length")]
    [InlineData("*L60.25/.0625*", "*L60.25/.0625/1*", "the tag makes no sense at \"1\": expected nothing more")]
    [InlineData("*W70*", "*WX*", "the tag makes no sense at \"X\": expected a force")]
    [InlineData("/24/.07941976*", "/24/.07941976/1*", "the tag makes no sense at \"1\": expected nothing more")]
    [InlineData("/0/C*J", "/0/X*J", "the tag makes no sense at \"X\": expected a direction")]
    [InlineData("/.0625/5*C", "/0/5*C", "the tag makes no sense: its step of the tape is none that a piece can have")]
    [InlineData("*L60.25/", "*L787.4/", null)] // 20 m, the most
    [InlineData("*L60.25/", "*L787.5/", "the tag makes no sense: its finished length is none that a piece can have")]
    [InlineData("*L60.25/", "*L9.999999M/", "the tag makes no sense: its finished length is none that a piece can have")]
    [InlineData("*L60.25/", "*L10M/", null)] // the least
    [InlineData("/.0625/5*C", "/.0625/5/1*C", "the tag makes no sense at \"1\": expected nothing more")]
    [InlineData("/1+C", "/3+C", "the tag makes no sense at \"3\": expected a thread of field Y")]
    [InlineData("/1+C", "/0+C", "the tag makes no sense at \"0\": expected a thread of field Y")]
    [InlineData("*X300/20/60.54963717*", "*X300/20*", "the tag makes no sense at \"\": expected more")]
    [InlineData("*X300/20/60.54963717*", "*X300/20/60.54963717/1*", "the tag makes no sense at \"1\": expected nothing more")]
    [InlineData("*Q3882", "*Q3882*O.75", "the tag makes no sense at \"O.75\": expected nothing more")]
    [InlineData("*Q3882", "*Q", "the tag makes no sense at \"\": expected a mass")]
    [InlineData("*Q3882", "*Q1000000000", "the tag makes no sense at \"1000000000\": expected a mass")]
    public void Read_RightCheckOverNonsense_NamesThePart(string old, string replacement, string? message)
    {
        var reading = TagReader.Read(Checked(Body.Replace(old, replacement, StringComparison.Ordinal)));
        Assert.Equal(message, (reading as TagReading.Damaged)?.Message);
        Assert.Equal(message is null, reading is TagReading.Piece);
    }

    /// <summary>A text that somebody has made up has a check that fits, too. No length is over 20 m; whether it fits the piece is not asked.</summary>
    [Theory]
    [InlineData("*L60.25/", "*L60.25/788", "tolerance")]
    [InlineData("*W70*", "*W0*", "draw weight")]
    [InlineData("/24/.07941976", "/0/.07941976", "number of strands")]
    [InlineData("/24/.07941976", "/25/.07941976", "number of strands")]
    [InlineData("/24/.07941976", "/24/0", "strand diameter")]
    [InlineData("/24/.07941976", "/24/788", "strand diameter")]
    [InlineData("*CBLACK/12", "*CBLACK/999999999", "number of strands a color")]
    [InlineData("*T45/", "*T10001/", "number of turns")]
    [InlineData("*J1/", "*J0/", "post diameter")]
    [InlineData("/.25/60.38706386", "/0/60.38706386", "pin diameter")]
    [InlineData("/60.38706386/", "/0/", "post setting")]
    [InlineData("*YT021/.021", "*YT021/0", "thread diameter")]
    [InlineData("*SA0/8/1", "*SA0/788/1", "serving")]
    [InlineData("*PPEEP/18", "*PPEEP/788", "place")]
    [InlineData("+N29.5", "+N788", "place")]
    [InlineData("*B696.9599998", "*B0", "breaking force")]
    [InlineData("*X300/20", "*X0/20", "stretch load")]
    [InlineData("*X300/20", "*X300/100001", "stretch time")]
    [InlineData("/60.54963717*G", "/0*G", "reading under load")]
    [InlineData("*G*", "*G0*", "nock groove")]
    public void Read_RightCheckOverAnImpossibleValue_NamesIt(string old, string replacement, string value) => Assert.Equal(
        $"the tag makes no sense: its {value} is none that a piece can have",
        Assert.IsType<TagReading.Damaged>(TagReader.Read(Checked(Body.Replace(old, replacement, StringComparison.Ordinal)))).Message);

    [Fact]
    public void Read_Bag_BringsBackItsPieces()
    {
        var contents = Checked("TB1*D-101*CSTRING/1");
        var bag = Assert.IsType<TagReading.Bag>(TagReader.Read($"{contents}${Checked(Body)}"));
        Assert.Equal(("D-101", 1), (bag.Order, bag.Specs.Count));
        Assert.Equal([new BagEntry("string", 1)], bag.Contents);
        Assert.Empty(Assert.IsType<TagReading.Bag>(TagReader.Read(contents)).Specs);
    }

    [Theory]
    [InlineData("TB1*D-101*CSTRING/2")]
    [InlineData("TB1*D-102*CSTRING/1")]
    [InlineData("TB1*D-101*CBUSS/1")]
    public void Read_BagOfOtherPieces_IsDamaged(string contents) => Assert.Equal(
        "the tag of the bag does not carry the pieces it lists: scan it again",
        Assert.IsType<TagReading.Damaged>(TagReader.Read($"{Checked(contents)}${Checked(Body)}")).Message);

    [Fact]
    public void Read_BagWithMoreInIt_IsDamaged() => Assert.Equal(
        "the tag makes no sense at \"X\": expected nothing more",
        Assert.IsType<TagReading.Damaged>(TagReader.Read(Checked("TB1*D-101*CSTRING/1*X"))).Message);

    private static BuildSpec Piece(string old, string replacement)
    {
        Assert.Contains(old, Body, StringComparison.Ordinal);
        return Assert.IsType<TagReading.Piece>(TagReader.Read(Checked(Body.Replace(old, replacement, StringComparison.Ordinal)))).Spec;
    }

    /// <summary>CRC-32/ISO-HDLC of all before it; that of the text as it stood on tags is written down.</summary>
    private static string Checked(string body)
    {
        var check = $"*E{Crc32.HashToUInt32(Encoding.ASCII.GetBytes(body)):X8}";
        if (body == Body)
        {
            Assert.Equal(Check, check);
        }

        return body + check;
    }
}
