using System.Diagnostics;
using Microsoft.Playwright;
using Xunit;

namespace Tagend.StationTests;

/// <summary>Tags before the camera, on photos and from a scanner.</summary>
public class ScanTests(Browser browser)
{
    [Fact]
    public async Task Camera_ThatShowsATag_SaysWhoseItIsAndItsPosts()
    {
        var page = await Open(Size.Phone);
        Assert.SkipUnless(File.Exists(Path.Combine(browser.Station.Folder, "camera.mjpeg")), "ffmpeg or pdftoppm is not installed");
        await Assertions.Expect(page.Locator("#found h2")).ToContainTextAsync(Camera.Order, new LocatorAssertionsToContainTextOptions { Timeout = 15_000 });
        await Assertions.Expect(page.Locator(".found-who")).ToContainTextAsync("Demo customer 1");
        await Look.Everywhere(page, "scan-found");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Build it" }).ClickAsync();
        await Assertions.Expect(page.Locator(".bench-head h1")).ToContainTextAsync($"{Camera.Order}/string");
    }

    [Fact]
    public async Task Photo_OfSeveralTags_IsAList()
    {
        var order = Printed.Order(browser.Station);
        var picture = Path.Combine(browser.Station.Folder, $"{order}.png");
        Assert.SkipUnless(File.Exists("/usr/bin/pdftoppm"), "pdftoppm is not installed");
        using (var made = Process.Start("pdftoppm", ["-r", "300", "-png", "-singlefile", Path.Combine(Printed.FolderOf(browser.Station, order), "tags.pdf"), picture[..^4]]))
        {
            await made.WaitForExitAsync(TestContext.Current.CancellationToken);
        }

        var page = await Open(Size.Phone);
        await page.Locator("#photo").SetInputFilesAsync(picture);
        await Assertions.Expect(page.Locator("#found")).ToContainTextAsync($"{order}/string");
    }

    [Fact]
    public async Task Photo_ThatIsNone_SaysWhatToDo()
    {
        var page = await Open(Size.Phone);
        await page.Locator("#photo").SetInputFilesAsync(new FilePayload { Name = "a.png", MimeType = "image/png", Buffer = [1, 2, 3] });
        await Assertions.Expect(page.Locator("#found")).ToContainTextAsync("is not a picture that can be read: give a whole PNG, JPEG or WebP file.");
    }

    [Fact]
    public async Task Scanner_WithATagOfAnOlderRevision_TakesTheWholeScreen()
    {
        var order = Printed.Order(browser.Station);
        var old = Printed.Job(browser.Station, order).GetProperty("tag").GetString()!;
        Printed.Order(browser.Station, length: "60 3/8", order: order);
        var page = await Open(Size.Phone);
        await Scan(page, old);
        await Assertions.Expect(page.Locator(".held")).ToContainTextAsync("superseded by revision 2");
        await Assertions.Expect(page.Locator("#text")).ToBeHiddenAsync();
        await Look.Everywhere(page, "scan-superseded");
    }

    [Fact]
    public async Task Scanner_WithACodeOfOthers_ShowsItsTextAndNothingElse()
    {
        var page = await Open(Size.Desk);
        await Scan(page, "<img src=x onerror=alert(1)> https://example.org");
        await Assertions.Expect(page.Locator(".foreign")).ToHaveTextAsync("<img src=x onerror=alert(1)> https://example.org");
        Assert.Equal(0, await page.Locator("#found img, #found a").CountAsync());
        await Look.Everywhere(page, "scan-foreign");
    }

    [Fact]
    public async Task Scanner_WithTagsOneAfterTheOther_ShowsTheLast()
    {
        var (first, second) = (Printed.Order(browser.Station), Printed.Order(browser.Station));
        var page = await Open(Size.Desk);
        await Scan(page, $"{first}/string");
        await Assertions.Expect(page.Locator("#found h2")).ToContainTextAsync(first);
        await Scan(page, Printed.Job(browser.Station, second).GetProperty("tag").GetString()!);
        await Assertions.Expect(page.Locator("#found h2")).ToContainTextAsync(second);
        Assert.Equal("", await page.Locator("#text").InputValueAsync());
    }

    /// <summary>A scanner types a tag and ends it with Enter.</summary>
    private static async Task Scan(IPage page, string text)
    {
        await page.Locator("#text").FillAsync(text);
        await page.Locator("#text").PressAsync("Enter");
    }

    private async Task<IPage> Open(Size size)
    {
        var page = await browser.Open(size);
        await page.GotoAsync($"{browser.Station.Address}scan");
        return page;
    }
}
