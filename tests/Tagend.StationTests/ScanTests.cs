using Microsoft.Playwright;
using Xunit;

namespace Tagend.StationTests;

/// <summary>Tags before the camera, on photos and from a scanner.</summary>
public class ScanTests(Browser browser, DemoStation demo) : IClassFixture<DemoStation>
{
    /// <summary>An order of the demo, and its pieces.</summary>
    private const string Set = "1001";

    private static readonly string[] Pieces = ["buss", "control", "string"];

    [Fact]
    public async Task Camera_ThatShowsATag_SaysWhoseItIsAndItsPosts()
    {
        Printed.Order(demo.Station, order: Camera.Order);
        var page = await Open(Size.Phone);
        Assert.SkipUnless(browser.HasCamera, "ffmpeg or pdftoppm is not installed");
        await Assertions.Expect(page.Locator("#found h2")).ToContainTextAsync(Camera.Order);
        await Assertions.Expect(page.Locator(".found-who")).ToContainTextAsync("Demo customer 1");
        await Look.Everywhere(page, "scan-found");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Build it" }).ClickAsync();
        await Assertions.Expect(page.Locator(".bench-head h1")).ToContainTextAsync($"{Camera.Order}/string");
    }

    [Fact]
    public async Task Photo_OfABagsTagAndItsPieces_ListsEachPieceOnce()
    {
        var picture = SetOfThree();
        var page = await Open(Size.Phone);
        await page.Locator("#photo").SetInputFilesAsync(picture);
        await Assertions.Expect(page.Locator("#found > h2")).ToHaveTextAsync("3 tags");
        foreach (var piece in Pieces)
        {
            await Assertions.Expect(page.Locator("#found form.row", new PageLocatorOptions { HasText = $"{Set}/{piece}" })).ToContainTextAsync("printed");
        }

        await Look.Everywhere(page, "scan-list");
        await page.Locator("#found form.row", new PageLocatorOptions { HasText = $"{Set}/buss" }).GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = "Build" }).ClickAsync();
        await Assertions.Expect(page.Locator(".bench-head h1")).ToContainTextAsync($"{Set}/buss");
    }

    [Fact]
    public async Task Photo_ThatIsReadWhileTheCameraStarts_StopsIt()
    {
        var picture = SetOfThree();
        var read = new TaskCompletionSource();
        var page = await browser.Open(Size.Phone);
        await page.RouteAsync("**/scan/photo", async route =>
        {
            await read.Task.WaitAsync(TestContext.Current.CancellationToken);
            await route.ContinueAsync();
        });
        await page.RouteAsync("**/scan/frame", route => route.FulfillAsync(new RouteFulfillOptions { Status = 204 }));
        await page.GotoAsync($"{demo.Station.Address}scan");
        await Assertions.Expect(page.Locator("#video")).ToBeVisibleAsync();
        await page.Locator("#photo").SetInputFilesAsync(picture);
        await Assertions.Expect(page.Locator("#camera-said")).ToHaveTextAsync("The photo is being read.");
        await page.Locator("#camera").ClickAsync();
        await Assertions.Expect(page.Locator("#video")).ToBeVisibleAsync();
        read.SetResult();
        await Assertions.Expect(page.Locator("#found > h2")).ToHaveTextAsync("3 tags");
        Assert.False(await page.EvaluateAsync<bool>("() => document.getElementById('video').srcObject.active"));
    }

    [Fact]
    public async Task Scanner_WithABagTag_ShowsWhatIsInIt()
    {
        var bag = Assert.Single(Printed.Codes(SetOfThree()), c => c.Reading == "bag");
        var page = await Open(Size.Desk);
        await Scan(page, bag.Text);
        await Assertions.Expect(page.Locator("#found h2")).ToHaveTextAsync($"Bag of order {Set}");
        Assert.Equal(Pieces, (await page.Locator("#found .row b").AllInnerTextsAsync()).Select(n => n.Replace($"{Set}/", "", StringComparison.Ordinal)).Order(StringComparer.Ordinal));
        await page.Locator("#found .row").First.GetByRole(AriaRole.Link, new LocatorGetByRoleOptions { Name = "More" }).ClickAsync();
        await Arrival.At(page, $"/book/{Set}/*");
    }

    [Fact]
    public async Task Scanner_WithASpoolTag_TakesTheSpoolToTheBench()
    {
        var folder = Path.Combine(demo.Station.Folder, "spools");
        var received = Station.Run(["spools", "receive", "hmpe-0145", "--color", "black", "--lot", "SCAN-1", "--length", "900 m", "--out", folder, "--templates", demo.Station.Templates]);
        Assert.True(received.ExitCode == 0, received.Errors);
        var picture = Path.Combine(folder, "spool");
        Assert.SkipUnless(Tool.Runs("pdftoppm", "-r", "200", "-png", "-singlefile", Path.Combine(folder, "spools.pdf"), picture), "pdftoppm is not installed");
        var tag = Assert.Single(Printed.Codes($"{picture}.png"));
        Assert.Equal("spool", tag.Reading);
        var page = await Open(Size.Tablet);
        await Scan(page, tag.Text);
        await Assertions.Expect(page.Locator("#found .done")).ToContainTextAsync("lot SCAN-1: at bench");
        await Look.Everywhere(page, "scan-spool");
        await page.GotoAsync($"{demo.Station.Address}book/spools");
        await Assertions.Expect(page.Locator(".spool", new PageLocatorOptions { HasText = "SCAN-1" })).ToContainTextAsync("at bench");
    }

    [Theory]
    [InlineData("NotAllowedError", "The camera is not allowed for this page")]
    [InlineData("NotFoundError", "There is no camera that can be used")]
    [InlineData("", "lends a camera only to a page from this machine or over HTTPS")]
    public async Task Camera_ThatCannotBeUsed_SaysWhyAndWhatElse(string fault, string sentence)
    {
        // As browsers answer (W3C Media Capture and Streams, 10.3); none of it where the page came over plain HTTP from elsewhere.
        var page = await browser.Open(Size.Phone);
        await page.AddInitScriptAsync($$"""
            Object.defineProperty(navigator, "mediaDevices", { value: "{{fault}}" ? { getUserMedia: () => Promise.reject(new DOMException("", "{{fault}}")) } : undefined });
            """);
        await page.GotoAsync($"{demo.Station.Address}scan");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Use the camera" }).ClickAsync();
        await Assertions.Expect(page.Locator("#camera-said")).ToContainTextAsync(sentence);
        await Assertions.Expect(page.Locator("#camera-said")).ToContainTextAsync("take a photo instead");
        await Assertions.Expect(page.Locator("#video")).ToBeHiddenAsync();
        if (fault == "NotAllowedError")
        {
            await Look.Everywhere(page, "scan-refused");
        }
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
        var order = Printed.Order(demo.Station);
        var old = Printed.Job(demo.Station, order).GetProperty("tag").GetString()!;
        Printed.Order(demo.Station, length: "60 3/8", order: order);
        var page = await Open(Size.Tablet);
        await Scan(page, old);
        await Assertions.Expect(page.Locator(".held")).ToContainTextAsync("superseded by revision 2");
        await Assertions.Expect(page.Locator("#text")).ToBeHiddenAsync();
        await Look.Everywhere(page, "scan-superseded");
    }

    [Fact]
    public async Task Camera_ThatWakesAfterAScannersTag_LeavesWhatItSays()
    {
        var order = Printed.Order(demo.Station);
        var page = await browser.Open(Size.Desk);
        await page.AddInitScriptAsync("""
            window.asked = Promise.withResolvers();
            const query = navigator.permissions.query.bind(navigator.permissions);
            navigator.permissions.query = async what => { const answer = await query(what); await window.asked.promise; return answer; };
            """);
        await page.GotoAsync($"{demo.Station.Address}scan");
        await Scan(page, $"{order}/string");
        await Assertions.Expect(page.Locator("#found h2")).ToContainTextAsync(order);
        Assert.Equal("granted", await page.EvaluateAsync<string>(
            "async () => { window.asked.resolve(); return (await navigator.permissions.query({ name: 'camera' })).state; }"));
        Assert.Contains(order, await page.Locator("#found").InnerTextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Camera_ThatSeesATagWhileAScannerTypes_LeavesTheKeysTheirField()
    {
        var order = Printed.Order(demo.Station);
        var (asked, typed) = (new TaskCompletionSource(), new TaskCompletionSource());
        var page = await browser.Open(Size.Desk);
        await page.RouteAsync("**/scan/frame", async route =>
        {
            asked.TrySetResult();
            await typed.Task.WaitAsync(TestContext.Current.CancellationToken);
            await route.FulfillAsync(new RouteFulfillOptions { Status = 200, ContentType = "text/html", Body = "<h2>what the camera saw</h2>" });
        });
        await page.GotoAsync($"{demo.Station.Address}scan");
        await asked.Task.WaitAsync(TimeSpan.FromMilliseconds(Browser.MostWait), TestContext.Current.CancellationToken);
        await page.Locator("#text").FillAsync($"{order}/str");
        var answered = page.WaitForResponseAsync("**/scan/frame");
        typed.SetResult();
        await (await answered).FinishedAsync();
        await page.EvaluateAsync("() => new Promise(requestAnimationFrame)");
        await page.Keyboard.TypeAsync("ing");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#found h2")).ToContainTextAsync(order);
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
        var (first, second) = (Printed.Order(demo.Station), Printed.Order(demo.Station));
        var page = await Open(Size.Desk);
        await Scan(page, $"{first}/string");
        await Assertions.Expect(page.Locator("#found h2")).ToContainTextAsync(first);
        await Scan(page, Printed.Job(demo.Station, second).GetProperty("tag").GetString()!);
        await Assertions.Expect(page.Locator("#found h2")).ToContainTextAsync(second);
        Assert.Equal("", await page.Locator("#text").InputValueAsync());
    }

    /// <summary>A picture of the set's tags; skips the test where it cannot be made.</summary>
    private string SetOfThree()
    {
        var printed = Station.Run([
            "print", Path.Combine(Station.Root, "demo-orders", "demo.csv"), "--order", Set, "--only", "tags", "--out", Printed.FolderOf(demo.Station, Set),
            "--templates", demo.Station.Templates]);
        Assert.True(printed.ExitCode == 0, printed.Errors);
        var picture = Printed.Tags(demo.Station, Set);
        Assert.SkipWhen(picture is null, "pdftoppm is not installed");
        return picture;
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
        await page.GotoAsync($"{demo.Station.Address}scan");
        return page;
    }
}
