using System.Text.RegularExpressions;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Pages.Sheet;
using Tagend.Problems;
using Xunit;

namespace Tagend.Tests.Pages;

public sealed partial class PaperLanguageTests : IDisposable
{
    private static readonly string Sheets = Path.Combine(TestFiles.Templates, "sheets");

    private static readonly string Words = Path.Combine(TestFiles.Templates, "words");

    private readonly string _folder = Directory.CreateTempSubdirectory("tagend-words-").FullName;

    public static MatrixTheoryData<string, string> Translations => new(["compound", "recurve", "crossbow"], ["es", "fr", "de"]);

    public static TheoryData<string> Languages => [.. PaperLanguageReader.Languages(TestFiles.Templates)];

    [Fact]
    public void Languages_Shipped_AreFour() =>
        Assert.Equal(["de", "en", "es", "fr"], PaperLanguageReader.Languages(TestFiles.Templates));

    [Theory]
    [MemberData(nameof(Translations))]
    public void Translation_OfASheet_HasTheSameFieldsAndTagsInTheSameOrder(string kind, string language) =>
        Assert.Equal(TagsOf(kind, "en"), TagsOf(kind, language));

    /// <summary>Headings, steps, boxes, tables with their columns, panels with their words: line by line.</summary>
    [Theory]
    [MemberData(nameof(Translations))]
    public void Translation_OfASheet_HasTheSamePartsAndCautions(string kind, string language) =>
        Assert.Equal(ShapesOf(kind, "en"), ShapesOf(kind, language));

    [Theory]
    [MemberData(nameof(Languages))]
    public void Terms_OfALanguage_AreForEveryKindEndAndMaterialShipped(string language)
    {
        var terms = SheetFixture.Language(language).Terms;
        var titles = SheetFixture.Catalog.Plans.Values.Where(p => p.Name != "plain").Select(p => p.Title);
        var others = SheetFixture.Catalog.Plans.Values.SelectMany(p => new[] { p.EndA, p.EndB }.Concat(p.Separators.Select(s => s.Name)))
            .Concat(SheetFixture.Catalog.Materials.Values.Select(m => m.Title))
            .Concat(SheetFixture.Catalog.Threads.Values.Select(t => t.Title));

        Assert.All(language == "en" ? titles : titles.Concat(others), t => Assert.Contains(t, terms.Keys));
        Assert.All(language == "en" ? [] : titles, t => Assert.Contains(t, SheetFixture.Language(language).Kinds.Keys));
    }

    [Theory]
    [InlineData("en", "March 1, 2026", "60 1/4 in", "0.023 in", "1530.4 mm")]
    [InlineData("es", "1 de marzo de 2026", "60 1/4 in", "0,023 in", "1530,4 mm")]
    [InlineData("fr", "1er mars 2026", "60 1/4 po", "0,023 po", "1530,4 mm")]
    [InlineData("de", "1. März 2026", "60 1/4 Zoll", "0,023 Zoll", "1530,4 mm")]
    public void Writer_OfALanguage_WritesAsItDoes(string language, string date, string mark, string exact, string metric)
    {
        var write = new SheetWriter(SheetFixture.Language(language));

        Assert.Equal(date, write.Date(new DateOnly(2026, 3, 1)));
        Assert.Equal(mark, write.Length(Length.FromInches(60.25), LengthUnit.Inch).Replace('\u00A0', ' '));
        Assert.Equal(exact, write.ExactLength(Length.FromInches(0.0229), LengthUnit.Inch).Replace('\u00A0', ' '));
        Assert.Equal(metric, write.Length(Length.FromMillimeters(1530.4), LengthUnit.Millimeter).Replace('\u00A0', ' '));
    }

    [Fact]
    public void Term_ThatIsNotListed_IsPrintedAsItIs() =>
        Assert.Equal("left-hand tip", new SheetWriter(SheetFixture.Language("fr")).Term("left-hand tip"));

    [Fact]
    public void Read_OfNoSuchLanguage_NamesThoseThereAre()
    {
        var broken = Assert.Throws<TagendException>(() => PaperLanguageReader.Read(TestFiles.Templates, "xx", []));

        Assert.Equal($"there are no papers in the language \"xx\": {Words} has words for de, en, es, fr", broken.Message);
    }

    [Theory]
    [InlineData("decimal = \",\"", "decimal = 1", 4, "decimal \"1\": expected a text in quotes, at most 1000 visible characters long")]
    [InlineData(" Dezember\"", "\"", 6, "expected the names of twelve months with spaces between")]
    [InlineData("peep = ", "pep = ", 47, "unknown entry: did you mean peep?")]
    [InlineData("{load} über", "{last} über", 153, "expected a text with {load} and {pin} in it, and nothing else in braces")]
    [InlineData("card_customer = \"Kunde\"", "card_customer = \"Kunde {name}\"", 54, "expected a text without anything in braces")]
    public void Read_Mistake_IsReportedWithFileAndLine(string old, string replacement, int nearLine, string message)
    {
        var text = File.ReadAllText(Path.Combine(Words, "de.toml"));
        Assert.Contains(old, text, StringComparison.Ordinal);
        Directory.CreateDirectory(Path.Combine(_folder, "words"));
        File.WriteAllText(Path.Combine(_folder, "words", "de.toml"), text.Replace(old, replacement, StringComparison.Ordinal));
        var problems = new List<Problem>();

        Assert.Null(PaperLanguageReader.Read(_folder, "de", problems));

        var problem = Assert.Single(problems, p => message.EndsWith('*')
            ? p.Message.StartsWith(message[..^1], StringComparison.Ordinal)
            : p.ToString().EndsWith(message, StringComparison.Ordinal));
        Assert.Equal("words/de.toml", problem.At.File);
        Assert.InRange(problem.At.Line, nearLine - 3, nearLine + 3);
    }

    /// <summary>A later version has words that a shop's own file does not have yet.</summary>
    [Theory]
    [InlineData("de", "GEFAHR")]
    [InlineData("nl", "DANGER")]
    public void Read_FileWithoutAWord_HasTheShippedOneOfItsLanguageElseTheEnglish(string language, string danger)
    {
        var text = File.ReadAllText(Path.Combine(Words, "de.toml"));
        Directory.CreateDirectory(Path.Combine(_folder, "words"));
        File.WriteAllText(
            Path.Combine(_folder, "words", $"{language}.toml"),
            text.Replace("danger = \"GEFAHR\"\n", "", StringComparison.Ordinal).Replace("warning = \"WARNUNG\"", "warning = \"PAS OP\"", StringComparison.Ordinal));
        var problems = new List<Problem>();
        var words = PaperLanguageReader.Read(_folder, language, problems)!;
        Assert.Empty(problems);
        Assert.Equal((danger, "PAS OP"), (words[PaperWord.Danger], words[PaperWord.Warning]));
    }

    [Theory]
    [MemberData(nameof(Languages))]
    public void Words_OfAShippedLanguage_AreAllThere(string language)
    {
        var keys = File.ReadAllLines(Path.Combine(Words, $"{language}.toml")).Select(l => l.Split(" = ")[0]).ToHashSet();
        Assert.All(PaperWords.All, word => Assert.Contains(PaperWords.KeyOf(word), keys));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static List<string> TagsOf(string kind, string language) =>
        [.. Tag().Matches(Read(kind, language)).Select(m => Filter().Replace(m.Value, " }}"))];

    private static List<string> ShapesOf(string kind, string language)
    {
        var words = Enum.GetValues<SignalWord>().ToDictionary(w => w.In(SheetFixture.Language(language)), w => w.ToString());
        return [.. Read(kind, language).Split('\n').Select(Shape)];

        string Shape(string filled)
        {
            var line = Tag().Replace(filled, "");
            var mark = Mark().Match(line).Value;
            var panel = Word().Match(line);
            return panel.Success ? mark + words[panel.Groups[1].Value] : $"{mark}{line.Count(c => c == '|')}{line.Split("**").Length / 2}";
        }
    }

    private static string Read(string kind, string language) => File.ReadAllText(Path.Combine(Sheets, $"{kind}.{language}.md"));

    [GeneratedRegex(@"\{\{.*?\}\}|\{%.*?%\}")]
    private static partial Regex Tag();

    [GeneratedRegex(@" \| downcase \}\}")]
    private static partial Regex Filter();

    [GeneratedRegex(@"^ *(#+|\d+\.|- \[ \]|-|>|:::|!\[\]\(\w+\)|<!--|\|)?")]
    private static partial Regex Mark();

    [GeneratedRegex(@"^ *> \*\*(\p{Lu}+)\*\*")]
    private static partial Regex Word();
}
