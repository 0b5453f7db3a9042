using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Xunit;

namespace Tagend.StationTests;

/// <summary>A piece at the bench, from its posts to what was measured, with all that may happen to tablet, network and station meanwhile.</summary>
public class BuildTests(Browser browser)
{
    private static readonly PageGetByRoleOptions SaveButton = new() { Name = "Save as built" };

    [Fact]
    public async Task Steps_ByPedal_AreThoseOfTheCardInItsOrder()
    {
        var order = Printed.Order(browser.Station);
        var page = await Open(order, Size.Tablet);
        var posts = Printed.Spec(browser.Station, order).GetProperty("postSetting").GetProperty("tape").GetProperty("in").GetDouble();
        Assert.Equal(posts, Inches(await Shown(page).Locator(".figure-of .unseen").InnerTextAsync()));

        var titles = new List<string>();
        while (await page.Locator("#done").IsVisibleAsync())
        {
            titles.Add(await Shown(page).Locator("h2").InnerTextAsync());
            await page.WaitForTimeoutAsync(310);
            await page.Keyboard.PressAsync("Space");
        }

        Assert.Equal(
            [
                "SET THE POSTS", "LAY UP black", "LAY UP red", "TIE", "SEPARATORS peep", "TWIST, BURNISH", "STRETCH", "REST", "SERVE end A serving",
                "SERVE center serving", "SERVE end B serving", "SERVE nock point", "STRETCH AGAIN", "MEASURE ± 1/16 in", "INSPECT",
            ],
            titles.Select(t => t.ReplaceLineEndings(" ")));
        await page.WaitForTimeoutAsync(310);
        await page.Keyboard.PressAsync("PageUp");
        await Assertions.Expect(page.Locator("#count")).ToHaveTextAsync("Step 15 of 15");
    }

    [Fact]
    public async Task Step_AfterAReloadAKilledStationAndOnAnotherDevice_IsWhereItWas()
    {
        using var station = Station.OfDemoShop();
        var order = Printed.Order(station);
        var page = await Open(order, Size.Tablet, station);
        await page.Locator("#done").ClickAsync();
        await Assertions.Expect(page.Locator("#count")).ToHaveTextAsync("Step 2 of 15");
        station.Kill();
        await page.WaitForTimeoutAsync(310);
        await page.Keyboard.PressAsync("Space");
        await Assertions.Expect(page.Locator("#count")).ToHaveTextAsync("Step 3 of 15");
        station.Start();
        await page.ReloadAsync();
        await Assertions.Expect(page.Locator("#count")).ToHaveTextAsync("Step 3 of 15");

        var other = await Open(order, Size.Phone, station);
        await Assertions.Expect(other.Locator("#count")).ToHaveTextAsync("Step 3 of 15");
        await Assertions.Expect(other.Locator(".warning").First).ToContainTextAsync("Another device has this piece at step 3 since");
        await other.GotoAsync($"{station.Address}build");
        await Assertions.Expect(other.Locator(".row")).ToContainTextAsync($"{order}/string");
    }

    [Fact]
    public async Task Clock_WhileNobodyLooks_GoesOnAndSoundsAtTheEnd()
    {
        var page = await browser.Open(Size.Tablet);
        await page.AddInitScriptAsync("""
            window.tones = 0;
            const start = OscillatorNode.prototype.start;
            OscillatorNode.prototype.start = function () { window.tones++; return start.call(this); };
            """);
        await page.Clock.InstallAsync();
        var order = Printed.Order(browser.Station);
        var minutes = Printed.Spec(browser.Station, order).GetProperty("stretch").GetProperty("minutes").GetInt32();
        await Open(page, order, browser.Station);
        await To(page, "STRETCH");
        Assert.Equal($"{minutes}:00", await Shown(page).Locator(".clock-time").InnerTextAsync());
        await Shown(page).Locator(".clock-start").ClickAsync();
        await page.Clock.FastForwardAsync("05:00");
        var left = minutes - 5;
        await Assertions.Expect(Shown(page).Locator(".clock-time")).ToHaveTextAsync(new Regex($"^({left}:00|{left - 1}:5.)$"));
        await page.ReloadAsync();
        Assert.Equal(0, await page.EvaluateAsync<int>("window.tones"));
        await Shown(page).Locator("h2").ClickAsync(); // a browser sounds only for who has touched the page
        await page.Clock.FastForwardAsync(left * 60_000);
        await Assertions.Expect(Shown(page).Locator(".clock-said")).ToContainTextAsync("Time is up");
        Assert.InRange(await page.EvaluateAsync<int>("window.tones"), 1, 99);
    }

    [Fact]
    public async Task Measured_TypedAsOneNumber_IsAskedAndSaysHowManyTurns()
    {
        var order = Printed.Order(browser.Station);
        var page = await Open(order, Size.Phone);
        await To(page, "Measured");
        foreach (var key in "605/16")
        {
            await page.Locator($".keys [data-key='{key}']").ClickAsync();
        }

        await Assertions.Expect(page.Locator("#verdict .trouble")).ToContainTextAsync("expected a space between the number and its fraction: is it 60 5/16?");
        await Look.Everywhere(page, "build-measured");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "It is 60 5/16" }).ClickAsync();
        await Assertions.Expect(page.Locator("#verdict .done")).ToContainTextAsync("0.063 in longer than ordered (within ± 1/16 in)");
        await page.Locator("#length").FillAsync("60 7/16");
        await Assertions.Expect(page.Locator("#verdict .warning")).ToContainTextAsync("outside ± 1/16 in");
        var advice = await page.Locator("#verdict b").InnerTextAsync();

        // The command says the same of the same build.
        await page.GetByRole(AriaRole.Button, SaveButton).ClickAsync();
        await Assertions.Expect(page.Locator("#answer .done")).ToContainTextAsync("logged");
        var said = Station.Run(["built", $"{order}/string", "--length", "60 7/16", "--again", "--templates", browser.Station.Templates]);
        Assert.EndsWith(advice, said.Output.TrimEnd(), StringComparison.Ordinal);
        Assert.Matches(@"^to correct it: put in \d+(\.5)? turns?, then measure again$", advice);
    }

    [Fact]
    public async Task Save_WithoutNetworkOrItsAnswer_IsSentOnce()
    {
        var order = Printed.Order(browser.Station);
        var page = await Open(order, Size.Tablet);
        await To(page, "Measured");
        await page.Locator("#length").FillAsync("60 5/16");
        await page.Context.SetOfflineAsync(true);
        await page.GetByRole(AriaRole.Button, SaveButton).ClickAsync();
        await Assertions.Expect(page.GetByText($"{order}/string is kept on this device")).ToBeVisibleAsync();
        Assert.Empty(Printed.Job(browser.Station, order).GetProperty("builds").EnumerateArray());

        // The station gets it, and its answer is lost on the way: it is sent again, and is the same build.
        var sent = 0;
        await page.RouteAsync("**/built", async route =>
        {
            await route.FetchAsync();
            sent++;
            await route.AbortAsync();
        });
        await page.Context.SetOfflineAsync(false);
        await page.GotoAsync($"{browser.Station.Address}build");
        await Assertions.Expect(page.GetByText($"{order}/string is kept on this device")).ToBeVisibleAsync();
        await page.WaitForFunctionAsync("() => navigator.locks.query().then(l => l.held.length === 0)");
        Assert.True(sent > 0);
        await page.UnrouteAllAsync();
        await page.ReloadAsync();
        await Assertions.Expect(page.GetByText("is kept on this device")).ToHaveCountAsync(0);
        var build = Assert.Single(Printed.Job(browser.Station, order).GetProperty("builds").EnumerateArray());
        Assert.Equal(60.3125, build.GetProperty("measured").GetProperty("in").GetDouble());
    }

    [Fact]
    public async Task Save_OfAPieceThatIsBuilt_AsksAndCorrects()
    {
        var order = Printed.Order(browser.Station);
        Assert.Equal(0, Station.Run(["built", $"{order}/string", "--length", "60 1/4", "--templates", browser.Station.Templates]).ExitCode);
        var page = await Open(order, Size.Tablet);
        await To(page, "Measured");
        await page.Locator("#length").FillAsync("60 5/16");
        await page.GetByRole(AriaRole.Button, SaveButton).ClickAsync();
        await Assertions.Expect(page.Locator("#answer")).ToContainTextAsync($"{order}/string, revision 1, is logged as built already");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { NameRegex = new Regex("^Correct build") }).ClickAsync();
        await Assertions.Expect(page.Locator("#answer .done")).ToContainTextAsync("logged");
        var builds = Printed.Job(browser.Station, order).GetProperty("builds").EnumerateArray().ToList();
        Assert.Equal([true, false], builds.Select(b => b.GetProperty("struck").GetBoolean()));
        Assert.Equal(60.3125, builds[1].GetProperty("measured").GetProperty("in").GetDouble());
    }

    [Fact]
    public async Task SupersededPiece_TakesTheWholeScreen()
    {
        var order = Printed.Order(browser.Station);
        var page = await Open(order, Size.Tablet);
        var first = page.Url;
        Printed.Order(browser.Station, length: "60 3/8", order: order);
        await page.GotoAsync(first);
        await Assertions.Expect(page.Locator(".held")).ToContainTextAsync("superseded by revision 2");
        Assert.Equal(0, await page.Locator(".bench").CountAsync());
        await Look.Everywhere(page, "build-superseded");
        await page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Open the newest papers" }).ClickAsync();
        await Assertions.Expect(page.Locator(".bench-head h1")).ToContainTextAsync("revision 2");
    }

    [Theory]
    [InlineData("SET THE POSTS")]
    [InlineData("STRETCH")]
    [InlineData("SERVE")]
    public async Task Step_InEverySizeAndShade_HasNoBarrierAndIsReadFromTwoMeters(string title)
    {
        var page = await Open(Printed.Order(browser.Station), Size.Tablet);
        await To(page, title);

        // Capitals of 10 mm are read from 2 m (200 : 1); a tablet has about 5.5 px a millimeter, and Inter's are 0.727 em high.
        var size = await Shown(page).Locator(".figure").First.EvaluateAsync<double>("e => parseFloat(getComputedStyle(e).fontSize)");
        Assert.InRange(size * 0.727, 55, 400);
        await Look.Everywhere(page, $"build-{title.Split(' ')[0]}");
    }

    private static ILocator Shown(IPage page) => page.Locator(".step:not([hidden])");

    private static double Inches(string text)
    {
        var match = Regex.Match(text, @"^(\d+)(?: (\d+)/(\d+))? in$");
        return double.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture)
            + (match.Groups[2].Success ? double.Parse(match.Groups[2].Value, CultureInfo.InvariantCulture) / double.Parse(match.Groups[3].Value, CultureInfo.InvariantCulture) : 0);
    }

    private async Task<IPage> Open(string order, Size size, Station? station = null)
    {
        var page = await browser.Open(size);
        await Open(page, order, station ?? browser.Station);
        return page;
    }

    private static async Task Open(IPage page, string order, Station station)
    {
        await page.GotoAsync($"{station.Address}build");
        await page.GetByLabel("Order and piece, or scan a card").FillAsync($"{order}/string");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator(".bench-head h1")).ToContainTextAsync($"{order}/string");
        await Assertions.Expect(page.Locator("#count")).Not.ToBeEmptyAsync();
    }

    /// <summary>Goes on to the first step of a title, as fast as a hand could not.</summary>
    private static async Task To(IPage page, string title) => await page.EvaluateAsync(
        """
        title => {
            const now = performance.now.bind(performance);
            let ahead = 0;
            performance.now = () => now() + (ahead += 1000);
            const shown = () => document.querySelector(".step:not([hidden]) h2").textContent;
            for (let i = 0; i < 40 && !shown().startsWith(title); i++) {
                document.getElementById("done").click();
            }
        }
        """,
        title);
}
