using System.IO.Hashing;
using System.Text;
using CsCheck;
using Tagend.Specs;
using Tagend.Tags;
using Tagend.Tests.Specs;
using Xunit;

namespace Tagend.Tests.Tags;

public class TagTextTests
{
    private const string Alphanumeric = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:"; // ISO/IEC 18004:2015, table 5

    [Fact]
    public void Crc_CheckString_IsTheCataloguesCheckValue() =>
        Assert.Equal(0xCBF43926u, Crc32.HashToUInt32("123456789"u8)); // CRC-32/ISO-HDLC

    [Fact]
    public void Write_FullString_IsThisText() => Assert.Equal(
        "BOWSTRING TE2*D-101*STRING*COMPOUND-STRING*1*20260314*IN*L60.25/.0625*W70*MHMPE-0145/24/.07941976*T45/R/.54/.5186121/0/S"
        + "*J1/.25/60.38706386/.0625/5*CBLACK/12+RED/12*YT021/.021/BLACK+T019/.019/RED"
        + "*SA0/8/1+C26.25/31/2+B51.75/60.25/1*PPEEP/18*NS9+N29.5+S50.75*B696.9599998*X300/20/60.54963717*Q3882*O.75*E",
        TagWriter.Write(SpecFixture.Good())[..^8]);

    [Fact]
    public void Read_FullString_ComesBackInEveryField()
    {
        var spec = SpecFixture.Good();
        var reading = Assert.IsType<TagReading.Piece>(TagReader.Read(TagWriter.Write(spec)));
        Assert.Equal(spec, reading.Spec);
    }

    [Fact]
    public void Read_RandomSpecs_ComeBackInTheAlphanumericSet() => Specimen.Specs.Sample(
        spec =>
        {
            var text = TagWriter.Write(spec);
            Assert.All(text, c => Assert.Contains(c, Alphanumeric));
            Assert.Equal(spec, Assert.IsType<TagReading.Piece>(TagReader.Read(text)).Spec);
        },
        iter: 10_000 / Specimen.Share,
        seed: "0000KOIPe036");

    [Fact]
    public void Read_AnyOneCharacterChangedDroppedOrSwapped_IsNeverAnotherSpec()
    {
        var text = TagWriter.Write(SpecFixture.Good());
        for (var i = 0; i < text.Length; i += Specimen.Share)
        {
            Assert.IsNotType<TagReading.Piece>(TagReader.Read(text.Remove(i, 1)));
            foreach (var other in Alphanumeric.Where(c => c != text[i] && !(c == ' ' && (i == 0 || i == text.Length - 1))))
            {
                Assert.IsNotType<TagReading.Piece>(TagReader.Read(text[..i] + other + text[(i + 1)..]));
            }

            if (i > 0 && text[i] != text[i - 1])
            {
                Assert.IsNotType<TagReading.Piece>(TagReader.Read(text[..(i - 1)] + text[i] + text[i - 1] + text[(i + 1)..]));
            }
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("TE")]
    [InlineData("TE1")]
    [InlineData("TEST*1")]
    [InlineData("BOWSTRING")]
    [InlineData("BOWSTRING for sale*")]
    [InlineData("BOWSTRINGTE2*D-101")]
    [InlineData("https://example.org/")]
    public void Read_ForeignText_SaysSo(string text) => Assert.IsType<TagReading.Foreign>(TagReader.Read(text));

    [Fact]
    public void Read_TextLongerThanACode_SaysSo() => Assert.Equal(
        "this is longer than any code: scan one tag at a time",
        Assert.IsType<TagReading.Foreign>(TagReader.Read("TE1*" + new string('A', 4_293))).Message);

    [Fact]
    public void Read_ForeignText_SaysWhatOursBeginWith() => Assert.Equal(
        "this is not a Tagend tag: those begin with BOWSTRING, or with TE or TB and a number",
        Assert.IsType<TagReading.Foreign>(TagReader.Read("hello")).Message);

    [Theory]
    [InlineData("TE3*D-101")]
    [InlineData("BOWSTRING TE3*D-101")]
    [InlineData("BOWSTRING TB3*D-101")]
    public void Read_LaterVersion_SaysSo(string text) => Assert.Equal(
        "the tag has version 3, and this program reads up to version 2: use a later Tagend",
        Assert.IsType<TagReading.Later>(TagReader.Read(text)).Message);

    [Fact]
    public void Read_WithoutTheWordsForPeople_IsTheSamePiece()
    {
        var text = TagWriter.Write(SpecFixture.Good());
        Assert.StartsWith("BOWSTRING TE2*", text, StringComparison.Ordinal);
        Assert.Equal(SpecFixture.Good(), Assert.IsType<TagReading.Piece>(TagReader.Read(text[10..])).Spec);
    }

    [Fact]
    public void Write_Bag_SaysTheWordsForPeopleOnce()
    {
        var set = new BuildSet("D-101", [Piece("string"), Piece("buss")]);
        var texts = TagWriter.Write(set).Split('$');
        Assert.Equal(TagWriter.WriteContents(set), texts[0]);
        Assert.Equal(set.Builds.Select(b => TagWriter.Write(b.Spec)), texts.Skip(1).Select(t => "BOWSTRING " + t));
    }

    [Theory]
    [InlineData("German")]
    [InlineData("Spanish")]
    [InlineData("French")]
    public void Read_TypedOnAnotherKeyboard_NamesIt(string language)
    {
        var keyboard = ScannerKeyboard.Layouts.Single(k => k.Name == language);
        Specimen.Specs.Sample(
            spec =>
            {
                var text = TagWriter.Write(spec);
                var typed = keyboard.Type(text);
                var alike = string.Join(" or ", ScannerKeyboard.Layouts.Where(k => k.Type(text) == typed).Select(k => k.Name));
                Assert.Contains(language, alike, StringComparison.Ordinal);
                Assert.Equal(
                    $"the scanner types as if on a US keyboard, and this computer's keyboard is set to {alike}: set the scanner to the computer's "
                        + "keyboard (a code in its manual), or the computer to US, and scan the tag again",
                    Assert.IsType<TagReading.Damaged>(TagReader.Read(typed)).Message);
            },
            iter: 500 / Specimen.Share,
            seed: "0000keyboard");
    }

    /// <summary>Without a hyphen, plus, colon, Y and Z in it a tag is typed alike on both.</summary>
    [Fact]
    public void Read_TypedAlikeOnTwoKeyboards_NamesBoth()
    {
        var spec = SpecFixture.Good();
        spec = spec with
        {
            Order = "101",
            Kind = "plain",
            Bundle = spec.Bundle with { Material = "m" },
            Layup = Layup.Of([("black", spec.Bundle.Strands)], spec.Layup.Tail),
            Servings = [],
            Separators = [],
            Marks = [],
        };
        var typed = ScannerKeyboard.Layouts[0].Type(TagWriter.Write(spec));
        Assert.Equal(typed, ScannerKeyboard.Layouts[1].Type(ScannerKeyboard.Layouts[0].Undo(typed)));
        Assert.Contains("keyboard is set to German or Spanish: set", Assert.IsType<TagReading.Damaged>(TagReader.Read(typed)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_TypedOnAnotherKeyboardAndDamaged_StillSaysKeyboard() => Assert.StartsWith(
        "the scanner types as if on a US keyboard, and this computer's keyboard is another one:",
        Assert.IsType<TagReading.Damaged>(TagReader.Read("TE1(D")).Message,
        StringComparison.Ordinal);

    [Fact]
    public void Read_SmallLetters_IsReadAsMeant()
    {
        var spec = SpecFixture.Good();
        Assert.Equal(spec, Assert.IsType<TagReading.Piece>(TagReader.Read(TagWriter.Write(spec).ToLowerInvariant())).Spec);
    }

    [Fact]
    public void Read_SmallLettersOfADamagedTag_SaysCapsLock() => Assert.Equal(
        "the tag's letters arrived in lower case: turn Caps Lock off and scan it again",
        Assert.IsType<TagReading.Damaged>(TagReader.Read(TagWriter.Write(SpecFixture.Good()).ToLowerInvariant().Replace("*l", "*m", StringComparison.Ordinal))).Message);

    [Theory]
    [InlineData("*L60.25/", "*L60.2X/", "the tag makes no sense at \"60.2X\": expected a length")]
    [InlineData("*STRING*", "*STR+ING*", "the tag makes no sense at \"STR+ING\": expected a piece")]
    [InlineData("*STRING*", "*STR%FFING*", "the tag makes no sense at \"STR%FFING\": expected a piece")]
    [InlineData("*L60.25/", "*L100001/", "the tag makes no sense at \"100001\": expected a length")]
    [InlineData("*L60.25/", "*L.25/", "the tag makes no sense: its finished length is none that a piece can have")]
    [InlineData("/.0625/5*C", "/0/5*C", "the tag makes no sense: its step of the tape is none that a piece can have")]
    [InlineData("*STRING*", "*STR%1BING*", "the tag makes no sense at \"STR%1BING\": expected a piece")]
    [InlineData("*STRING*", "*STR%E2%80%AEING*", "the tag makes no sense at \"STR%E2%80%AEING\": expected a piece")] // U+202E turns the direction
    [InlineData("*W70*", "*W0*", "the tag makes no sense: its draw weight is none that a piece can have")]
    [InlineData("*O.75", "*O61", "the tag makes no sense: its end loop is none that a piece can have")]
    [InlineData("*O.75", "*O.75*K61/7", "the tag makes no sense: its split of the yoke is none that a piece can have")]
    [InlineData("*O.75", "*O.75*K10/10001", "the tag makes no sense: its number of turns is none that a piece can have")]
    [InlineData("/S*J", "/X*J", "the tag makes no sense at \"X\": expected a hand")]
    [InlineData("/S*J", "/SX*J", "the tag makes no sense at \"X\": expected a hand")]
    [InlineData("98*X", "98/G*X", "the tag makes no sense at \"G\": expected N")]
    [InlineData("*O.75", "*O.75//4", "the tag makes no sense at \"4\": expected a thread of field Y")]
    [InlineData("*O.75", "*O.75//1/1", "the tag makes no sense at \"1\": expected nothing more")]
    [InlineData("*O.75", "*K10/7/1", "the tag makes no sense at \"1\": expected nothing more")]
    [InlineData("*O.75", "*K10/X", "the tag makes no sense at \"X\": expected turns")]
    [InlineData("*O.75", "*R", "the tag makes no sense at \"R\": expected nothing more")]
    [InlineData("/R/", "/Q/", "the tag makes no sense at \"Q\": expected a model")]
    [InlineData("*CBLACK", "*DBLACK", "the tag makes no sense at \"DBLACK/12+RED/12\": expected the field C")]
    [InlineData("20260314", "20261314", "the tag makes no sense at \"20261314\": expected a date")]
    [InlineData("PPEEP/18", "PPEEP/18/X", "the tag makes no sense at \"X\": expected nothing more")]
    [InlineData("/1+C", "/3+C", "the tag makes no sense at \"3\": expected a thread of field Y")]
    [InlineData("/1+C", "/0+C", "the tag makes no sense at \"0\": expected a thread of field Y")]
    [InlineData("/1+C", "/+C", "the tag makes no sense at \"\": expected a thread of field Y")]
    public void Read_RightCheckOverNonsense_NamesThePart(string old, string replacement, string message)
    {
        var body = TagWriter.Write(SpecFixture.Good())[10..^10].Replace(old, replacement, StringComparison.Ordinal);
        var text = $"{body}*E{Crc32.HashToUInt32(Encoding.ASCII.GetBytes(body)):X8}";
        Assert.Equal(message, Assert.IsType<TagReading.Damaged>(TagReader.Read(text)).Message);
    }

    [Fact]
    public void Read_WrongCheck_SaysSo() => Assert.Equal(
        "the tag is damaged or was mistyped: its check does not match; scan it again, or scan the card",
        Assert.IsType<TagReading.Damaged>(TagReader.Read(TagWriter.Write(SpecFixture.Good())[..^1])).Message);

    /// <summary>ISO/IEC 18004:2015, table 7: a symbol 10-M holds 311 alphanumeric characters, 11-M 366.</summary>
    [Fact]
    public void Write_EveryDemoPiece_FitsVersion10AtLevelMOrOneVersionMore()
    {
        var file = Tagend.Orders.OrderReader.Read(
            Path.Combine(TestFiles.DemoOrders, "demo.csv"), Tagend.Measures.LengthUnit.Inch, SpecFixture.Catalog.Shop.Columns);
        var pieces = SetBuilder.Build(file, new SpecBuilder(SpecFixture.Catalog, Tagend.Measures.LengthUnit.Inch, SpecFixture.Date)).Pieces;
        Assert.Equal(18, pieces.Count);
        Assert.All(pieces, p => Assert.InRange(TagWriter.Write(p.Spec!).Length, 1, 366));
        Assert.InRange(pieces.Count(p => TagWriter.Write(p.Spec!).Length > 311), 0, 1);
    }

    [Fact]
    public void Read_Bag_BringsBackEveryPiece()
    {
        var set = new BuildSet("D-101", [Piece("string"), Piece("buss")]);
        var reading = Assert.IsType<TagReading.Bag>(TagReader.Read(TagWriter.Write(set)));
        Assert.Equal(set.Builds.Select(b => b.Spec), reading.Specs);
    }

    [Fact]
    public void Read_BagWithAPieceMissing_IsDamaged()
    {
        var text = TagWriter.Write(new BuildSet("D-101", [Piece("string"), Piece("buss")]));
        Assert.Equal(
            "the tag of the bag does not carry the pieces it lists: scan it again",
            Assert.IsType<TagReading.Damaged>(TagReader.Read(text[..text.LastIndexOf('$')])).Message);
    }

    [Fact]
    public void Read_BagContents_ListsPiecesAndRevisions()
    {
        var text = TagWriter.WriteContents(new BuildSet("D-101", [Piece("string"), Piece("buss")]));
        var reading = Assert.IsType<TagReading.Bag>(TagReader.Read(text));
        Assert.Equal([new BagEntry("string", 1), new BagEntry("buss", 1)], reading.Contents);
        Assert.Empty(reading.Specs);
    }

    private static Build Piece(string name) => new(SpecFixture.Good() with { Piece = name }, Tagend.Orders.OrderSlip.Blank);
}
