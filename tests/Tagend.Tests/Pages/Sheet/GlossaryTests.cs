using System.Text.RegularExpressions;
using Xunit;

namespace Tagend.Tests.Pages;

/// <summary>The trade's words in docs/GLOSSARY.md and in the shipped texts are the same.</summary>
public sealed partial class GlossaryTests
{
    private static readonly string[] Languages = ["en", "de", "fr", "es"];

    private static readonly string[] Papers = ["compound", "recurve", "crossbow", "words"];

    private static readonly List<string[]> Rows = [.. File.ReadLines(Path.Combine(TestFiles.Root, "docs", "GLOSSARY.md"))
        .Where(l => l.StartsWith("| ", StringComparison.Ordinal))
        .Select(l => l.Trim('|', ' ').Split('|', StringSplitOptions.TrimEntries))];

    /// <summary>Term, language, the form in which it is used, papers.</summary>
    public static TheoryData<string, string, string, string> Terms => new(Rows
        .Where(r => r.Length == 6 && r[0] != "term")
        .SelectMany(r => Languages.Select((l, i) => (r[0], l, FormOf(r[i + 1]), r[5]))));

    public static TheoryData<string, string> Avoided => new(Rows
        .Where(r => r.Length == 4 && r[0] != "language")
        .Select(r => (r[0], r[1])));

    [Fact]
    public void Glossary_HasTermsAndWordsToAvoidInEveryLanguage()
    {
        Assert.True(Terms.Count > 4 * 50);
        Assert.Equal(["de", "es", "fr"], Rows.Where(r => r.Length == 4 && r[0] != "language").Select(r => r[0]).Distinct().Order());
        Assert.All(Rows.Where(r => r.Length == 6 && r[0] != "term"), r => Assert.All(r[5].Split(' '), p => Assert.Contains(p, Papers)));
    }

    [Theory]
    [MemberData(nameof(Terms))]
    public void Term_OfTheTrade_IsInEachPaperOfItsRow(string term, string language, string form, string papers)
    {
        Assert.NotEmpty(term);
        Assert.All(papers.Split(' '), paper => Assert.Contains(form, TextOf(paper, language), StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Avoided))]
    public void Word_ToAvoid_IsInNoPaper(string language, string word) =>
        Assert.All(Papers, paper => Assert.DoesNotMatch(new Regex($@"(?<!\p{{L}}){Regex.Escape(word)}(?!\p{{L}})"), TextOf(paper, language)));

    private static string FormOf(string cell) => Parenthesis().Match(cell) is { Success: true } form ? form.Groups[1].Value : cell;

    /// <summary>A paper's text, of a file of words only what it says in its own language.</summary>
    private static string TextOf(string paper, string language) => paper == "words"
        ? string.Join('\n', File.ReadLines(Path.Combine(TestFiles.Templates, "words", $"{language}.toml")).Select(l => l[(l.IndexOf('=', StringComparison.Ordinal) + 1)..]))
        : File.ReadAllText(Path.Combine(TestFiles.Templates, "sheets", $"{paper}.{language}.md"));

    [GeneratedRegex(@"\((.+)\)$")]
    private static partial Regex Parenthesis();
}
