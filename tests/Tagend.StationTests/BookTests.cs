using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Xunit;

namespace Tagend.StationTests;

/// <summary>The job book, the spools and the fit in the browser; the program's own commands say what is in the book.</summary>
public class BookTests(Browser browser)
{
    [Fact]
    public async Task Search_AsOneTypes_FindsCustomersInAnyCase()
    {
        var order = Printed.Order(browser.Station, customer: "Zephyrine Example");
        var page = await Open("book", Size.Phone);
        await page.Locator("#q").PressSequentiallyAsync("zephyr");
        await Assertions.Expect(page.Locator("#jobs .row")).ToHaveCountAsync(1);
        await Assertions.Expect(page.Locator("#jobs .row")).ToContainTextAsync($"{order}/string");
        await page.Locator("#q").FillAsync("nobody has this");
        await Assertions.Expect(page.Locator("#jobs")).ToContainTextAsync("Nothing in the book has this.");
        await page.Locator("#q").FillAsync($"{order}/string");
        await page.Locator("#jobs .row").ClickAsync();
        await Assertions.Expect(page.Locator("h1")).ToHaveTextAsync($"{order}/string");
        await Look.Everywhere(page, "book-piece");
    }

    [Fact]
    public async Task Piece_ChangedRemadeAndShipped_IsSoInTheBook()
    {
        var order = Printed.Order(browser.Station);
        var page = await Open($"book/{order}/string", Size.Desk);
        await page.Locator("#column").SelectOptionAsync("finished_length");
        await page.Locator("#text").FillAsync("6o 3/8");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Make the new revision and print it" }).ClickAsync();
        await Assertions.Expect(page.Locator(".trouble").First).ToContainTextAsync("expected a length such as 60 1/4, 60.25 in or 1530 mm");
        await page.Locator("#text").FillAsync("60 3/8");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Make the new revision and print it" }).ClickAsync();
        var paper = await page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { NameRegex = new Regex($"^Open {order}-string-card") }).GetAttributeAsync("href");
        var made = await page.APIRequest.GetAsync($"{browser.Station.Address}{paper![1..]}");
        Assert.Equal("%PDF-", System.Text.Encoding.ASCII.GetString((await made.BodyAsync())[..5]));
        Assert.Equal(2, Printed.Job(browser.Station, order).GetProperty("revision").GetInt32());

        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Make it again" }).ClickAsync();
        await Assertions.Expect(page.Locator(".trouble")).ToContainTextAsync("say why with --reason");
        await page.Locator("#reason").FillAsync("cut too short");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Make it again" }).ClickAsync();
        await Assertions.Expect(page.Locator(".state").First).ToContainTextAsync("remade");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "It is shipped" }).ClickAsync();
        await Assertions.Expect(page.Locator(".done").Last).ToContainTextAsync("not logged as built: string");
        Assert.Equal("shipped", Printed.Job(browser.Station, order).GetProperty("state").GetString());
        var log = Station.Run(["log", order, "--templates", browser.Station.Templates]).Output;
        Assert.Contains("remade (cut too short)", log, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Csv_IsThatOfTheCommand()
    {
        var order = Printed.Order(browser.Station);
        var page = await Open("book", Size.Desk);
        var path = Path.Combine(browser.Station.Folder, $"{order}-jobs.csv");
        Assert.Equal(0, Station.Run(["jobs", "--order", order, "--csv", path, "--templates", browser.Station.Templates]).ExitCode);
        var answer = await page.APIRequest.GetAsync($"{browser.Station.Address}book/jobs.csv?q={order}");
        Assert.Equal(await File.ReadAllBytesAsync(path, TestContext.Current.CancellationToken), await answer.BodyAsync());
    }

    [Fact]
    public async Task Customer_WhoIsForgotten_IsFoundNoMore()
    {
        var order = Printed.Order(browser.Station, customer: "Forgettable Example");
        var page = await Open("book", Size.Phone);
        await page.GetByText("Forget a customer").ClickAsync();
        await page.GetByLabel("The whole name").FillAsync("forgettable example");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Forget this customer" }).ClickAsync();
        await Assertions.Expect(page.Locator(".done")).ToContainTextAsync("the name was removed from 1 piece");
        Assert.Equal("", Printed.Job(browser.Station, order).GetProperty("customer").GetString());
    }

    [Fact]
    public async Task Spool_ReceivedAndBuiltFrom_IsFoundByItsLot()
    {
        var page = await Open("book/spools", Size.Phone);
        await page.GetByLabel("Material or thread").FillAsync("hmpe-0145");
        await page.GetByLabel("Color", new PageGetByLabelOptions { Exact = true }).FillAsync("black");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Receive and print the tag" }).ClickAsync();
        await Assertions.Expect(page.Locator(".field .trouble").First).ToContainTextAsync("expected the lot as it stands on the spool");
        Assert.Equal("black", await page.GetByLabel("Color", new PageGetByLabelOptions { Exact = true }).InputValueAsync());
        await page.GetByLabel("Lot, as on the spool").FillAsync("H88-4");
        await page.GetByLabel("What is on it").FillAsync("900 m");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Receive and print the tag" }).ClickAsync();
        await Assertions.Expect(page.Locator(".done")).ToContainTextAsync("lot H88-4: received");
        await Assertions.Expect(page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Open spools.pdf" })).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Take it to the bench" }).ClickAsync();
        await Assertions.Expect(page.Locator(".done")).ToContainTextAsync("at bench");

        var order = Printed.Order(browser.Station);
        var built = Station.Run(["built", $"{order}/string", "--length", "60 1/4", "--spools", "1", "--templates", browser.Station.Templates]);
        Assert.True(built.ExitCode == 0, built.Errors);
        await page.GotoAsync($"{browser.Station.Address}book/spools");
        await Assertions.Expect(page.Locator(".spool")).ToContainTextAsync("enough for about");
        await Look.Everywhere(page, "book-spools");
        await page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Its lot" }).ClickAsync();
        await Assertions.Expect(page.Locator("h3")).ToHaveTextAsync("Demo customer 1");
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync($"{order}/string");
        await Look.Everywhere(page, "book-lot");
    }

    [Fact]
    public async Task Fit_WithABuildLeftOut_IsMadeOfTheOthers()
    {
        foreach (var length in new[] { "60 1/4", "60 5/16", "60 3/16" })
        {
            var order = Printed.Order(browser.Station);
            Assert.Equal(0, Station.Run(["built", $"{order}/string", "--length", length, "--templates", browser.Station.Templates]).ExitCode);
        }

        var page = await Open("book/fit", Size.Desk);
        var section = page.Locator("section.sheet", new PageLocatorOptions { HasText = "hmpe-0145, 24 strands" });
        var said = Station.Run(["fit", "--material", "hmpe-0145", "--strands", "24", "--templates", browser.Station.Templates]).Output;
        Assert.Contains(await section.Locator(".number").InnerTextAsync(), said, StringComparison.Ordinal);
        await section.Locator(".plot").ScrollIntoViewIfNeededAsync();
        await Assertions.Expect(section.Locator(".plot")).ToHaveJSPropertyAsync("complete", true);
        Assert.True(await section.Locator(".plot").EvaluateAsync<int>("e => e.naturalWidth") > 500);
        await page.EvaluateAsync("document.querySelectorAll('details').forEach(d => { d.open = true; })");
        await Look.Everywhere(page, "book-fit");
        await section.GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = "Leave it out" }).First.ClickAsync();
        await page.Locator("details summary").First.ClickAsync();
        await Assertions.Expect(section.GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = "Take it in" })).ToHaveCountAsync(1);
        await section.GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = "Take it in" }).ClickAsync();
        await Assertions.Expect(section.GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = "Take it in" })).ToHaveCountAsync(0);
    }

    private async Task<IPage> Open(string path, Size size)
    {
        var page = await browser.Open(size);
        await page.GotoAsync($"{browser.Station.Address}{path}");
        return page;
    }
}
