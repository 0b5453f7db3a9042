using CsCheck;
using Tagend.Blocks;
using Tagend.Output;
using Xunit;

namespace Tagend.Tests.Blocks;

public sealed class ParagraphTests
{
    public static TheoryData<string, string, string[]> Wraps => new()
    {
        { "one two", "one two", ["one two"] },
        { "one two", "one tw", ["one", "two"] },
        { "one two three", "one two", ["one two", "three"] },
        { "one\ntwo", "one two", ["one", "two"] },
        { "one\n\ntwo", "one two", ["one", "two"] },
        { "in 60\u00A01/4\u00A0in", "in 60 1/4", ["in", "60 1/4 in"] },
        { "buss-cable", "buss-ca", ["buss-", "cable"] },
        { "26-1/4", "26-1", ["26-1", "/4"] },
        { "polyester", "polyes", ["polyes", "ter"] },
        { "a polyester", "polyes", ["a", "polyes", "ter"] },
        { "  spaced   out  ", "spaced out", ["spaced out"] },
        { "un mot ?", "un mot", ["un", "mot ?"] },
        { "deux : trois", "deux :", ["deux :", "trois"] },
        { "un « mot »", "un « mot", ["un", "« mot »"] },
        { "cam, 70 lb", "cam, 70", ["cam,", "70 lb"] },
        { "Kabel 61 3/16 Zoll", "Kabel 61 3/16", ["Kabel", "61 3/16 Zoll"] },
        { "de 1530 mm, deux", "1530 mm, ", ["de", "1530 mm,", "deux"] },
        { "de 61 ½ in.", "de 61 ½", ["de", "61 ½ in."] },
        { "tie 3 times", "tie 3 t", ["tie 3", "times"] },
        { "11 :2", "11 :", ["11", ":2"] },
        { "", "x", [] },
    };

    [Theory]
    [MemberData(nameof(Wraps))]
    public void Lines_OfAText_BreakWhereTheyShould(string text, string widest, string[] expected) =>
        Assert.Equal(expected, Laid.Lines(new Paragraph(text, Laid.Type), Laid.Width(widest) + 0.1f));

    [Fact]
    public void Lines_OfAnyText_FitTheWidthAndLoseNothing() =>
        Gen.Select(Gen.String[Gen.Char["ab  -/1é\u00A0\n"], 0, 60], Gen.Float[12, 120]).Sample(
            (text, width) =>
            {
                var texts = Laid.Texts(Laid.Out(new Paragraph(text, Laid.Type), width));
                Assert.All(texts, t => Assert.True(t.X + Laid.Width(t.Text) <= width + 0.05f));
                Assert.Equal(Dense(text), Dense(string.Concat(texts.Select(t => t.Text))));
            },
            seed: "0000KOIPpN33",
            iter: 2000);

    [Fact]
    public void Spans_WithinAWord_StayTogetherInTheirStyles()
    {
        var bold = Laid.Type with { Weight = Weight.Bold };
        var paragraph = new Paragraph([new Span("wear ", Laid.Type), new Span("eye", bold), new Span("wear now", Laid.Type)]);
        var texts = Laid.Texts(Laid.Out(paragraph, Laid.Fonts.WidthOf("eyewear now", bold)));
        Assert.Equal(["wear", "eye", "wear now"], texts.Select(t => t.Text.Trim()));
        Assert.Equal(texts[1].Baseline, texts[2].Baseline);
        Assert.Equal(texts[0].Baseline + Laid.Type.LineHeight, texts[1].Baseline, 0.001f);
        Assert.Equal(Laid.Fonts.WidthOf("eye", bold), texts[2].X, 0.001f);
    }

    [Theory]
    [InlineData(Align.Left, 0)]
    [InlineData(Align.Center, 0.5)]
    [InlineData(Align.Right, 1)]
    public void Alignment_PutsTheLineWhereItShould(Align align, double share)
    {
        var text = Assert.Single(Laid.Texts(Laid.Out(new Paragraph("one", Laid.Type, align), 100)));
        Assert.Equal((100 - Laid.Width("one")) * share, text.X, 0.001);
    }

    [Fact]
    public void Misfit_InHeight_SaysTextSizeAndRoom() => Assert.Equal(
        ["\"one two\" takes 25 pt of height at a width of 30 pt, and has 20 pt"],
        Laid.Misfits(new Paragraph("one two", Laid.Type), 30, 20));

    [Fact]
    public void Misfit_InWidth_SaysSo() => Assert.Equal(
        ["\"one\": 2 pt are too narrow for a single character"],
        Laid.Misfits(new Paragraph("one", Laid.Type), 2, 100));

    [Fact]
    public void Misfit_ByACharacterWithoutPicture_NamesIt() => Assert.Equal(
        ["\"Mr 漢\": the font has no glyph for '漢' (U+6F22); write it another way"],
        Laid.Misfits(new Paragraph("Mr 漢", Laid.Type), 200, 100));

    [Fact]
    public void Part_LeavesTwoLinesOnEitherPage()
    {
        var paragraph = new Paragraph("a1 a2\nb1 b2 c1 c2 d1 d2", Laid.Type);
        var width = Laid.Width("d1 d2") + 1;
        var line = Laid.Type.LineHeight;
        var three = paragraph.Split(Laid.Fonts, new Room(width, line * 3));
        Assert.Equal(["a1 a2", "b1 b2"], Laid.Texts(three.Here!).Select(t => t.Text));
        Assert.Equal(["c1 c2", "d1 d2"], Laid.Lines(three.Rest!, width));
        Assert.Null(paragraph.Split(Laid.Fonts, new Room(width, line * 1.5f)).Here);
        Assert.Null(paragraph.Split(Laid.Fonts, new Room(width, line * 4)).Rest);
    }

    private static string Dense(string text) => string.Concat(text.Where(c => c is not (' ' or '\u00A0' or '\n')));
}
