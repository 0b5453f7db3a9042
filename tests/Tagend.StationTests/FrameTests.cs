using System.Net;
using Microsoft.Playwright;
using Xunit;

namespace Tagend.StationTests;

/// <summary>What every screen has: its frame, sizes, light and dark, and no barrier.</summary>
public class FrameTests(Browser browser, DemoStation demo) : IClassFixture<DemoStation>
{
    /// <summary>All screens that open without anything chosen. A new screen is an entry here.</summary>
    public static TheoryData<string> Screens => ["/orders", "/build", "/scan", "/book", "/book/lot", "/shop", "/devices"];

    [Theory]
    [MemberData(nameof(Screens))]
    public async Task Screen_InEverySizeAndShade_HasNoBarrierAndFits(string path)
    {
        var page = await browser.Open(Size.Desk);
        var faults = new List<string>();
        page.Console += (_, line) => faults.AddRange(line.Type == "error" ? [line.Text] : []);
        await page.GotoAsync($"{demo.Station.Address}{path[1..]}");
        await Look.Everywhere(page, path);
        Assert.Empty(faults);
    }

    [Fact]
    public async Task Page_OfANewBrowser_WeighsAtMost150Kilobytes()
    {
        var page = await browser.Open(Size.Phone);
        var weights = new List<Task<int>>();
        page.Response += (_, answer) => weights.Add(Task.Run(async () => (await answer.BodyAsync()).Length));
        await page.GotoAsync($"{demo.Station.Address}devices", new PageGotoOptions { WaitUntil = WaitUntilState.NetworkIdle });
        Assert.InRange((await Task.WhenAll(weights)).Sum(), 50_000, 150_000);
    }

    [Fact]
    public async Task Start_OfASecondStationOnThePort_SaysThatOneRuns()
    {
        var port = demo.Station.Port;
        var said = await Task.Run(() => Station.Run(["station", "--port", $"{port}", "--no-browser", "--templates", demo.Station.Templates]));
        Assert.Equal(5, said.ExitCode);
        Assert.Equal($"tagend: a station is running at http://localhost:{port}/ already: open it in the browser, or start another with --port\n", said.Errors);
    }

    [Fact]
    public async Task Page_OfAStationThatIsGone_StillOpensInABrowserThatSawIt()
    {
        using var station = Station.OfDemoShop();
        var page = await browser.Open(Size.Phone);
        await page.GotoAsync($"{station.Address}shop");
        await page.EvaluateAsync("() => navigator.serviceWorker.ready.then(() => true)");
        await page.WaitForFunctionAsync("() => navigator.serviceWorker.controller !== null");
        await page.ReloadAsync();
        station.Kill();
        await page.ReloadAsync();
        await Assertions.Expect(page.Locator("h1")).ToHaveTextAsync("Shop");
    }

    [Fact]
    public void Stop_WhenItIsTold_EndsInOrder()
    {
        using var station = Station.OfDemoShop();
        Assert.Equal(0, station.Stop());
    }

    [Fact]
    public async Task Page_ThatIsNotThere_SaysSoInWords()
    {
        using var client = new HttpClient();
        var answer = await client.GetAsync(new Uri(demo.Station.Address, "nothing"), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Contains("There is nothing at this address.", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }
}
