using System.Text.RegularExpressions;
using Tagend.Output;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Pages;

/// <summary>
/// Signal words as ANSI Z535.6 defines them: DANGER, if not avoided, will result in death or serious injury; WARNING could
/// result in death or serious injury; CAUTION could result in minor or moderate injury; NOTICE is not about injury.
/// </summary>
public sealed partial class SignalWordTests
{
    private static readonly string[] Grave = ["death", "serious injury"];

    private static readonly Dictionary<string, Func<BuildSet>> Sets = new()
    {
        ["compound"] = () => SheetFixture.Compound(),
        ["recurve"] = SheetFixture.Recurve,
        ["crossbow"] = SheetFixture.Crossbow,
    };

    public static TheoryData<string> Kinds => [.. Sets.Keys];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Panels_OfShippedSheets_MeanWhatTheirWordSays(string kind)
    {
        Assert.All(PanelsOf(kind), panel =>
        {
            var grave = Grave.Any(g => panel.Text.Contains(g, StringComparison.Ordinal));
            switch (panel.Word)
            {
                case "DANGER":
                    Assert.True(grave && panel.Text.Contains(" will cause ", StringComparison.Ordinal), panel.Text);
                    break;
                case "WARNING":
                    Assert.True(grave && panel.Text.Contains(" could ", StringComparison.Ordinal), panel.Text);
                    break;
                case "CAUTION":
                    Assert.True(!grave && panel.Text.Contains(" could ", StringComparison.Ordinal), panel.Text);
                    break;
                default:
                    Assert.Equal("NOTICE", panel.Word);
                    Assert.False(grave || panel.Text.Contains("injur", StringComparison.Ordinal), panel.Text);
                    break;
            }
        });
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Panels_OfShippedSheets_ForbidTheDryFireAndDeferToTheManual(string kind)
    {
        Assert.Contains(PanelsOf(kind), p => p.Word == "WARNING" && p.Text.Contains("dry fire", StringComparison.Ordinal));
        Assert.Contains("does not replace it", TemplateOf(kind), StringComparison.Ordinal);
        Assert.Contains("local rules", TemplateOf(kind), StringComparison.Ordinal);
        Assert.Contains("qualified", TemplateOf(kind), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Panels_OnPaper_CarryTheAlertSymbolUnlessTheyAreNotices(string kind)
    {
        var inks = SheetFixture.Pages(Sets[kind]()).SelectMany(p => p.Inks).ToList();

        foreach (var word in PanelsOf(kind).GroupBy(p => p.Word))
        {
            Assert.Equal(word.Count(), inks.OfType<TextInk>().Count(t => t.Text == word.Key));
        }

        Assert.Equal(
            PanelsOf(kind).Count(p => p.Word != "NOTICE"),
            inks.OfType<ShapeInk>().Count(s => s.Corners.Count == 3));
    }

    private static List<(string Word, string Text)> PanelsOf(string kind) =>
        [.. Panel().Matches(TemplateOf(kind)).Select(m => (m.Groups[1].Value, m.Groups[2].Value))];

    private static string TemplateOf(string kind) =>
        File.ReadAllText(Path.Combine(TestFiles.Templates, "sheets", $"{kind}.en.md"));

    [GeneratedRegex(@"^ *> \*\*([A-Z]+)\*\* (.+)$", RegexOptions.Multiline)]
    private static partial Regex Panel();
}
