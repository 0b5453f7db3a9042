using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Tagend.StationTests;

/// <summary>
/// A page that goes to another address by itself. Playwright's wait for an address looks at the one that is there and listens
/// afterwards: on a busy machine a page can arrive in between, and is then waited for without end. Its assertions look again.
/// </summary>
internal static class Arrival
{
    /// <summary>Waits until a page is there, with its scripts.</summary>
    /// <param name="page">The page.</param>
    /// <param name="path">The end of its address; a * stands for anything.</param>
    public static async Task At(IPage page, string path)
    {
        await Assertions.Expect(page).ToHaveURLAsync(new Regex(Regex.Escape(path).Replace(@"\*", ".*", StringComparison.Ordinal) + "$"));
        await page.WaitForLoadStateAsync();
    }
}
