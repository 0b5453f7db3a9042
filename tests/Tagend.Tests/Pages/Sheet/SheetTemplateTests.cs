using Tagend.Output;
using Tagend.Pages.Sheet;
using Tagend.Problems;
using Xunit;

namespace Tagend.Tests.Pages;

/// <summary>What a shop can get wrong in a sheet's text.</summary>
public sealed class SheetTemplateTests : IDisposable
{
    private const string Fields =
        "accessories, bow, count, customer, date, draw_weight, due, first_shots, has_peep, measuring_load, order, page, pages, pieces, pin, "
        + "returns, shop_name, shop_phone, shop_web, unit, warranty, piece.amount_per_half_turn, piece.amount_per_three_turns, "
        + "piece.amount_per_turn, piece.colors, piece.end_a, piece.end_b, piece.finished_length, piece.kind, "
        + "piece.material, piece.name, piece.nock_point, piece.peep, piece.strands, piece.tolerance";

    private const string Unusable = "a sheet has headings of #, ## and ######, paragraphs, lists, tables, caution panels, ![](drawing), ::: columns and ::: boxes, nothing else";

    private const string TooManyTurns = "the loops go around more than 1000 times: loop over pieces only";

    private const string TooLong = "the text gets longer than 20000 characters, and a sheet has two pages: shorten what is repeated here";

    private readonly string _folder = Directory.CreateTempSubdirectory("tagend-sheets-").FullName;

    public SheetTemplateTests()
    {
        Directory.CreateDirectory(Path.Combine(_folder, "sheets"));
        foreach (var file in Directory.GetFiles(Path.Combine(TestFiles.Templates, "sheets")))
        {
            File.Copy(file, Path.Combine(_folder, "sheets", Path.GetFileName(file)));
        }

        Directory.CreateDirectory(Path.Combine(_folder, "words"));
        foreach (var file in Directory.GetFiles(Path.Combine(TestFiles.Templates, "words")))
        {
            File.Copy(file, Path.Combine(_folder, "words", Path.GetFileName(file)));
        }
    }

    private string Compound => Path.Combine(_folder, "sheets", "compound.en.md");

    [Fact]
    public void Check_ShippedSheets_HaveNoProblem() => Assert.Empty(CustomerSheet.Check(_folder));

    [Theory]
    [InlineData("# Hi\n\n{{ shop_nme }}\n", 3, "shop_nme")]
    [InlineData("# Hi\n{% for p in pieces %}{{ p.lenght }}{% endfor %}", 2, "p.lenght")]
    [InlineData("{% if count > 9 %}\n{{ never_taken }}\n{% endif %}", 2, "never_taken")]
    [InlineData("{{ order | upcse }}", 1, "upcse")]
    [InlineData("{{ shop.name }}", 1, "shop.name")]
    public void Check_UnknownField_NamesItAndThoseThereAre(string text, int line, string field)
    {
        File.WriteAllText(Compound, text);

        Assert.Equal(
            [$"{Compound}:{line} \"{field}\": no such field; a sheet has {Fields}"],
            CustomerSheet.Check(_folder).Select(p => p.ToString()));
    }

    [Fact]
    public void Check_SeveralMistakes_AreAllReported()
    {
        File.WriteAllText(Compound, "{{ one }}\n{{ order }}\n{{ two }}\n");

        Assert.Equal([(1, "one"), (3, "two")], CustomerSheet.Check(_folder).Select(p => (p.At.Line, p.Text)));
    }

    [Theory]
    [InlineData("a\n\n{% if count > 1 %}\nb", 3)]
    [InlineData("a\n{% endif %}", 2)]
    [InlineData("a\nb {{ order\n\n", 2)]
    [InlineData("{% for piece of pieces %}{% endfor %}", 1)]
    public void Check_BrokenLiquid_NamesTheLine(string text, int line)
    {
        File.WriteAllText(Compound, text);

        var problem = CustomerSheet.Check(_folder)[0];

        Assert.Equal(new Place(Compound, line), problem.At);
        Assert.StartsWith("broken Liquid: ", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_MissingSheet_SaysSo()
    {
        File.Delete(Compound);

        var broken = Assert.Throws<TagendException>(() => CustomerSheet.Check(_folder));

        Assert.Equal($"cannot read {Compound}: it is not there; check that you may read it, or put back what was shipped", broken.Message);
    }

    [Theory]
    [InlineData("# Hi\n\n```\ncode\n```\n", 3, "```", Unusable)]
    [InlineData("# Hi\n\n### Third\n", 3, "### Third", Unusable)]
    [InlineData("a ![logo](logo.png)\n", 1, "a ![logo](logo.png)", "text has words and **bold**, nothing else")]
    [InlineData(
        "a\n\n> **DANGR** Mind your thumbs.\n",
        3,
        "> **DANGR** Mind your thumbs.",
        "a caution panel is one paragraph that begins with **DANGER**, **WARNING**, **CAUTION** or **NOTICE**")]
    [InlineData("1. a\n\n   | b |\n   |---|\n   | c |\n", 3, "| b |", "a list item has text and caution panels, nothing else")]
    public void Of_TextOutsideTheDialect_IsRefusedWithItsLine(string text, int line, string offending, string message)
    {
        File.WriteAllText(Compound, text);

        var sheet = SheetFixture.Sheet(SheetFixture.Compound(), catalog: SheetFixture.Catalog with { Folder = _folder });

        Assert.Empty(sheet.Pages);
        Assert.Equal([new Problem(new Place(Compound, line), offending, message)], sheet.Problems);
    }

    [Fact]
    public void Of_BrokenTemplate_GivesItsProblems()
    {
        File.WriteAllText(Compound, "{{ nothing }}");

        var sheet = SheetFixture.Sheet(SheetFixture.Compound(), catalog: SheetFixture.Catalog with { Folder = _folder });

        Assert.Empty(sheet.Pages);
        Assert.Equal(["nothing"], sheet.Problems.Select(p => p.Text));
    }

    [Fact]
    public void Of_FilterThatCannotWork_SaysWhere()
    {
        File.WriteAllText(Compound, "a\n\n{{ pieces | plus: 1 }}\n");

        var broken = Assert.Throws<TagendException>(
            () => SheetFixture.Sheet(SheetFixture.Compound(), catalog: SheetFixture.Catalog with { Folder = _folder }));

        Assert.StartsWith($"{Compound}:3: ", broken.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{% for a in (1..100000000) %}{% endfor %}", TooManyTurns)]
    [InlineData("{% for a in (1..900) %}{% for b in (1..900) %}{% endfor %}{% endfor %}", TooManyTurns)]
    [InlineData("{% for a in (1..900) %}{{ order | append: 'a text that is repeated until it is far too long' }}{% endfor %}", TooLong)]
    [InlineData("{% assign s = 'ab' %}{% for a in (1..40) %}{% assign s = s | append: s %}{% endfor %}{{ s }}", TooLong)]
    public void Of_TemplateWithoutEnd_SaysWhere(string text, string sentence)
    {
        File.WriteAllText(Compound, $"# Hi\n{text}\n");

        var broken = Assert.Throws<TagendException>(
            () => SheetFixture.Sheet(SheetFixture.Compound(), catalog: SheetFixture.Catalog with { Folder = _folder }));

        Assert.Equal($"{Compound}:2: {sentence}", broken.Message);
    }

    [Fact]
    public void Check_TemplateThatIncludesItself_SaysWhatToDo()
    {
        File.WriteAllText(Compound, "# Hi\n{% include 'compound.en.md' %}\n");

        Assert.Equal(
            [$"{Compound}:2 \"include\": a sheet is one file: put the text here in its place"],
            CustomerSheet.Check(_folder).Select(p => p.ToString()));
    }

    [Fact]
    public void Check_CapturedText_IsAField()
    {
        File.WriteAllText(Compound, "{% capture whose %}{{ customer }}{% endcapture %}{{ whose }}");

        Assert.Empty(CustomerSheet.Check(_folder));
    }

    [Fact]
    public void Of_Columns_StandSideBySideEachUnderItsHeading()
    {
        File.WriteAllText(Compound, "# Hi\n\n::: columns\n## One\n\nfirst\n\n## Two\n\n- second\n:::\n\nbelow\n");

        var pages = SheetFixture.Pages(SheetFixture.Compound(), catalog: SheetFixture.Catalog with { Folder = _folder });

        var at = pages[0].Inks.OfType<TextInk>().GroupBy(t => t.Text).ToDictionary(t => t.Key, t => t.First());
        Assert.Equal(at["One"].Baseline, at["Two"].Baseline);
        Assert.Equal(at["first"].Baseline, at["second"].Baseline, 0.1f);
        Assert.Equal(at["One"].X, at["first"].X);
        Assert.True(at["Two"].X > pages[0].Width / 2);
        Assert.True(at["below"].Baseline > at["first"].Baseline);
    }

    [Fact]
    public void Of_List_GoesOnAfterAPanelAndKeepsItOnTheStepsPage()
    {
        File.WriteAllText(Compound, "# Hi\n\n## One\n\n1. first\n\n> **NOTICE** Mind this.\n\n2. second\n");

        var pages = SheetFixture.Pages(SheetFixture.Compound(), catalog: SheetFixture.Catalog with { Folder = _folder });

        Assert.Equal(
            ["1.", "first", "NOTICE", "2.", "second"],
            Assert.Single(pages).Inks.OfType<TextInk>().Select(t => t.Text.Trim()).Where(t => t is "1." or "2." or "first" or "second" or "NOTICE"));
    }

    [Fact]
    public void Of_Boxes_StandSideBySideWithASquareEach()
    {
        File.WriteAllText(Compound, "# Hi\n\n::: boxes\n- [ ] loop\n- [ ] silencers\n:::\n\n| [ ] | a |\n|---|---|\n| [ ] | b |\n| [ ] | c |\n");

        var inks = Assert.Single(SheetFixture.Pages(SheetFixture.Compound(), catalog: SheetFixture.Catalog with { Folder = _folder })).Inks;

        var at = inks.OfType<TextInk>().GroupBy(t => t.Text).ToDictionary(t => t.Key, t => t.First());
        Assert.Equal(at["loop"].Baseline, at["silencers"].Baseline);
        Assert.DoesNotContain("[ ]", at.Keys);
        Assert.Equal(4, inks.OfType<BoxInk>().Count(b => Math.Abs(b.Width - b.Height) < 0.01f && b.Fill is null or 255 && b.Width < 12));
    }

    [Fact]
    public void Readme_OfSheets_ListsEveryField()
    {
        var readme = File.ReadAllText(Path.Combine(_folder, "sheets", "README.md"));

        Assert.All(Fields.Split(", ").Except(["pieces"]), f => Assert.Contains($"`{f}`", readme, StringComparison.Ordinal));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
