using Microsoft.Playwright;

namespace Tagend.StationTests;

/// <summary>A hand at the steps of a piece, which does not wait for the clock of a foot that bounces.</summary>
internal static class Bench
{
    /// <summary>The page's own clock runs a second on whenever it is read, so that every press counts.</summary>
    public static Task WithoutBounce(IPage page) => page.EvaluateAsync(
        "() => { const now = performance.now.bind(performance); let ahead = 0; performance.now = () => now() + (ahead += 1000); }");

    /// <summary>Goes on to the first step of a title.</summary>
    public static async Task To(IPage page, string title)
    {
        await Assertions.Expect(page.Locator("#count")).Not.ToBeEmptyAsync();
        await WithoutBounce(page);
        await page.EvaluateAsync(
            """
            title => {
                const shown = () => document.querySelector(".step:not([hidden]) h2").textContent;
                for (let i = 0; i < 40 && !shown().startsWith(title); i++) {
                    document.getElementById("done").click();
                }
            }
            """,
            title);
    }
}
