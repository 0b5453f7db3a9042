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

    /// <summary>What light and size change: contrast, and how large and far apart targets are (WCAG 2.2, 1.4.3 and 2.5.8).</summary>
    private static readonly AxeRunOptions OfShadeAndSize = new() { RunOnly = new RunOnlyOptions { Type = "rule", Values = ["color-contrast", "target-size"] } };

    /// <summary>A folder that the pictures go to, where one is wanted: station-pictures in out.</summary>
    private static readonly string? Pictures = Environment.GetEnvironmentVariable("STATION_PICTURES");

    /// <summary>
    /// In every size, light and dark: no violation of WCAG 2.2 A and AA, nothing wider than the window, and every target as
    /// large as a wet finger. All rules are judged on a light desk, and on a dark phone those that shade and size make differ.
    /// </summary>
    public static async Task Everywhere(IPage page, string screen)
    {
        foreach (var shade in new[] { ColorScheme.Light, ColorScheme.Dark })
        {
            await page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = shade });
            foreach (var size in Size.All)
            {
                await page.SetViewportSizeAsync(size.Width, size.Height);
                await At(page, screen, size, shade, (size.Name, shade) switch
                {
                    ("desk", ColorScheme.Light) => Rules,
                    ("phone", ColorScheme.Dark) => OfShadeAndSize,
                    _ => null,
                });
            }
        }
    }

    private static async Task At(IPage page, string screen, Size size, ColorScheme shade, AxeRunOptions? rules)
    {
        if (rules is not null)
        {
            var result = await page.RunAxe(rules);
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
