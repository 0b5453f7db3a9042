using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Xunit;

namespace Tagend.StationTests;

/// <summary>The job book, the spools and the fit in the browser; the program's own commands say what is in the book.</summary>
public class BookTests(Browser browser, DemoStation demo) : IClassFixture<DemoStation>
{
    [Fact]
    public async Task Search_AsOneTypes_FindsCustomersInAnyCase()
    {
        var order = Printed.Order(demo.Station, customer: "Zephyrine Example");
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
        var order = Printed.Order(demo.Station);
        var page = await Open($"book/{order}/string", Size.Desk);
        await page.Locator("#column").SelectOptionAsync("finished_length");
        await page.Locator("#text").FillAsync("6o 3/8");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Make the new revision and print it" }).ClickAsync();
        await Assertions.Expect(page.Locator(".trouble").First).ToContainTextAsync("expected a length such as 60 1/4, 60.25 in or 1530 mm");
        await page.Locator("#text").FillAsync("60 3/8");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Make the new revision and print it" }).ClickAsync();
        var paper = await page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { NameRegex = new Regex($"^Open {order}-string-card") }).GetAttributeAsync("href");
        var made = await page.APIRequest.GetAsync($"{demo.Station.Address}{paper![1..]}");
        Assert.Equal("%PDF-", System.Text.Encoding.ASCII.GetString((await made.BodyAsync())[..5]));
        Assert.Equal(2, Printed.Job(demo.Station, order).GetProperty("revision").GetInt32());

        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Make it again" }).ClickAsync();
        await Assertions.Expect(page.Locator(".trouble")).ToContainTextAsync("give a reason: whoever reads the log later needs it");
        await page.Locator("#reason").FillAsync("cut too short");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Make it again" }).ClickAsync();
        await Assertions.Expect(page.Locator(".state").First).ToContainTextAsync("remade");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "It is shipped" }).ClickAsync();
        await Assertions.Expect(page.Locator(".done").Last).ToContainTextAsync("not logged as built: string");
        Assert.Equal("shipped", Printed.Job(demo.Station, order).GetProperty("state").GetString());
        var log = Station.Run(["log", order, "--templates", demo.Station.Templates]).Output;
        Assert.Contains("remade (cut too short)", log, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Piece_CancelledReopenedBuiltAndStruck_IsSoInTheBook()
    {
        var order = Printed.Order(demo.Station);
        var page = await Open($"book/{order}/string", Size.Phone);
        await page.Locator("#reason").FillAsync("the bow was sold");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Cancel it" }).ClickAsync();
        await Assertions.Expect(page.Locator(".done")).ToHaveTextAsync($"{order}/string: cancelled");
        await Assertions.Expect(page.Locator(".deeds .soft").First).ToHaveTextAsync("the bow was sold");
        Assert.Equal("cancelled", Printed.Job(demo.Station, order).GetProperty("state").GetString());
        await page.GotoAsync($"{demo.Station.Address}build/of/{order}/string");
        await Assertions.Expect(page.Locator(".held")).ToContainTextAsync("cancelled");

        await page.GotoAsync($"{demo.Station.Address}book/{order}/string");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Take it up again" }).ClickAsync();
        await Assertions.Expect(page.Locator(".done")).ToHaveTextAsync($"{order}/string: printed");
        var built = Station.Run(["built", $"{order}/string", "--length", "60 1/4", "--templates", demo.Station.Templates]);
        Assert.True(built.ExitCode == 0, built.Errors);
        await page.GotoAsync($"{demo.Station.Address}book/{order}/string");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "It was never built: strike it" }).ClickAsync();
        await Assertions.Expect(page.Locator(".build-row")).ToContainTextAsync("struck");
        await Assertions.Expect(page.Locator(".build-row form")).ToHaveCountAsync(0);
        var job = Printed.Job(demo.Station, order);
        Assert.Equal("printed", job.GetProperty("state").GetString());
        Assert.True(Assert.Single(job.GetProperty("builds").EnumerateArray()).GetProperty("struck").GetBoolean());
        await Assertions.Expect(page.Locator(".history")).ToContainTextAsync("cancelled (the bow was sold)");
    }

    [Fact]
    public async Task Csv_IsThatOfTheCommand()
    {
        var order = Printed.Order(demo.Station);
        var page = await Open("book", Size.Desk);
        var path = Path.Combine(demo.Station.Folder, $"{order}-jobs.csv");
        Assert.Equal(0, Station.Run(["jobs", "--order", order, "--csv", path, "--templates", demo.Station.Templates]).ExitCode);
        var answer = await page.APIRequest.GetAsync($"{demo.Station.Address}book/jobs.csv?q={order}");
        Assert.Equal(await File.ReadAllBytesAsync(path, TestContext.Current.CancellationToken), await answer.BodyAsync());
    }

    [Fact]
    public async Task Customer_WhoIsForgotten_IsFoundNoMore()
    {
        var order = Printed.Order(demo.Station, customer: "Forgettable Example");
        var page = await Open("book", Size.Phone);
        await page.GetByText("Forget a customer").ClickAsync();
        await page.GetByLabel("The whole name").FillAsync("forgettable example");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Forget this customer" }).ClickAsync();
        await Assertions.Expect(page.Locator(".done")).ToContainTextAsync("the name was removed from 1 piece");
        Assert.Equal("", Printed.Job(demo.Station, order).GetProperty("customer").GetString());
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
        await page.Locator(".spool", new PageLocatorOptions { HasText = "H88-4" })
            .GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = "Take it to the bench" }).ClickAsync();
        await Assertions.Expect(page.Locator(".done")).ToContainTextAsync("at bench");

        var order = Printed.Order(demo.Station);
        var built = Station.Run(["built", $"{order}/string", "--length", "60 1/4", "--spools", $"{Kept("H88-4").GetProperty("spool")}", "--templates", demo.Station.Templates]);
        Assert.True(built.ExitCode == 0, built.Errors);
        await page.GotoAsync($"{demo.Station.Address}book/spools");
        var spool = page.Locator(".spool", new PageLocatorOptions { HasText = "H88-4" });
        await Assertions.Expect(spool).ToContainTextAsync("enough for about");
        await Look.Everywhere(page, "book-spools");
        await spool.GetByRole(AriaRole.Link, new LocatorGetByRoleOptions { Name = "Its lot" }).ClickAsync();
        await Assertions.Expect(page.Locator("h3")).ToHaveTextAsync("Demo customer 1");
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync($"{order}/string");
        await Look.Everywhere(page, "book-lot");

        // The list to call, as the command writes it.
        var path = Path.Combine(demo.Station.Folder, "lot.csv");
        Assert.Equal(0, Station.Run(["jobs", "--lot", "H88-4", "--csv", path, "--templates", demo.Station.Templates]).ExitCode);
        var csv = await page.APIRequest.GetAsync($"{Root}{await page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "The list as CSV" }).GetAttributeAsync("href")}");
        Assert.Equal(await File.ReadAllBytesAsync(path, TestContext.Current.CancellationToken), await csv.BodyAsync());
    }

    [Fact]
    public async Task Spool_CountedTaggedAndUsedUp_IsSoOnTheShelf()
    {
        var received = Station.Run([
            "spools", "receive", "t021", "--color", "green", "--lot", "T-77", "--length", "200 m", "--out", Path.Combine(demo.Station.Folder, "spools"),
            "--templates", demo.Station.Templates]);
        Assert.True(received.ExitCode == 0, received.Errors);
        var page = await Open("book/spools", Size.Phone);
        var spool = page.Locator(".spool", new PageLocatorOptions { HasText = "T-77" });
        ILocator Press(string name) => spool.GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = name });
        await spool.Locator("input[name=left]").FillAsync("much");
        await Press("Enter the count").ClickAsync();
        await Assertions.Expect(page.Locator(".trouble")).ToContainTextAsync("\"much\": expected what is on the spool with its unit, such as 300 yd or 270 m");
        await spool.Locator("input[name=left]").FillAsync("201 m");
        await Press("Enter the count").ClickAsync();
        await Assertions.Expect(page.Locator(".trouble")).ToContainTextAsync("count it again; if more came on it than was entered, finish this spool and receive it anew");
        Assert.Equal(200_000, Kept("T-77").GetProperty("left").GetProperty("mm").GetDouble(), 3);
        await spool.Locator("input[name=left]").FillAsync("150 m");
        await Press("Enter the count").ClickAsync();
        await Assertions.Expect(page.Locator(".done")).ToContainTextAsync("left as counted");
        Assert.Equal(150_000, Kept("T-77").GetProperty("left").GetProperty("mm").GetDouble(), 3);

        await Press("Print its tag").ClickAsync();
        var paper = await page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Open spools.pdf" }).GetAttributeAsync("href");
        var file = Path.Combine(demo.Station.Folder, "tag.pdf");
        await File.WriteAllBytesAsync(file, await (await page.APIRequest.GetAsync($"{Root}{paper}")).BodyAsync(), TestContext.Current.CancellationToken);
        if (Tool.Runs("pdftoppm", "-r", "200", "-png", "-singlefile", file, file[..^4]))
        {
            Assert.Equal("spool", Assert.Single(Printed.Codes(file[..^4] + ".png")).Reading);
        }

        await Press("It is used up").ClickAsync();
        await Assertions.Expect(page.Locator(".done")).ToContainTextAsync("lot T-77: finished");
        await Assertions.Expect(spool).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task Fit_WithABuildLeftOut_IsMadeOfTheOthers()
    {
        foreach (var length in new[] { "60 1/4", "60 5/16", "60 3/16" })
        {
            var order = Printed.Order(demo.Station);
            Assert.Equal(0, Station.Run(["built", $"{order}/string", "--length", length, "--templates", demo.Station.Templates]).ExitCode);
        }

        var page = await Open("book/fit", Size.Desk);
        var section = page.Locator("section.sheet", new PageLocatorOptions { HasText = "hmpe-0145, 24 strands" });
        var said = Station.Run(["fit", "--material", "hmpe-0145", "--strands", "24", "--templates", demo.Station.Templates]).Output;
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

    /// <summary>A spool of the shop, as spools tells it to scripts.</summary>
    private JsonElement Kept(string lot) => JsonDocument.Parse(Station.Run(["spools", "--json", "--templates", demo.Station.Templates]).Output)
        .RootElement.EnumerateArray().Single(s => s.GetProperty("lot").GetString() == lot);

    private string Root => demo.Station.Address.ToString().TrimEnd('/');

    private async Task<IPage> Open(string path, Size size)
    {
        var page = await browser.Open(size);
        await page.GotoAsync($"{demo.Station.Address}{path}");
        return page;
    }
}
