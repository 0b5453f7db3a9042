using System.Net;
using Microsoft.Playwright;
using Xunit;

namespace Tagend.StationTests;

/// <summary>What every screen has: its frame, sizes, light and dark, and no barrier.</summary>
public class FrameTests(Browser browser)
{
    /// <summary>All screens that open without anything chosen. A new screen is an entry here.</summary>
    public static TheoryData<string> Screens => ["/orders"];

    [Theory]
    [MemberData(nameof(Screens))]
    public async Task Screen_InEverySizeAndShade_HasNoBarrierAndFits(string path)
    {
        var page = await browser.Open(Size.Desk);
        var faults = new List<string>();
        page.Console += (_, line) => faults.AddRange(line.Type == "error" ? [line.Text] : []);
        await page.GotoAsync($"{browser.Station.Address}{path[1..]}");
        foreach (var shade in new[] { ColorScheme.Light, ColorScheme.Dark })
        {
            await page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = shade });
            foreach (var size in Size.All)
            {
                await page.SetViewportSizeAsync(size.Width, size.Height);
                await Look.At(page, path, size, shade);
            }
        }

        Assert.Empty(faults);
    }

    [Fact]
    public async Task Start_OfASecondStationOnThePort_SaysThatOneRuns()
    {
        var port = browser.Station.Port;
        var said = await Task.Run(() => Station.Run(["station", "--port", $"{port}", "--no-browser", "--templates", browser.Station.Templates]));
        Assert.Equal(5, said.ExitCode);
        Assert.Equal($"tagend: a station is running at http://localhost:{port}/ already: open it in the browser, or start another with --port\n", said.Errors);
    }

    [Fact]
    public void Stop_ByCtrlC_EndsInOrder()
    {
        using var station = Station.OfDemoShop();
        Assert.Equal(0, station.Stop());
    }

    [Fact]
    public async Task Page_ThatIsNotThere_SaysSoInWords()
    {
        using var client = new HttpClient();
        var answer = await client.GetAsync(new Uri(browser.Station.Address, "nothing"), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Contains("There is nothing at this address.", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }
}
