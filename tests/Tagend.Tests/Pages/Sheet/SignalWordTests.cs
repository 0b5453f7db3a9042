using System.Text.RegularExpressions;
using Tagend.Output;
using Tagend.Pages.Sheet;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Pages;

/// <summary>
/// Signal words as ANSI Z535.6 defines them: DANGER, if not avoided, will result in death or serious injury; WARNING could
/// result in death or serious injury; CAUTION could result in minor or moderate injury; NOTICE is not about injury.
/// </summary>
public sealed partial class SignalWordTests
{
    private static readonly Dictionary<string, Func<BuildSet>> Sets = new()
    {
        ["compound"] = () => SheetFixture.Compound(),
        ["recurve"] = SheetFixture.Recurve,
        ["crossbow"] = SheetFixture.Crossbow,
    };

    /// <summary>How each language says it.</summary>
    private static readonly Dictionary<string, Phrases> Said = new()
    {
        ["en"] = new(["death", "serious injury"], "This will cause ", "could ", "injur", "(a dry fire)", "does not replace it", "local rules", "qualified"),
        ["es"] = new(["muerte", "lesiones graves"], "Esto causará ", "[Pp]odría", "lesi", "(disparo en vacío)", "no lo sustituye", "las normas locales", "cualificada"),
        ["fr"] = new(["mort", "blessures graves"], "Cela entraînera ", "pourrai", "bless", "(tir à vide)", "ne le remplace pas", "règles locales", "qualifié"),
        ["de"] = new(["Tod", "schweren Verletzungen"], "Das führt zu", "k(a|ö)nn", "erletz", "(Leerschuss)", "ersetzt sie nicht", "örtlichen Vorschriften", "qualifiziert"),
    };

    public static MatrixTheoryData<string, string> Sheets => new(Sets.Keys, Said.Keys);

    [Theory]
    [InlineData("en", "NOTICE", "CAUTION", "WARNING", "DANGER")] // ANSI Z535.6
    [InlineData("es", "AVISO", "PRECAUCIÓN", "ADVERTENCIA", "PELIGRO")] // as safety signs in Spanish have them
    [InlineData("fr", "AVIS", "ATTENTION", "AVERTISSEMENT", "DANGER")]
    [InlineData("de", "HINWEIS", "VORSICHT", "WARNUNG", "GEFAHR")]
    public void Words_OfALanguage_AreTheUsualOnes(string language, params string[] words) =>
        Assert.Equal(words, Enum.GetValues<SignalWord>().Select(w => w.In(SheetFixture.Language(language))));

    [Theory]
    [MemberData(nameof(Sheets))]
    public void Panels_OfShippedSheets_MeanWhatTheirWordSays(string kind, string language)
    {
        var said = Said[language];
        Assert.All(PanelsOf(kind, language), panel =>
        {
            var isGrave = said.Grave.Any(g => panel.Text.Contains(g, StringComparison.Ordinal));
            var mayBe = Regex.IsMatch(panel.Text, said.Could);
            switch (panel.Word)
            {
                case SignalWord.Danger:
                    Assert.True(isGrave && panel.Text.Contains(said.Will, StringComparison.Ordinal), panel.Text);
                    break;
                case SignalWord.Warning:
                    Assert.True(isGrave && mayBe && !panel.Text.Contains(said.Will, StringComparison.Ordinal), panel.Text);
                    break;
                case SignalWord.Caution:
                    Assert.True(!isGrave && mayBe, panel.Text);
                    break;
                default:
                    Assert.False(isGrave || panel.Text.Contains(said.Injury, StringComparison.Ordinal), panel.Text);
                    break;
            }
        });
    }

    [Theory]
    [MemberData(nameof(Sheets))]
    public void Panels_OfShippedSheets_ForbidTheDryFireAndDeferToTheManual(string kind, string language)
    {
        var said = Said[language];
        var text = TemplateOf(kind, language);
        Assert.Contains(PanelsOf(kind, language), p => p.Word == SignalWord.Warning && p.Text.Contains(said.DryFire, StringComparison.Ordinal));
        Assert.All([said.Defers, said.LocalRules, said.Qualified], t => Assert.Contains(t, text, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Sheets))]
    public void Panels_OnPaper_CarryTheAlertSymbolUnlessTheyAreNotices(string kind, string language)
    {
        var inks = SheetFixture.Pages(Sets[kind](), language: language).SelectMany(p => p.Inks).ToList();
        var panels = PanelsOf(kind, language);

        foreach (var word in panels.GroupBy(p => p.Word.In(SheetFixture.Language(language))))
        {
            Assert.Equal(word.Count(), inks.OfType<TextInk>().Count(t => t.Text == word.Key));
        }

        Assert.Equal(panels.Count(p => p.Word != SignalWord.Notice), SymbolsOf(inks).Count);
    }

    /// <summary>
    /// ANSI Z535.6: the symbol is an exclamation mark in a triangle of equal sides; it goes before the word, stands on the
    /// line of its letters and is no lower than they are.
    /// </summary>
    [Theory]
    [MemberData(nameof(Sheets))]
    public void AlertSymbol_OnPaper_HasItsProportionsAndStandsBeforeTheWord(string kind, string language)
    {
        var words = Enum.GetValues<SignalWord>().Select(w => w.In(SheetFixture.Language(language))).ToHashSet();
        foreach (var inks in SheetFixture.Pages(Sets[kind](), language: language).Select(p => p.Inks))
        {
            var texts = inks.OfType<TextInk>().Where(t => words.Contains(t.Text)).ToList();
            Assert.All(SymbolsOf(inks), symbol =>
            {
                var (left, right) = (symbol.Corners.Min(c => c.X), symbol.Corners.Max(c => c.X));
                var (top, foot) = (symbol.Corners.Min(c => c.Y), symbol.Corners.Max(c => c.Y));
                Assert.Equal(MathF.Sqrt(3) / 2, (foot - top) / (right - left), 0.001f);
                var word = texts.Where(t => Math.Abs(t.Baseline - foot) < 0.01f && t.X > right).MinBy(t => t.X - right);
                Assert.NotNull(word);
                Assert.True(foot - top >= word.Style.CapHeight);
            });
        }
    }

    /// <summary>Triangles wider than anything that marks a place on a string.</summary>
    private static List<ShapeInk> SymbolsOf(IEnumerable<Ink> inks) =>
        [.. inks.OfType<ShapeInk>().Where(s => s.Corners.Count == 3 && s.Corners.Max(c => c.X) - s.Corners.Min(c => c.X) > 8)];

    private static List<(SignalWord Word, string Text)> PanelsOf(string kind, string language)
    {
        var words = Enum.GetValues<SignalWord>().ToDictionary(w => w.In(SheetFixture.Language(language)));
        return [.. Panel().Matches(TemplateOf(kind, language)).Select(m => (words[m.Groups[1].Value], m.Groups[2].Value))];
    }

    private static string TemplateOf(string kind, string language) =>
        File.ReadAllText(Path.Combine(TestFiles.Templates, "sheets", $"{kind}.{language}.md"));

    [GeneratedRegex(@"^ *> \*\*(\p{Lu}+)\*\* (.+)$", RegexOptions.Multiline)]
    private static partial Regex Panel();

    private sealed record Phrases(
        string[] Grave, string Will, string Could, string Injury, string DryFire, string Defers, string LocalRules, string Qualified);
}
