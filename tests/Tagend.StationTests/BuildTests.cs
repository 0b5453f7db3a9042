using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Xunit;

namespace Tagend.StationTests;

/// <summary>A piece at the bench, from its posts to what was measured, with all that may happen to tablet, network and station meanwhile.</summary>
public class BuildTests(Browser browser, DemoStation demo) : IClassFixture<DemoStation>
{
    private static readonly PageGetByRoleOptions SaveButton = new() { Name = "Save as built" };

    [Fact]
    public async Task Steps_ByPedal_AreThoseOfTheCardInItsOrder()
    {
        var order = Printed.Order(demo.Station);
        var page = await Open(order, Size.Tablet);
        var posts = Printed.Spec(demo.Station, order).GetProperty("postSetting").GetProperty("tape").GetProperty("in").GetDouble();
        Assert.Equal(posts, Inch.Read(await Shown(page).Locator(".figure-of .unseen").InnerTextAsync()));

        // A foot that bounces goes on once.
        await page.EvaluateAsync("""
            () => ["keydown", "keydown"].forEach(e => document.body.dispatchEvent(new KeyboardEvent(e, { key: " ", bubbles: true })))
            """);
        await Assertions.Expect(page.Locator("#count")).ToHaveTextAsync("Step 2 of 15");
        await Bench.WithoutBounce(page);
        await page.Keyboard.PressAsync("PageUp");
        var titles = new List<string>();
        while (await page.Locator("#done").IsVisibleAsync())
        {
            titles.Add(await Shown(page).Locator("h2").InnerTextAsync());
            await page.Keyboard.PressAsync("Space");
        }

        Assert.Equal(
            [
                "SET THE POSTS", "LAY UP black", "LAY UP red", "TIE", "SEPARATORS peep", "TWIST, BURNISH", "STRETCH", "REST", "SERVE end A serving",
                "SERVE center serving", "SERVE end B serving", "SERVE nock point", "STRETCH AGAIN", "MEASURE ± 1/16 in", "INSPECT",
            ],
            titles.Select(t => t.ReplaceLineEndings(" ")));
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
        await Bench.WithoutBounce(page);
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
        var order = Printed.Order(demo.Station);
        var minutes = Printed.Spec(demo.Station, order).GetProperty("stretch").GetProperty("minutes").GetInt32();
        await Open(page, order, demo.Station);
        await Bench.To(page, "STRETCH");
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
        var order = Printed.Order(demo.Station);
        var page = await Open(order, Size.Phone);
        await Bench.To(page, "Measured");
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
        var said = Station.Run(["built", $"{order}/string", "--length", "60 7/16", "--again", "--templates", demo.Station.Templates]);
        Assert.EndsWith(advice, said.Output.TrimEnd(), StringComparison.Ordinal);
        Assert.Matches(@"^to correct it: put in \d+(\.5)? turns?, then measure again$", advice);
    }

    [Fact]
    public async Task Save_WithoutNetworkOrItsAnswer_IsSentOnce()
    {
        var order = Printed.Order(demo.Station);
        var page = await Open(order, Size.Tablet);
        await Bench.To(page, "Measured");
        await page.Locator("#length").FillAsync("60 5/16");
        await page.Context.SetOfflineAsync(true);
        await page.GetByRole(AriaRole.Button, SaveButton).ClickAsync();
        await Assertions.Expect(page.GetByText($"{order}/string is kept on this device")).ToBeVisibleAsync();
        Assert.Empty(Printed.Job(demo.Station, order).GetProperty("builds").EnumerateArray());

        // The station gets it, and its answer is lost on the way: it is sent again, and is the same build.
        var sent = new TaskCompletionSource();
        await page.RouteAsync("**/built", async route =>
        {
            await route.FetchAsync();
            sent.TrySetResult();
            await route.AbortAsync();
        });
        await page.Context.SetOfflineAsync(false);
        await page.GotoAsync($"{demo.Station.Address}build");
        await Assertions.Expect(page.GetByText($"{order}/string is kept on this device")).ToBeVisibleAsync();
        await sent.Task.WaitAsync(TimeSpan.FromSeconds(90), TestContext.Current.CancellationToken);
        await page.WaitForFunctionAsync("() => navigator.locks.query().then(l => l.held.length === 0)");
        await page.UnrouteAllAsync();
        await page.ReloadAsync();
        await Assertions.Expect(page.GetByText("is kept on this device")).ToHaveCountAsync(0);
        var build = Assert.Single(Printed.Job(demo.Station, order).GetProperty("builds").EnumerateArray());
        Assert.Equal(60.3125, build.GetProperty("measured").GetProperty("in").GetDouble());
    }

    [Fact]
    public async Task Save_OfAPieceThatIsBuilt_AsksAndCorrects()
    {
        var order = Printed.Order(demo.Station);
        Assert.Equal(0, Station.Run(["built", $"{order}/string", "--length", "60 1/4", "--templates", demo.Station.Templates]).ExitCode);
        var page = await Open(order, Size.Tablet);
        await Bench.To(page, "Measured");
        await page.Locator("#length").FillAsync("60 5/16");
        await page.GetByRole(AriaRole.Button, SaveButton).ClickAsync();
        await Assertions.Expect(page.Locator("#answer")).ToContainTextAsync($"{order}/string, revision 1, is logged as built already");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { NameRegex = new Regex("^Correct build") }).ClickAsync();
        await Assertions.Expect(page.Locator("#answer .done")).ToContainTextAsync("logged");
        var builds = Printed.Job(demo.Station, order).GetProperty("builds").EnumerateArray().ToList();
        Assert.Equal([true, false], builds.Select(b => b.GetProperty("struck").GetBoolean()));
        Assert.Equal(60.3125, builds[1].GetProperty("measured").GetProperty("in").GetDouble());
    }

    [Fact]
    public async Task Save_InPlaceOfABuildThatWasStruckMeanwhile_IsAnsweredInThePageAndCanBeSavedAgain()
    {
        var order = Printed.Order(demo.Station);
        Assert.Equal(0, Station.Run(["built", $"{order}/string", "--length", "60 1/4", "--templates", demo.Station.Templates]).ExitCode);
        var page = await Open(order, Size.Tablet);
        await Bench.To(page, "Measured");
        await page.Locator("#length").FillAsync("60 5/16");
        await page.GetByRole(AriaRole.Button, SaveButton).ClickAsync();
        var correct = page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { NameRegex = new Regex("^Correct build") });
        var number = (await correct.InnerTextAsync()).Split(' ')[^1];
        Assert.Equal(0, Station.Run(["built", "--strike", number, "--templates", demo.Station.Templates]).ExitCode);
        await correct.ClickAsync();
        await Assertions.Expect(page.Locator("#answer .trouble")).ToContainTextAsync($"build {number} was struck or corrected earlier");
        await Assertions.Expect(page.Locator("#answer h1")).ToHaveCountAsync(0);
        await page.GetByRole(AriaRole.Button, SaveButton).ClickAsync();
        await Assertions.Expect(page.Locator("#answer .done")).ToContainTextAsync("logged");
        await Assertions.Expect(page.GetByText("is not saved yet")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task Save_OfTheBuildThatMakesAFit_NamesTheCardsThatWouldBeSetOtherwise()
    {
        // Every string came out 3/16 in longer than ordered, so a turn takes up less than the rule says.
        const int enough = 5;
        using var station = Station.OfDemoShop();
        var orders = Enumerable.Range(0, enough).Select(_ => Printed.Order(station)).ToList();
        var open = Printed.Order(station);
        foreach (var order in orders.SkipLast(1))
        {
            Assert.Equal(0, Station.Run(["built", $"{order}/string", "--length", "60 7/16", "--templates", station.Templates]).ExitCode);
        }

        var page = await Open(orders[^1], Size.Phone, station);
        await Bench.To(page, "Measured");
        await page.Locator("#length").FillAsync("60 7/16");
        await page.GetByRole(AriaRole.Button, SaveButton).ClickAsync();
        await Assertions.Expect(page.Locator("#answer .warning")).ToContainTextAsync($"1 card printed and not built would be set otherwise: {open}/string.");
        await page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "See which, and how" }).ClickAsync();
        var row = page.Locator("#moved .row");
        await Assertions.Expect(row).ToContainTextAsync($"{open}/string");
        var wouldBe = Regex.Match(await row.InnerTextAsync(), @"posts at (.* in) \(card (.* in)\)");
        var now = Printed.Spec(station, open).GetProperty("postSetting").GetProperty("tape").GetProperty("in").GetDouble();
        Assert.Equal(now, Inch.Read(wouldBe.Groups[1].Value));
        Assert.InRange(Inch.Read(wouldBe.Groups[2].Value) - now, 0.125, 0.25);
        await Look.Everywhere(page, "book-moved");
    }

    [Fact]
    public async Task SupersededPiece_TakesTheWholeScreen()
    {
        var order = Printed.Order(demo.Station);
        var page = await Open(order, Size.Tablet);
        var first = page.Url;
        Printed.Order(demo.Station, length: "60 3/8", order: order);
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
        var page = await Open(Printed.Order(demo.Station), Size.Tablet);
        await Bench.To(page, title);

        // Capitals of 10 mm are read from 2 m (200 : 1); a tablet has about 5.5 px a millimeter, and Inter's are 0.727 em high.
        var size = await Shown(page).Locator(".figure").First.EvaluateAsync<double>("e => parseFloat(getComputedStyle(e).fontSize)");
        Assert.InRange(size * 0.727, 55, 400);
        await Look.Everywhere(page, $"build-{title.Split(' ')[0]}");
    }

    private static ILocator Shown(IPage page) => page.Locator(".step:not([hidden])");

    private async Task<IPage> Open(string order, Size size, Station? station = null)
    {
        var page = await browser.Open(size);
        await Open(page, order, station ?? demo.Station);
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
}
