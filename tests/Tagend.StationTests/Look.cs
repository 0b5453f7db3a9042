using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Xunit;

namespace Tagend.StationTests;

/// <summary>Judges a screen as it stands, by a program that is not ours, and takes its picture.</summary>
internal static class Look
{
    private static readonly AxeRunOptions Rules = new()
    {
        RunOnly = new RunOnlyOptions { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] },
    };

    /// <summary>A folder that the pictures go to, where one is wanted: station-pictures in out.</summary>
    private static readonly string? Pictures = Environment.GetEnvironmentVariable("STATION_PICTURES");

    /// <summary>
    /// In every size, light and dark: no violation of WCAG 2.2 A and AA, nothing wider than the window, and every target as
    /// large as a wet finger. The rules are judged on a dark phone and a light desk.
    /// </summary>
    public static async Task Everywhere(IPage page, string screen)
    {
        foreach (var shade in new[] { ColorScheme.Light, ColorScheme.Dark })
        {
            await page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = shade });
            foreach (var size in Size.All)
            {
                await page.SetViewportSizeAsync(size.Width, size.Height);
                await At(page, screen, size, shade, isJudged: (size, shade) == (Size.Phone, ColorScheme.Dark) || (size, shade) == (Size.Desk, ColorScheme.Light));
            }
        }
    }

    private static async Task At(IPage page, string screen, Size size, ColorScheme shade, bool isJudged)
    {
        if (isJudged)
        {
            var result = await page.RunAxe(Rules);
            Assert.Empty(result.Violations.Select(v => $"{screen}, {size.Name}, {shade}: {v.Id}: {v.Help}: {v.Nodes[0].Html}"));
        }

        Assert.Empty((await page.EvaluateAsync<string[]>(Wider)).Select(f => $"{screen}, {size.Name}: {f}"));
        Assert.Empty((await page.EvaluateAsync<string[]>(SmallTargets)).Select(f => $"{screen}, {size.Name}: {f}"));
        if (Pictures is { } folder)
        {
            var name = $"{screen.Trim('/').Replace('/', '-')}-{size.Name}-{shade}.png".ToLowerInvariant();
            await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, name) });
        }
    }

    private const string Wider = """
        () => document.documentElement.scrollWidth > document.documentElement.clientWidth
            ? [...document.querySelectorAll("main *")].filter(e => e.getBoundingClientRect().right > document.documentElement.clientWidth
                && !e.closest(".wide")).slice(0, 3).map(e => "wider than the window: " + e.outerHTML.slice(0, 120))
            : []
        """;

    // A link inside a sentence is as large as its words (WCAG 2.2, 2.5.8), and a box to tick as large as its label.
    private const string SmallTargets = """
        () => [...document.querySelectorAll("a, button, input, select, textarea, summary")]
            .filter(e => e.checkVisibility() && !e.closest("p, .skip") && !e.matches(".skip, .unseen"))
            .map(e => [e, (e.matches("[type=checkbox], [type=radio]") ? e.closest("label") ?? e : e).getBoundingClientRect()])
            .filter(([, r]) => r.width > 0 && (r.height < 43.5 || r.width < 43.5))
            .map(([e, r]) => `smaller than 44 px (${Math.round(r.width)} x ${Math.round(r.height)}): ` + e.outerHTML.slice(0, 120))
        """;
}
