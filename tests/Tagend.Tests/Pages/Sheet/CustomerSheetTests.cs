using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Output;
using Tagend.Pages.Sheet;
using Tagend.Specs;
using Tagend.Tests.Output;
using Tagend.Tests.Specs;
using Xunit;

namespace Tagend.Tests.Pages;

public sealed class CustomerSheetTests
{
    private static readonly Dictionary<string, Paper> Papers = new() { ["letter"] = Paper.Letter, ["a4"] = Paper.A4 };

    private static readonly Dictionary<string, Func<BuildSet>> Sets = new()
    {
        ["compound, 1 piece"] = () => SheetFixture.Compound(1),
        ["compound, 2 pieces"] = () => SheetFixture.Compound(2),
        ["compound, 3 pieces"] = () => SheetFixture.Compound(3),
        ["compound, 4 pieces"] = () => SheetFixture.Compound(4),
        ["compound, 5 pieces"] = () => SheetFixture.Compound(5),
        ["compound, 5 pieces in mm"] = () => SheetFixture.Compound(5, LengthUnit.Millimeter),
        ["recurve"] = SheetFixture.Recurve,
        ["compound, 3 pieces packed with more"] = () => SheetFixture.With(SheetFixture.Compound(), slip => slip with { Accessories = ["loop", "peep 3/16 in, tied in", "silencers A 12 in", "silencers B 12 in", "stop"] }),
        ["crossbow"] = SheetFixture.Crossbow,
        ["crossbow, 3 pieces"] = SheetFixture.CrossbowWithCables,
    };

    public static MatrixTheoryData<string, string, string> SetsOnPapers => new(Sets.Keys, Papers.Keys, ["en", "es", "fr", "de"]);

    [Theory]
    [MemberData(nameof(SetsOnPapers))]
    public void Of_AnySet_TakesASheetAndItsBackWithinTheMargins(string set, string paper, string language)
    {
        var pages = SheetFixture.Pages(Sets[set](), Papers[paper], language: language);

        Assert.InRange(pages.Count, 1, 2);
        Assert.All(pages, page =>
        {
            Assert.Equal(Points.Of(Papers[paper].Width), page.Width);
            Assert.Equal(Points.Of(Papers[paper].Height), page.Height);
            Assert.All(page.Inks.OfType<TextInk>(), t =>
            {
                Assert.InRange(t.X, 36, page.Width - 36 - SheetFixture.WidthOf(t));
                Assert.InRange(t.Baseline, 36, page.Height - 30);
            });
        });
    }

    [Theory]
    [MemberData(nameof(SetsOnPapers))]
    public void Of_AnySet_DrawsNoLineOfTextOverAnother(string set, string paper, string language)
    {
        Assert.All(SheetFixture.Pages(Sets[set](), Papers[paper], language: language), page =>
        {
            var boxes = page.Inks.OfType<TextInk>().Where(t => t.Text.Trim().Length > 0).Select(SheetFixture.BoxOf).ToList();
            for (var i = 0; i < boxes.Count; i++)
            {
                Assert.DoesNotContain(boxes.Skip(i + 1), b => b.IntersectsWith(boxes[i]));
            }
        });
    }

    [Theory]
    [MemberData(nameof(SetsOnPapers))]
    public void Of_AnySet_HasNoTypeTooSmallToRead(string set, string paper, string language)
    {
        Assert.All(SheetFixture.Pages(Sets[set](), Papers[paper], language: language), page =>
        {
            var texts = page.Inks.OfType<TextInk>().ToList();
            var foot = texts.Max(t => t.Baseline);
            Assert.All(texts, t => Assert.True(t.Style.Size >= 7));
            Assert.All(
                texts.Where(t => t.Style.Weight != Weight.SemiBold && t.Baseline < foot),
                t => Assert.True(t.Style.Size >= 8.5f, t.Text));
        });
    }

    /// <summary>Running text: what is not in a table, a drawing, a form or the foot. A step's text stands farther right than any of them begins.</summary>
    [Theory]
    [MemberData(nameof(SetsOnPapers))]
    public void Of_AnySet_HasItsSentencesInNineAndAHalfPoints(string set, string paper, string language)
    {
        var texts = SheetFixture.Pages(Sets[set](), Papers[paper], language: language).SelectMany(p => p.Inks.OfType<TextInk>()).ToList();
        var sentences = texts.Where(t => t.Text.Length > 60 && t.Style.Weight == Weight.Regular).ToList();

        Assert.True(sentences.Count > 20);
        Assert.All(
            sentences.Where(t => !t.Text.Contains("1 : ", StringComparison.Ordinal)), t => Assert.True(t.Style.Size >= 9.5f, t.Text));
    }

    [Fact]
    public void Sheet_OfAMarkTheFontCannotWrite_IsAProblemAndNoPage()
    {
        var spec = SpecFixture.Good();
        var sheet = SheetFixture.Sheet(SheetFixture.Set([spec with { Separators = [spec.Separators[0] with { Name = "目" }] }]));
        Assert.Empty(sheet.Pages);
        Assert.Contains("the font has no glyph for '目' (U+76EE)", Assert.Single(sheet.Problems).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_Set_NamesShopOrderAndEveryPiece()
    {
        var text = SheetFixture.TextOf(SheetFixture.Pages(SheetFixture.Compound(3)));

        Assert.All(
            [
                "Demo String Bench", "555 0100", "strings.example", "D-101", "Jo Sample", "compound bow, hybrid cam, 70 lb",
                "70 lb", "March 14, 2026", "60 1/4 in", "± 1/16 in", "24: black 12, red 12", "HMPE, 0.0145 in strand",
                "cable 2", "36 1/8 in", "cable 3", "37 1/8 in", "over 1/4 in pins, under a load of 100 lbf",
            ],
            expected => Assert.Contains(expected, text, StringComparison.Ordinal));
    }

    [Fact]
    public void Of_SetInMillimeters_GivesEveryLengthInThem()
    {
        var text = SheetFixture.TextOf(SheetFixture.Pages(SheetFixture.Compound(2, LengthUnit.Millimeter)));

        Assert.All(
            ["1530.4 mm", "± 1.6 mm", "70 lb (311 N)", "over 6.4 mm pins, under a load of 445 N"],
            expected => Assert.Contains(expected, text, StringComparison.Ordinal));
    }

    [Fact]
    public void Of_Set_NumbersItsPagesAtTheFoot()
    {
        var pages = SheetFixture.Pages(SheetFixture.Compound(3));

        Assert.Equal(
            ["Order D-101 · page 1 of 2", "Order D-101 · page 2 of 2"],
            pages.Select(p => p.Inks.OfType<TextInk>().MaxBy(t => t.Baseline + (t.X < 100 ? 0.1f : 0))!.Text));
    }

    [Theory]
    [InlineData(1, "Fitting your new string")]
    [InlineData(2, "Fitting your new string set")]
    public void Of_Pieces_TitleSaysWhetherItIsASet(int pieces, string title)
    {
        var text = SheetFixture.Pages(SheetFixture.Compound(pieces))[0].Inks.OfType<TextInk>().MaxBy(t => t.Style.Size)!.Text;

        Assert.StartsWith(title, text, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_SetWithoutPeep_DoesNotSpeakOfOne()
    {
        var set = SheetFixture.Compound(3);
        var cables = set with { Builds = set.Builds.Skip(1).ToValueList() };

        Assert.DoesNotContain("peep", SheetFixture.TextOf(SheetFixture.Pages(cables)), StringComparison.OrdinalIgnoreCase);
        Assert.Contains("peep", SheetFixture.TextOf(SheetFixture.Pages(set)), StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData("en", "how high the nocking point sits,", "how high the peep and the nocking point sit,")]
    [InlineData("de", "wie hoch der Nockpunkt sitzt,", "wie hoch Peep und Nockpunkt sitzen,")]
    [InlineData("fr", "à quelle hauteur est le point d'encochage,", "à quelle hauteur sont la visette et le point d'encochage,")]
    [InlineData("es", "a qué altura está el punto de encoque,", "a qué altura están el peep y el punto de encoque,")]
    public void Of_SetWithoutPeep_HasSentencesThatAgree(string language, string without, string with)
    {
        var set = SheetFixture.Compound(3);
        var cables = set with { Builds = set.Builds.Skip(1).ToValueList() };

        Assert.Contains(without, SheetFixture.TextOf(SheetFixture.Pages(cables, language: language)), StringComparison.Ordinal);
        Assert.Contains(with, SheetFixture.TextOf(SheetFixture.Pages(set, language: language)), StringComparison.Ordinal);
    }

    /// <summary>What a customer can see on a tape; the spec's own figure is within half a step of it.</summary>
    [Theory]
    [InlineData(LengthUnit.Inch, 0.0250, "1/64 in")] // half a turn: 0.0125 in, nearest 1/64 in
    [InlineData(LengthUnit.Inch, 0.0625, "1/32 in")]
    [InlineData(LengthUnit.Inch, 0.0157, "1/64 in")] // just over half of 1/64 in
    [InlineData(LengthUnit.Inch, 0.0155, "< 1/64 in")] // just under it
    [InlineData(LengthUnit.Millimeter, 0.0250, "0.3 mm")] // 0.3175 mm
    [InlineData(LengthUnit.Millimeter, 0.0035, "< 0.1 mm")] // 0.044 mm
    public void HalfATurn_OnASheet_IsAFractionThatCanBeSeen(LengthUnit unit, double inchesATurn, string seen) =>
        Assert.Equal(seen, new SheetWriter(SheetFixture.Language("en")).Seen(Length.FromInches(inchesATurn) / 2, unit).Replace('\u00A0', ' '));

    [Fact]
    public void HalfATurn_OfEachPiece_IsInTheTable()
    {
        var set = SheetFixture.Compound(3);
        var write = new SheetWriter(SheetFixture.Language("en"));
        var texts = SheetFixture.Pages(set)[0].Inks.OfType<TextInk>().Select(t => t.Text).ToList();

        Assert.Equal(3, texts.Count(t => t == write.Seen(set.Builds[0].Spec.TurnSensitivity / 2, LengthUnit.Inch).Replace('\u00A0', ' ')));
    }

    [Fact]
    public void Order_ThatNamesLanguageAndUnits_HasItsSheetInThem()
    {
        var set = SheetFixture.With(SheetFixture.Compound(2), slip => slip with { Language = "de", Units = LengthUnit.Millimeter });
        var text = SheetFixture.TextOf(SheetFixture.Pages(set));

        Assert.All(["Ihre Sicherheit", "1530,4 mm", "± 1,6 mm", "445 N"], t => Assert.Contains(t, text, StringComparison.Ordinal));
        Assert.DoesNotContain("/4 Zoll", text, StringComparison.Ordinal);
        Assert.Contains("Votre sécurité", SheetFixture.TextOf(SheetFixture.Pages(set, language: "fr")), StringComparison.Ordinal);
        Assert.Equal("de", new CustomerSheet(SheetFixture.Catalog, TestFonts.Shipped).LanguageTag([set]));
        Assert.Equal("en-US", new CustomerSheet(SheetFixture.Catalog, TestFonts.Shipped).LanguageTag([set, SheetFixture.Recurve()]));
    }

    [Fact]
    public void Accessories_OfAnyPiece_AreToBeTickedOnce()
    {
        var set = SheetFixture.With(SheetFixture.Compound(2), slip => slip with { Accessories = ["loop", "silencers A 12 in"] });
        var bare = SheetFixture.Pages(SheetFixture.Compound(2));
        var packed = SheetFixture.Pages(set);

        Assert.Single(packed[0].Inks.OfType<TextInk>(), t => t.Text == "silencers A 12 in");
        Assert.Equal(Squares(bare) + 2, Squares(packed));
        Assert.Equal(2 + 3, Squares(bare)); // a piece each, and what is checked before every session

        static int Squares(IEnumerable<Page> pages) => pages.SelectMany(p => p.Inks.OfType<BoxInk>())
            .Count(b => Math.Abs(b.Width - b.Height) < 0.01f && b.Fill is null && b.Radius == 0);
    }

    [Fact]
    public void Warranty_OfAShop_IsAtTheEndOfItsSheets()
    {
        var catalog = SheetFixture.Catalog with
        {
            Words = SheetFixture.Catalog.Words with { Warranty = "Two years on strands | servings.", Returns = "Send it to our bench." },
        };
        var text = SheetFixture.TextOf(SheetFixture.Pages(SheetFixture.Compound(2), catalog: catalog));

        Assert.Contains("Two years on strands | servings. Send it to our bench.", text, StringComparison.Ordinal);
    }

    /// <summary>The last line of a paragraph has two words at least, or one that is long.</summary>
    [Theory]
    [MemberData(nameof(SetsOnPapers))]
    public void Of_AnySet_LeavesNoShortWordAloneOnALine(string set, string paper, string language)
    {
        foreach (var page in SheetFixture.Pages(Sets[set](), Papers[paper], language: language))
        {
            var texts = page.Inks.OfType<TextInk>().ToList();
            var lines = texts.Where(t => t.Style.Size >= 9.5f && t.Style.Weight == Weight.Regular).ToList();
            Assert.DoesNotContain(
                lines.Where(t => !t.Text.Trim().Contains(' ') && t.Text.Trim().Length is > 1 and < 15),
                t => lines.Exists(above => Math.Abs(above.X - t.X) < 0.01f && t.Baseline - above.Baseline is > 0 and < 14
                    && SheetFixture.WidthOf(above) > 150)
                    && !texts.Exists(beside => Math.Abs(beside.Baseline - t.Baseline) < 0.01f && beside.X > t.X && beside.X - t.X < 100));
        }
    }

    [Theory]
    [InlineData("recurve-string", "bow stringer", "press")]
    [InlineData("crossbow-string", "crossbow", "compound")]
    public void Piece_OfNoKindBesideOneOfAnother_HasThatOnesSheet(string kind, string said, string other)
    {
        var known = SheetFixture.Single(kind, kind == "recurve-string" ? "65 in" : "36 in", "60 lbf");
        var text = SheetFixture.TextOf(SheetFixture.Pages(SheetFixture.Set([known, known with { Piece = "spare", Kind = "plain" }])));

        Assert.Contains(said, text, StringComparison.Ordinal);
        Assert.DoesNotContain($"A {other}", text, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Piece_OfNoKindAlone_HasNoSheetOfAnyBow()
    {
        var sheet = SheetFixture.Sheet(SheetFixture.Set([SpecFixture.Good() with { Kind = "plain" }]));

        Assert.Empty(sheet.Pages);
        Assert.Equal(
            "customer sheet D-101 \"string\": nothing says what bow it is for, and a sheet for another kind of bow could hurt: "
            + "give the piece a kind in the order",
            Assert.Single(sheet.Problems).ToString());
    }

    [Fact]
    public void Of_ShopWithoutName_LeavesRoomForAStamp()
    {
        var nameless = SheetFixture.Catalog with { Shop = SheetFixture.Catalog.Shop with { Name = "", Phone = "", Web = "" } };

        var pages = SheetFixture.Pages(SheetFixture.Compound(3), catalog: nameless);

        Assert.DoesNotContain("Call us", SheetFixture.TextOf(pages), StringComparison.Ordinal);
        Assert.True(pages[0].Inks.OfType<TextInk>().Min(t => t.Baseline) > 80);
    }

    [Theory]
    [InlineData("Jo | *Sample* <b>_x_</b> [1](2) `y` \\ # & {{ order }}")]
    [InlineData("1. Jo")]
    public void Of_CustomerThatLooksLikeMarkup_IsPrintedAsItIs(string customer)
    {
        var set = SheetFixture.Compound(2);
        var named = set with { Builds = set.Builds.Select(b => b with { Slip = new OrderSlip(customer, "", "", "") }).ToValueList() };

        Assert.Contains(customer, SheetFixture.TextOf(SheetFixture.Pages(named)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("弓 Jo", "'弓' (U+5F13)")]
    [InlineData("أحمد", "'أ' (U+0623)")]
    [InlineData("דני", "'ד' (U+05D3)")]
    [InlineData("Zoe\u0308", "'\u0308' (U+0308)")] // letter and accent apart
    public void Of_CharacterTheFontLacks_IsAProblemAndNoBox(string customer, string missing)
    {
        var sheet = SheetFixture.Sheet(Named(customer));

        Assert.Empty(sheet.Pages);
        Assert.Equal(
            $"customer sheet D-101: \"{customer}\": the font has no glyph for {missing}; write it another way; on letter",
            Assert.Single(sheet.Problems).ToString());
    }

    [Fact]
    public void Of_AccentedName_IsPrinted() =>
        Assert.Contains("Zoë Łukasiewicz Ñandú", SheetFixture.TextOf(SheetFixture.Pages(Named("Zoë Łukasiewicz Ñandú"))), StringComparison.Ordinal);

    [Fact]
    public void Of_NameOfOneEndlessWord_BreaksWithinItsColumn()
    {
        var customer = string.Concat(Enumerable.Repeat("Donaudampfschiffahrt", 8));
        var pages = SheetFixture.Pages(Named(customer));

        Assert.Contains(customer, string.Concat(pages[0].Inks.OfType<TextInk>().Select(t => t.Text)), StringComparison.Ordinal);
        Assert.All(pages[0].Inks.OfType<TextInk>(), t => Assert.True(t.X + SheetFixture.WidthOf(t) < pages[0].Width - 37));
    }

    [Fact]
    public void Of_TextThatFitsNowhere_IsAProblemWithItsSizes()
    {
        var piece = new string('w', 32);
        var set = SheetFixture.Compound(1);
        var named = set with { Builds = set.Builds.Select(b => b with { Spec = b.Spec with { Piece = string.Concat(piece, piece, piece) } }).ToValueList() };

        var sheet = SheetFixture.Sheet(named);

        Assert.Empty(sheet.Pages);
        Assert.Equal(
            "customer sheet D-101: the names of pieces and ends leave no room for a drawing within 536 pt; on letter",
            Assert.Single(sheet.Problems).ToString());
    }

    [Fact]
    public void Drawing_OfAllPieces_IsToOneScale()
    {
        var set = SheetFixture.Compound(3);
        var bars = SheetFixture.Pages(set)[0].Inks.OfType<BoxInk>().Where(b => b.Fill == 0 && Math.Abs(b.Height - 1.6f) < 0.01f).ToList();
        var scales = bars.Zip(set.Builds, (bar, build) => Points.Of(build.Spec.FinishedLength) / (bar.Width + 14)).ToList();

        Assert.Equal(3, bars.Count);
        Assert.All(scales, s => Assert.Equal(scales[0], s, 0.01f));
        Assert.Contains($"Drawn 1 : {scales[0]:0}.", SheetFixture.TextOf(SheetFixture.Pages(set)), StringComparison.Ordinal);
    }

    [Fact]
    public void Accent_OfAShop_IsOnTitleHeadingsAndLetterheadAlone()
    {
        var blue = new InkColor(0x1a, 0x4f, 0x8c);
        var catalog = SheetFixture.Catalog with { Shop = SheetFixture.Catalog.Shop with { Accent = blue } };
        var inks = SheetFixture.Pages(SheetFixture.Compound(3), catalog: catalog).SelectMany(p => p.Inks).ToList();
        var colored = inks.OfType<TextInk>().Where(t => t.Style.Color == blue).ToList();

        Assert.Contains(colored, t => t.Text == "Your safety");
        Assert.All(colored, t => Assert.Equal(Weight.Bold, t.Style.Weight));
        Assert.DoesNotContain(colored, t => t.Text is "DANGER" or "WARNING" or "CAUTION");
        Assert.Single(inks.OfType<LineInk>(), l => l.Color == blue);
    }

    private static BuildSet Named(string customer)
    {
        var set = SheetFixture.Compound(1);
        return set with { Builds = set.Builds.Select(b => b with { Slip = new OrderSlip(customer, "", "", "") }).ToValueList() };
    }

    [Fact]
    public void Of_PiecesForTwoKindsOfBow_GivesASheetForEach()
    {
        var mixed = SheetFixture.Set(
            SheetFixture.Recurve().Builds.Concat(SheetFixture.Crossbow().Builds).Select(b => b.Spec));

        var text = SheetFixture.TextOf(SheetFixture.Pages(mixed));

        Assert.Contains("bow stringer", text, StringComparison.Ordinal);
        Assert.Contains("crossbow is cocked", text, StringComparison.Ordinal);
    }
}
