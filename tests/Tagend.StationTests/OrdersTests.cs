using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Xunit;

namespace Tagend.StationTests;

/// <summary>Order files in the browser, from the spreadsheet to sets that can be printed.</summary>
public class OrdersTests(Browser browser, DemoStation demo) : IClassFixture<DemoStation>
{
    private static readonly string DemoOrders = Path.Combine(Station.Root, "demo-orders", "demo.csv");
    private static readonly string Mistakes = Path.Combine(Station.Root, "demo-orders", "mistakes.csv");

    [Fact]
    public async Task Drop_OfAFile_ShowsEveryProblemAtItsCellInTheProgramsOwnWords()
    {
        var page = await browser.Open(Size.Desk);
        await Bring(page, Mistakes, "mistakes-shown.csv");
        var check = Station.Run(["check", Mistakes, "--templates", demo.Station.Templates]);
        var said = Regex.Matches(check.Errors, @"^.*mistakes\.csv:(?<line>\d+)(: (?<column>\w+)(?: ""(?<text>.*?)"")?)?: (?<message>.*)$", RegexOptions.Multiline);
        Assert.True(said.Count >= 12);
        var shown = (await page.Locator(".says").AllInnerTextsAsync()).Select(Flat).ToList();
        Assert.All(said, s => Assert.Contains(shown, t => t.EndsWith(Flat(s.Groups["message"].Value.Replace("warning: ", "", StringComparison.Ordinal)), StringComparison.Ordinal)));
        var cell = page.Locator("td", new PageLocatorOptions { Has = page.Locator(".says") }).Filter(new LocatorFilterOptions { HasText = "6o 1/4" });
        Assert.Contains("expected a length such as", await cell.InnerTextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Cell_ThatIsMended_IsCheckedAtOnceAndKeptWhole()
    {
        var page = await browser.Open(Size.Desk);
        await Bring(page, Mistakes, "mended.csv");
        var set = page.Locator("section.set", new PageLocatorOptions { HasText = "the letter o for a zero" });
        Assert.Contains("1 problem", await set.InnerTextAsync(), StringComparison.Ordinal);
        await set.Locator("button.cell", new LocatorLocatorOptions { HasText = "6o 1/4" }).FocusAsync(); // by keyboard alone
        await page.Keyboard.PressAsync("Enter");
        await page.Keyboard.TypeAsync("38 1/2");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(set.Locator(".says.is-stop")).ToHaveCountAsync(0);
        await Assertions.Expect(set.Locator("button.cell", new LocatorLocatorOptions { HasText = "38 1/2" })).ToBeFocusedAsync();
        await Assertions.Expect(page.Locator(".draft")).ToBeVisibleAsync();

        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Keep it in the file" }).ClickAsync();
        await Assertions.Expect(page.Locator(".draft")).ToHaveCountAsync(0);
        var kept = await File.ReadAllTextAsync(Path.Combine(demo.Station.Folder, "orders", "mended.csv"), TestContext.Current.CancellationToken);
        Assert.Equal((await File.ReadAllTextAsync(Mistakes, TestContext.Current.CancellationToken)).Replace("6o 1/4", "38 1/2", StringComparison.Ordinal), kept);
    }

    [Fact]
    public async Task Typing_BeforeAReloadOrAKilledStation_IsNotLost()
    {
        using var station = Station.OfDemoShop();
        var page = await browser.Open(Size.Desk);
        await Bring(page, DemoOrders, "kill.csv", station);
        await Edit(page, "60 1/4", "61");
        station.Kill();

        // What is typed while no station answers stays in the browser, and is sent when one does.
        await page.Locator("button.cell", new PageLocatorOptions { HasTextRegex = new Regex("^98 1/4$") }).ClickAsync();
        await page.Keyboard.TypeAsync("98 1/2");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#notice")).ToContainTextAsync("The station does not answer");
        station.Start();
        await page.ReloadAsync();
        Assert.Equal("98 1/2", await page.Locator(".cell-field").InputValueAsync());
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator(".cell-field")).ToHaveCountAsync(0);
        Assert.Equal(1, await page.Locator("button.cell", new PageLocatorOptions { HasTextRegex = new Regex("^61$") }).CountAsync());
        Assert.Equal(1, await page.Locator("button.cell", new PageLocatorOptions { HasTextRegex = new Regex("^98 1/2$") }).CountAsync());
    }

    [Fact]
    public async Task File_ChangedInItsFolderMeanwhile_ShowsBothVersionsAndLosesNone()
    {
        var page = await browser.Open(Size.Desk);
        await Bring(page, DemoOrders, "both.csv");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Keep it in the file" }).ClickAsync();
        await Assertions.Expect(page.Locator(".draft")).ToHaveCountAsync(0);
        await Edit(page, "60 1/4", "61");
        await Assertions.Expect(page.Locator(".draft")).ToBeVisibleAsync();
        var path = Path.Combine(demo.Station.Folder, "orders", "both.csv");
        var theirs = (await File.ReadAllTextAsync(path, TestContext.Current.CancellationToken)).Replace("98 1/4", "99", StringComparison.Ordinal);
        await File.WriteAllTextAsync(path, theirs, TestContext.Current.CancellationToken);

        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Keep it in the file" }).ClickAsync();
        await Arrival.At(page, "/versions");
        var rows = await page.Locator("tbody tr").AllInnerTextsAsync();
        Assert.Equal(2, rows.Count);
        Assert.Contains(rows, r => r.Contains("61", StringComparison.Ordinal) && r.Contains("60 1/4", StringComparison.Ordinal));
        Assert.Contains(rows, r => r.Contains("98 1/4", StringComparison.Ordinal) && r.Contains("99", StringComparison.Ordinal));
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Keep what was changed here" }).ClickAsync();
        await Arrival.At(page, "/orders/both.csv");
        Assert.Contains(",61,", await File.ReadAllTextAsync(path, TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Equal(theirs, await File.ReadAllTextAsync(path + ".before", TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Form_WritesAnOrderPieceByPiece()
    {
        var page = await browser.Open(Size.Phone);
        await page.GotoAsync($"{demo.Station.Address}orders/new");
        await page.GetByLabel("Order number").FillAsync("4711");
        await page.GetByLabel("Customer").FillAsync("<script>alert(1)</script>");
        await page.GetByLabel("What is built").SelectOptionAsync("recurve-string");
        await page.GetByLabel("Name of the piece").FillAsync("string");
        await page.GetByLabel("Finished length").FillAsync("66");
        await page.ReloadAsync(); // nothing typed is lost
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Add this piece" }).ClickAsync();
        await Assertions.Expect(page.Locator("h1")).ToHaveTextAsync("One more piece of 4711");
        var set = page.Locator("section.set");
        Assert.Contains("<script>alert(1)</script>", await set.InnerTextAsync(), StringComparison.Ordinal);
        Assert.Equal("4711", await page.GetByLabel("Order number").InputValueAsync());
        Assert.Equal("", await page.GetByLabel("Finished length").InputValueAsync());
    }

    [Fact]
    public async Task Rows_ThatArePasted_AreAFile()
    {
        var page = await browser.Open(Size.Tablet);
        await page.GotoAsync($"{demo.Station.Address}orders");
        var add = page.Locator("details.add");
        if (await add.GetAttributeAsync("open") is null)
        {
            await add.Locator("summary").ClickAsync();
        }

        await page.Locator("#order-rows").FillAsync("order\tpiece\tkind\tfinished_length\n5001\tstring\trecurve-string\t66\n");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Take these rows in" }).ClickAsync();
        await Arrival.At(page, "/orders/pasted*");
        await Assertions.Expect(page.Locator("section.set h2")).ToHaveTextAsync("5001");
    }

    [Fact]
    public async Task Filter_OfPrintedAndNotBuilt_LeadsToTheBench()
    {
        var (waiting, built) = (Printed.Order(demo.Station), Printed.Order(demo.Station));
        Assert.Equal(0, Station.Run(["built", $"{built}/string", "--length", "60 1/4", "--templates", demo.Station.Templates]).ExitCode);
        var path = Path.Combine(demo.Station.Folder, "both-orders.csv");
        string RowsOf(string order) => File.ReadAllText(Path.Combine(demo.Station.Folder, $"{order}.csv"));
        await File.WriteAllTextAsync(path, RowsOf(waiting) + string.Concat(RowsOf(built).Split('\n').Skip(1).Select(l => l + "\n")), TestContext.Current.CancellationToken);
        var page = await browser.Open(Size.Phone);
        await Bring(page, path, "waiting.csv");
        await Assertions.Expect(page.Locator("section.set")).ToHaveCountAsync(2);
        await page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { NameRegex = new Regex("printed, not built") }).ClickAsync();
        await Assertions.Expect(page.Locator("section.set h2")).ToHaveTextAsync([waiting]);
        await page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Build string" }).ClickAsync();
        await Assertions.Expect(page.Locator(".bench-head h1")).ToContainTextAsync($"{waiting}/string");

        await page.GotoAsync($"{demo.Station.Address}orders/waiting.csv/sets/{waiting}");
        await page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Build string" }).ClickAsync();
        await Assertions.Expect(page.Locator(".bench-head h1")).ToContainTextAsync($"{waiting}/string");
        await page.GotoAsync($"{demo.Station.Address}orders/waiting.csv/sets/{built}");
        await Assertions.Expect(page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Build string" })).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task Number_OfAnotherCustomersOrder_IsUsedAgainWhenItIsMeant()
    {
        var order = Printed.Order(demo.Station, customer: "First Example");
        var page = await browser.Open(Size.Desk);
        var path = Path.Combine(demo.Station.Folder, $"{order}.csv");
        await File.WriteAllTextAsync(path, (await File.ReadAllTextAsync(path, TestContext.Current.CancellationToken)).Replace("First Example", "Second Example", StringComparison.Ordinal), TestContext.Current.CancellationToken);
        await Bring(page, path, "again.csv");
        await Assertions.Expect(page.Locator(".says.is-stop")).ToContainTextAsync("was printed for First Example");
        await Assertions.Expect(page.Locator(".says.is-stop")).Not.ToContainTextAsync("--");
        await Assertions.Expect(page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Open", Exact = true })).ToHaveCountAsync(0);
        var meant = page.GetByLabel($"The number {order} is used again on purpose, for Second Example.");
        await meant.CheckAsync();
        await Assertions.Expect(page.Locator(".says.is-stop")).ToHaveCountAsync(0);
        await Assertions.Expect(page.Locator(".says.is-warn").First).ToContainTextAsync("is now revision 2: customer Second Example (was First Example)");
        await page.ReloadAsync();
        await Assertions.Expect(meant).ToBeCheckedAsync();
        await Assertions.Expect(page.Locator("section.set .who")).ToHaveTextAsync("Second Example");
        await Assertions.Expect(page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Print what is ready: 1 set" })).ToBeVisibleAsync();
        await Look.Everywhere(page, "orders-again");
        await page.GotoAsync($"{demo.Station.Address}papers/again.csv?order={order}&kind=cards");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Print", Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator("#made .done")).ToContainTextAsync("1 set printed");
        var job = Printed.Job(demo.Station, order);
        Assert.Equal(("Second Example", 2), (job.GetProperty("customer").GetString(), job.GetProperty("revision").GetInt32()));
        await page.GotoAsync($"{demo.Station.Address}orders/again.csv");
        await Assertions.Expect(meant).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task File_WithColumnsOfTheShopsOwn_IsReadOnceTheyAreKnown()
    {
        using var station = Station.OfDemoShop();
        var sheet = Path.Combine(station.Folder, "own.csv");
        await File.WriteAllTextAsync(
            sheet, "No.,Client,String Length,Strands,Color 1,Color 2,Paid\n31,Demo customer 1,60 1/4,24,black,red,yes\n32,Demo customer 2,58,24,black,blue,yes\n",
            TestContext.Current.CancellationToken);
        var page = await browser.Open(Size.Desk);
        await Bring(page, sheet, "own-sheet.csv", station);
        await Assertions.Expect(page.Locator(".says.is-stop")).ToContainTextAsync("there is no map in the templates' imports: press Read my own columns");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Read my own columns" }).ClickAsync();
        await Assertions.Expect(page.Locator("#file > .done")).ToContainTextAsync("are read as orders from now on");
        await Assertions.Expect(page.Locator("section.set")).ToHaveCountAsync(2);
        await Look.Everywhere(page, "orders-own");
        await Assertions.Expect(page.Locator(".says.is-stop").First).ToContainTextAsync("the row names no kind");
        await page.GetByLabel("What is each string?").SelectOptionAsync("compound-string");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Build them so" }).ClickAsync();
        await Assertions.Expect(page.Locator(".says.is-stop")).ToHaveCountAsync(0);
        await Assertions.Expect(page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Print what is ready: 2 sets" })).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "It is not read rightly: forget this" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Read my own columns" })).ToBeVisibleAsync();
        Assert.Empty(Directory.GetFiles(Path.Combine(station.Templates, "imports"), "own-sheet*.toml"));
    }

    [Fact]
    public async Task Set_OnItsScreen_HasTheNumbersOfCheck()
    {
        var page = await browser.Open(Size.Desk);
        await Bring(page, DemoOrders, "numbers.csv");
        using var check = JsonDocument.Parse(Station.Run(["check", DemoOrders, "--json", "--templates", demo.Station.Templates]).Output);
        var orders = check.RootElement.EnumerateArray().GroupBy(p => p.GetProperty("order").GetString()!);
        foreach (var order in orders)
        {
            await page.GotoAsync($"{demo.Station.Address}orders/numbers.csv/sets/{order.Key}");
            foreach (var piece in order)
            {
                var shown = page.Locator($"section[data-piece='{piece.GetProperty("piece").GetString()}']");
                async Task Same(string name, double expected) =>
                    Assert.Equal(expected, double.Parse((await shown.Locator($"data.{name}").GetAttributeAsync("value"))!, System.Globalization.CultureInfo.InvariantCulture));
                await Same("finished", In(piece, "finishedLength"));
                await Same("laid", In(piece, "laidUpLength"));
                await Same("tape", In(piece.GetProperty("postSetting"), "tape"));
                await Same("turns", piece.GetProperty("turnsToPutIn").GetDouble());
                await Same("strands", piece.GetProperty("strands").GetInt32());
                await Same("revision", piece.GetProperty("revision").GetInt32());
            }
        }

        static double In(JsonElement of, string name) => of.GetProperty(name).GetProperty("in").GetDouble();
    }

    [Fact]
    public async Task Screens_OfOrders_HaveNoBarrier()
    {
        var page = await browser.Open(Size.Desk);
        await Bring(page, Mistakes, "look-mistakes.csv", rows: 7); // every cell is judged, and a few show what all are like
        await Look.Everywhere(page, "orders-problems");
        await Bring(page, DemoOrders, "look-demo.csv", rows: 3);
        await Look.Everywhere(page, "orders-demo");
        await page.GotoAsync($"{demo.Station.Address}orders/look-demo.csv/sets/1001");
        await Look.Everywhere(page, "set");
        await page.GotoAsync($"{demo.Station.Address}orders/new");
        await Look.Everywhere(page, "orders-new");
    }

    /// <summary>Gives the station a file under a name of the test's own.</summary>
    private async Task Bring(IPage page, string path, string name, Station? station = null, int rows = 1_000)
    {
        await page.GotoAsync($"{(station ?? demo.Station).Address}orders");
        await page.Locator("#order-file").SetInputFilesAsync(new FilePayload { Name = name, MimeType = "text/csv", Buffer = System.Text.Encoding.UTF8.GetBytes(string.Join('\n', File.ReadLines(path).Take(rows + 1)) + "\n") });
        await Arrival.At(page, $"/orders/{name}");
    }

    private static async Task Edit(IPage page, string from, string to)
    {
        await page.Locator("button.cell", new PageLocatorOptions { HasTextRegex = new Regex($"^{Regex.Escape(from)}$") }).First.ClickAsync();
        await page.Keyboard.TypeAsync(to);
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("button.cell:visible", new PageLocatorOptions { HasTextRegex = new Regex($"^{Regex.Escape(to)}$") })).ToHaveCountAsync(1);
    }

    private static string Flat(string text) => Regex.Replace(text, @"\s+", " ").Trim();
}
