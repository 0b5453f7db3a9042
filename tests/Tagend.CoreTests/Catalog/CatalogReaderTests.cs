using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Problems;
using Tagend.Tests.Specs;
using Xunit;

namespace Tagend.Tests.Catalog;

public sealed class CatalogReaderTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("tagend-").FullName;

    public CatalogReaderTests()
    {
        foreach (var file in Directory.EnumerateFiles(TestFiles.Templates, "*.toml", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(_folder, Path.GetRelativePath(TestFiles.Templates, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Read_ShippedTemplates_HaveTheStandardsValues()
    {
        var shop = SpecFixture.Catalog.Shop;
        Assert.Equal(Length.FromInches(0.25), shop.PinDiameter); // AMO Standards FP-3, 2000
        Assert.All(SpecFixture.Catalog.Plans.Values, p => Assert.Equal(Length.FromInches(1.0 / 16), p.Tolerance)); // the same
        Assert.Equal(0.75, shop.TurnsPerInch); // common practice
        Assert.Equal(Length.FromInches(0.012), shop.RuleTakeUpPerTurn); // common practice
    }

    [Theory]
    [InlineData("hmpe-0145", 0.97)]
    [InlineData("hmpe-0180", 0.97)]
    [InlineData("polyester-0180", 1.38)]
    public void Read_ShippedMaterials_HaveHandbookDensities(string material, double density) =>
        Assert.Equal(density, SpecFixture.Catalog.Materials[material].Density); // textile handbooks: HMPE 0.97, polyester 1.38 g/cm³

    [Fact]
    public void Read_BracketsWithoutEnd_AreNotFollowed()
    {
        File.WriteAllText(Path.Combine(_folder, "threads.toml"), "[t021]\ntitle = " + new string('[', 10_000));
        var problems = new List<Problem>();
        Assert.Null(CatalogReader.Read(_folder, problems));
        Assert.Contains(
            "threads.toml: brackets are nested too deeply to be intended: templates have at most one pair",
            problems.Select(p => p.ToString()));
    }

    [Fact]
    public void Read_TextOfABook_IsRefused()
    {
        var shop = Path.Combine(_folder, "shop.toml");
        File.WriteAllText(shop, File.ReadAllText(shop).Replace("web = \"\"", $"web = \"{new string('w', 1_001)}\"", StringComparison.Ordinal));
        var problems = new List<Problem>();
        Assert.Null(CatalogReader.Read(_folder, problems));
        Assert.Equal("expected a text in quotes, at most 1000 visible characters long", Assert.Single(problems).Message);
    }

    [Fact]
    public void Read_BlendOfFibres_HasTheDensityOfItsParts() => Assert.Equal(
        1 / ((0.8 / 0.97) + (0.2 / 1.40)), // textile handbooks: HMPE 0.97, LCP 1.40 g/cm³; parts by mass
        SpecFixture.Catalog.Materials["hmpe-lcp-0145"].Density!.Value,
        0.001);

    [Theory]
    [InlineData("shop.toml", "turns_per_inch = 0.75", "turns_per_inch = \"x\"", "[twisting] turns_per_inch \"x\": expected a number from 0.2 to 2")]
    [InlineData("shop.toml", "turns_per_inch = 0.75", "turns_per_inch = 50", "[twisting] turns_per_inch \"50\": expected a number from 0.2 to 2")]
    [InlineData("shop.toml", "unit = \"in\"", "unit = \"cubit\"", "unit \"cubit\": expected one of \"in\", \"mm\"")]
    [InlineData("shop.toml", "# post_diameter = \"1 in\"", "post_diameter = 1", "[jig] post_diameter \"1\": expected a length in quotes with its unit, such as \"1 1/8 in\" or \"28.6 mm\"")]
    [InlineData("shop.toml", "# post_diameter = \"1 in\"", "post_diameter = \"15 in\"", "[jig] post_diameter \"15 in\": expected 0.1 to 3 in (2.54 to 76.2 mm): no jig has thinner or thicker posts")]
    [InlineData("shop.toml", "# post_diameter = \"1 in\"", "post_diameter = \"28.6\"", "[jig] post_diameter \"28.6\": expected a unit as well, for this number could be inches or millimeters: such as \"1 1/8 in\" or \"28.6 mm\"")]
    [InlineData("shop.toml", "rule_per_turn = \"0.012 in\"", "rule_per_turn = \"0.12 in\"", "[twisting] rule_per_turn \"0.12 in\": expected 0.002 to 0.05 in (0.05 to 1.27 mm): a turn takes up about 0.012 in")]
    [InlineData("shop.toml", "shortest = \"14 in\"", "", "[jig] shortest: shortest is missing: expected a length in quotes with its unit, such as \"1 1/8 in\" or \"28.6 mm\"")]
    [InlineData("plans/compound-string.toml", "loop = \"bare\"", "loop = \"open\"", "loop \"open\": expected one of \"bare\", \"served\"")]
    [InlineData("plans/plain.toml", "thread = ", "loop = \"served\"\nthread = ", "loop: a served loop has a length: give end_loop_a and end_loop_b")]
    [InlineData("plans/split-yoke-cable.toml", "legs = \"A 10 in\"", "legs = \"B 10 in\"", "legs \"B 10 in\": expected a place from end A with its unit, such as \"A 10 in\"")]
    [InlineData("shop.toml", "[strength]", "[strenght]", "expected a section [strength]")]
    [InlineData("shop.toml", "accent = \"\"", "accent = \"#77bbff\"", "accent \"#77bbff\": its contrast with white paper is 2.03 : 1, and text needs 4.5 : 1; #4d79a5 is the same hue, dark enough")]
    [InlineData("shop.toml", "accent = \"\"", "accent = \"blue\"", "accent \"blue\": expected a color such as \"#1a4f8c\"")]
    [InlineData("shop.toml", "logo = \"\"", "logo = \"threads.toml\"", "logo \"threads.toml\": expected an SVG or a PNG picture; export a JPEG as PNG, 600 dots wide or more")]
    [InlineData("shop.toml", "language = \"en\"", "language = \"xx\"", "language \"xx\": there is no such language in words; there are de, en, es, fr")]
    [InlineData("shop.toml", "phone = \"", "fone = \"", "fone: unknown entry: did you mean phone?")]
    [InlineData("materials.toml", "stretch_minutes = 30", "stretch_minutes = 30\ndensity = 13.8", "[polyester-0180] density \"13.8\": expected a number from 0.5 to 3")]
    [InlineData("materials.toml", "strength = \"28 lbf\"", "strength = \"strong\"", "[polyester-0180] strength \"strong\": expected a force in quotes, such as \"44 lbf\" or \"196 N\"")]
    [InlineData("stocks.toml", "columns = 2\nleft = \"0.15625 in\"", "columns = 3\nleft = \"0.15625 in\"", "[letter-2x5] page: the labels reach beyond the page across: check page size, margin, pitch and count")]
    [InlineData("stocks.toml", "across = \"4.1875 in\"", "across = \"3.9 in\"", "[letter-2x5] across: the labels overlap: the pitch goes from one label's edge to the next one's, and is not less than the label's width")]
    [InlineData("stocks.toml", "page = [\"4 in\", \"2 in\"]", "page = [\"4 in\", \"390 in\"]", "[roll-4x2] page \"[\"4 in\", \"390 in\"]\": expected 0.25 to 24 in (6.35 to 609.6 mm): labels and their sheets are neither smaller nor larger")]
    [InlineData("stocks.toml", "corner = \"1/8 in\"", "corner = \"1 1/8 in\"", "[letter-2x5] corner: a corner's radius is at most half of the label's shorter side")]
    [InlineData("plans/yoke.toml", "material = \"hmpe-0145\"", "material = \"sinew\"", "material \"sinew\": there is no such material; there are hmpe-0145, hmpe-0180, hmpe-lcp-0145, polyester-0180")]
    [InlineData("plans/yoke.toml", "servings = \"A 0..2 1/2", "servings = \"A 2 1/2..0", "servings \"A 2 1/2..0; B 0..2 1/2\": item 1 \"A 2 1/2..0\": it must end farther from its end of the piece than it starts")]
    public void Read_Mistake_IsReportedWithFileLineAndRemedy(string file, string old, string replacement, string message)
    {
        var line = Replace(file, old, replacement);
        var problems = new List<Problem>();
        Assert.Null(CatalogReader.Read(_folder, problems));
        var all = problems.Select(p => p.ToString()).ToList();
        Assert.Contains(all, p => p.StartsWith($"{file}:", StringComparison.Ordinal) && p.EndsWith(message, StringComparison.Ordinal));
        if (replacement.Length > 0 && !replacement.StartsWith('['))
        {
            Assert.InRange(problems[0].At.Line, 1, line + 1);
        }
    }

    /// <summary>Whatever follows from a mistake is not a second one.</summary>
    [Theory]
    [InlineData("shop.toml", "shortest = \"14 in\"", "shortes = \"14 in\"", "[jig] shortes: unknown entry: did you mean shortest?")]
    [InlineData("shop.toml", "[jig]", "[jigg]", "expected a section [jig]")]
    [InlineData("shop.toml", "language = \"en\"", "language = en", "expected a name, = and its value: a text in straight quotes such as \"letter\", a number, or a list in brackets")]
    [InlineData("shop.toml", "paper = \"letter\"", "paper = \"letter", "expected a name, = and its value")]
    [InlineData("shop.toml", "unit = \"in\"", "unit \"in\"", "expected a name, = and its value")]
    [InlineData("shop.toml", "unit = \"in\"", "unit = \"in\"\nunit = \"mm\"", "shop.toml:11 \"unit = \"mm\"\": stands in line 10 already: keep one of them")]
    [InlineData("materials.toml", "[hmpe-0145]", "[hmpe-0145", "expected the name of a section in brackets, such as [jig]")]
    [InlineData("materials.toml", "title = ", "titel = ", "unknown entry: did you mean title?")]
    [InlineData("materials.toml", "title = ", "title = = ", "expected a name, = and its value")]
    [InlineData("threads.toml", "[t021]", "[t019]", "threads.toml:14 \"[t019]\": stands in line 10 already: keep one of them")]
    [InlineData("threads.toml", "title = ", "title ", "expected a name, = and its value")]
    [InlineData("stocks.toml", "page = ", "pages = ", "unknown entry: did you mean page?")]
    [InlineData("stocks.toml", "page = [\"4 in\", \"2 in\"]", "page = [\"4 in\", \"2 in\"", "the list before this is not closed: expected ] at its end")]
    [InlineData("stocks.toml", "page = [\"4 in\", \"2 in\"]", "page = [\"4 in\"]", "expected 2 lengths in brackets")]
    [InlineData("plans/yoke.toml", "thread = ", "tread = ", "tread: unknown entry: did you mean thread?")]
    [InlineData("plans/split-yoke-cable.toml", "title = ", "# title = ", "title is missing")]
    [InlineData("words/en.toml", "months = ", "month = ", "month: unknown entry: did you mean months?")]
    [InlineData("words/en.toml", "danger = ", "dangr = ", "unknown entry: did you mean danger?")]
    [InlineData("colors.toml", "also = ", "alsso = ", "unknown entry: did you mean also?")]
    [InlineData("card.toml", "does = \"lay up\"", "does = \"lay down\"", "expected one of")]
    public void Read_OneMistake_IsOneSentence(string file, string old, string replacement, string message)
    {
        Replace(file, old, replacement);
        var problems = new List<Problem>();
        Assert.Null(CatalogReader.Read(_folder, problems));
        var said = Assert.Single(problems.Select(p => p.ToString()));
        Assert.Contains(message, said, StringComparison.Ordinal);
        Assert.StartsWith($"{file}:", said, StringComparison.Ordinal);
    }

    /// <summary>At each end of a range and the least step beyond it.</summary>
    [Theory]
    [InlineData("# post_diameter = \"1 in\"", "post_diameter = \"0.1 in\"", true)]
    [InlineData("# post_diameter = \"1 in\"", "post_diameter = \"0.0999 in\"", false)]
    [InlineData("# post_diameter = \"1 in\"", "post_diameter = \"3 in\"", true)]
    [InlineData("# post_diameter = \"1 in\"", "post_diameter = \"3.0001 in\"", false)]
    [InlineData("pin_diameter = \"1/4 in\"", "pin_diameter = \"0.05 in\"", true)]
    [InlineData("pin_diameter = \"1/4 in\"", "pin_diameter = \"0.0499 in\"", false)]
    [InlineData("pin_diameter = \"1/4 in\"", "pin_diameter = \"1 in\"", true)]
    [InlineData("pin_diameter = \"1/4 in\"", "pin_diameter = \"1.0001 in\"", false)]
    [InlineData("rule_per_turn = \"0.012 in\"", "rule_per_turn = \"0.002 in\"", true)]
    [InlineData("rule_per_turn = \"0.012 in\"", "rule_per_turn = \"0.0019 in\"", false)]
    [InlineData("rule_per_turn = \"0.012 in\"", "rule_per_turn = \"0.05 in\"", true)]
    [InlineData("rule_per_turn = \"0.012 in\"", "rule_per_turn = \"0.0501 in\"", false)]
    [InlineData("turns_per_inch = 0.75", "turns_per_inch = 0.2", true)]
    [InlineData("turns_per_inch = 0.75", "turns_per_inch = 0.19", false)]
    [InlineData("turns_per_inch = 0.75", "turns_per_inch = 2", true)]
    [InlineData("turns_per_inch = 0.75", "turns_per_inch = 2.01", false)]
    [InlineData("longest = \"130 in\"", "longest = \"400 in\"", true)]
    [InlineData("longest = \"130 in\"", "longest = \"401 in\"", false)]
    public void Read_ShopsOwnValue_IsTakenUpToItsRangeAndNoFurther(string old, string replacement, bool isTaken)
    {
        Replace("shop.toml", old, replacement);
        var problems = new List<Problem>();
        Assert.Equal(isTaken, CatalogReader.Read(_folder, problems) is not null);
        Assert.Equal(isTaken ? 0 : 1, problems.Count);
    }

    [Fact]
    public void Read_PostsNotGiven_AreNotAssumed()
    {
        Assert.Null(CatalogReader.Read(_folder, [])!.Shop.Jig.PostDiameter);
    }

    [Fact]
    public void Read_BrokenToml_NamesTheLine()
    {
        File.WriteAllText(Path.Combine(_folder, "threads.toml"), "[t021]\ntitle = \n");
        var problems = new List<Problem>();
        Assert.Null(CatalogReader.Read(_folder, problems));
        Assert.Contains(problems, p => p.At is { File: "threads.toml", Line: 2 } && p.Message.StartsWith("expected a name, = and its value", StringComparison.Ordinal));
    }

    [Fact]
    public void Read_FileCutOffAtABackslash_SaysSo()
    {
        File.AppendAllText(Path.Combine(_folder, "threads.toml"), "note = \"a\\");
        var problems = new List<Problem>();
        Assert.Null(CatalogReader.Read(_folder, problems));
        Assert.Contains(
            "threads.toml: the file ends in the middle of a text, at a backslash: close the quote, or copy the file anew",
            problems.Select(p => p.ToString()));
    }

    [Fact]
    public void Read_FileMissing_SaysWhichToCopy()
    {
        File.Delete(Path.Combine(_folder, "materials.toml"));
        var problems = new List<Problem>();
        Assert.Null(CatalogReader.Read(_folder, problems));
        Assert.Contains(problems, p => p.Message.EndsWith("materials.toml: copy the one that comes with the program", StringComparison.Ordinal));
    }

    [Fact]
    public void Read_LogoThatIsNotThere_SaysWhereToPutIt()
    {
        Replace("shop.toml", "logo = \"\"", "logo = \"logo.png\"");
        var problems = new List<Problem>();
        Assert.Null(CatalogReader.Read(_folder, problems));
        Assert.Equal(
            $"there is no {Path.Combine(_folder, "logo.png")}: put the picture there, or leave logo empty", Assert.Single(problems).Message);
    }

    [Fact]
    public void Read_NoFolder_Throws() => Assert.Throws<TagendException>(() => CatalogReader.Read("no-such-folder", []));

    /// <returns>The line of what was replaced.</returns>
    private int Replace(string file, string old, string replacement)
    {
        var path = Path.Combine(_folder, file);
        var text = File.ReadAllText(path);
        var at = text.IndexOf(old, StringComparison.Ordinal);
        Assert.True(at >= 0, $"{file} has no {old}");
        File.WriteAllText(path, text[..at] + replacement + text[(at + old.Length)..]);
        return text[..at].Count(c => c == '\n') + 1;
    }
}
