using System.Text.Json;
using Microsoft.Playwright;
using Tagend.Books;
using Xunit;

namespace Tagend.StationTests;

/// <summary>Two stations, each with a shop's folder of its own, that share a job book on a server: PostgreSQL's own, in a folder of the tests'.</summary>
public sealed class TwoStationsTests : IDisposable
{
    private readonly Browser _browser;
    private readonly Server _server;
    private readonly string _book;
    private readonly Station _left;
    private readonly Station _right;

    public TwoStationsTests(Browser browser)
    {
        Assert.SkipWhen(Server.Missing is not null, Server.Missing ?? "");
        _browser = browser;
        _server = new Server(isSafe: false);
        _book = _server.AddressOf(_server.NewDatabase());
        (_left, _right) = (AtBench("left"), AtBench("right"));
    }

    [Fact]
    public async Task Build_EnteredOnOne_IsSeenAndAskedAboutOnTheOther()
    {
        Print("701");
        var (left, right) = (await Measured(_left, "60 5/16"), await Measured(_right, "60 1/4"));
        var seen = await _browser.Open(Size.Desk);
        await seen.GotoAsync($"{_right.Address}book/701/string");
        await Assertions.Expect(seen.Locator("main")).Not.ToContainTextAsync("60 5/16");

        await Save(left);
        await Assertions.Expect(left.Locator("#answer .done")).ToContainTextAsync("build 1 logged");
        await seen.ReloadAsync();
        await Assertions.Expect(seen.Locator("main")).ToContainTextAsync("60 5/16");

        await Save(right);
        await Assertions.Expect(right.Locator("#answer")).ToContainTextAsync("701/string, revision 1, is logged as built already: build 1 of");
        Assert.Single(Builds());
        await right.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "It is one more" }).ClickAsync();
        await Assertions.Expect(right.Locator("#answer .done")).ToContainTextAsync("build 2 logged");
        await seen.GotoAsync($"{_left.Address}book/701/string");
        await Assertions.Expect(seen.Locator("main")).ToContainTextAsync("60 1/4");
        Assert.Equal([("left", 60.3125), ("right", 60.25)], Builds().Select(b => (b.GetProperty("bench").GetString()!, b.GetProperty("measured").GetProperty("in").GetDouble())));
    }

    [Fact]
    public async Task Server_ThatIsAway_IsToldOnBothAndTheBuildIsEnteredWhenItIsBack()
    {
        Print("702");
        var left = await Measured(_left, "60 5/16", "702");
        var right = await _browser.Open(Size.Desk);
        _server.Stop();
        await Save(left);
        await Assertions.Expect(left.Locator("#notice")).ToContainTextAsync("The station cannot save this now; it stays on this device.");
        await Assertions.Expect(left.Locator("#notice")).ToContainTextAsync("the server of the job book does not answer");
        await Assertions.Expect(left.GetByText("702/string is kept on this device")).ToBeVisibleAsync();
        await right.GotoAsync($"{_right.Address}book");
        await Assertions.Expect(right.Locator(".trouble")).ToContainTextAsync("the server of the job book does not answer");
        await Assertions.Expect(right.Locator(".trouble")).ToContainTextAsync("check that it is running and that this machine can reach it, then try again");

        _server.Start();
        await Assertions.Expect(left.GetByText("is kept on this device")).ToHaveCountAsync(0);
        await right.GotoAsync($"{_right.Address}book/702/string");
        await Assertions.Expect(right.Locator("main")).ToContainTextAsync("60 5/16");
        Assert.Single(Builds("702"));
    }

    [Fact]
    public async Task Station_ThatIsAway_IsToldOnItsOwnPageAndTheOtherGoesOn()
    {
        Print("703");
        var (left, right) = (await Measured(_left, "60 5/16", "703"), await Measured(_right, "60 1/4", "703"));
        _left.Kill();
        await Save(left);
        await Assertions.Expect(left.GetByText("703/string is kept on this device, and is sent when the station answers")).ToBeVisibleAsync();
        await Save(right);
        await Assertions.Expect(right.Locator("#answer .done")).ToContainTextAsync("build 1 logged");

        // What the left one kept is asked about when it is sent.
        _left.Start(("TAGEND_BENCH", "left"));
        await Assertions.Expect(left.GetByText("703/string is not saved yet: there is a question")).ToBeVisibleAsync();
        await left.ReloadAsync();
        await left.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "It is the same" }).ClickAsync();
        await left.ReloadAsync();
        await Assertions.Expect(left.GetByText("is not saved yet")).ToHaveCountAsync(0);
        Assert.Equal("right", Assert.Single(Builds("703")).GetProperty("bench").GetString());
    }

    public void Dispose()
    {
        _left.Dispose();
        _right.Dispose();
        _server.Dispose();
    }

    private Station AtBench(string name)
    {
        var station = Station.Empty("--job-book", _book);
        station.Begin();
        station.Start(("TAGEND_BENCH", name));
        return station;
    }

    private void Print(string order)
    {
        var path = Path.Combine(_left.Folder, $"{order}.csv");
        File.WriteAllText(path, $"order,piece,kind,finished_length,strands,colors\n{order},string,compound-string,60 1/4,24,black:12 red:12\n");
        var said = Station.Run(["print", path, "--out", Path.Combine(_left.Folder, "papers"), "--templates", _left.Templates, "--job-book", _book]);
        Assert.True(said.ExitCode == 0, said.Errors);
    }

    private List<JsonElement> Builds(string order = "701")
    {
        var jobs = Station.Run(["jobs", "--order", order, "--json", "--templates", _left.Templates, "--job-book", _book]);
        return [.. Assert.Single(JsonDocument.Parse(jobs.Output).RootElement.EnumerateArray()).GetProperty("builds").EnumerateArray()];
    }

    /// <summary>A page of a station with a piece at its last step and its length typed.</summary>
    private async Task<IPage> Measured(Station station, string length, string order = "701")
    {
        var page = await _browser.Open(Size.Tablet);
        await page.GotoAsync($"{station.Address}build");
        await page.GetByLabel("Order and piece, or scan a card").FillAsync($"{order}/string");
        await page.Keyboard.PressAsync("Enter");
        await Bench.To(page, "Measured");
        await page.Locator("#length").FillAsync(length);
        return page;
    }

    private static Task Save(IPage page) => page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Save as built" }).ClickAsync();
}
