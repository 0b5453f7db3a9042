using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Xunit;

namespace Tagend.StationTests;

/// <summary>The whole job by the browser alone, as somebody does it who never opened a terminal: from an empty home to a logged set.</summary>
public class WholeJobTests(Browser browser)
{
    private const string Order = "2044";

    /// <summary>As a spreadsheet saves it that has columns of its own; one length has the letter o for a zero.</summary>
    private const string Sheet = """
        Order No.,Client,Bow,String Length,Buss Length,Strands,Color 1,Color 2
        2044,Demo customer 1,compound bow,6o 1/4,38 1/2,24,black,red
        2045,Demo customer 2,compound bow,57 5/8,36 3/4,24,blue,silver
        2046,Demo customer 3,compound bow,58 1/4,37 1/8,24,black,blue
        2047,Demo customer 4,compound bow,61,39,24,red,silver
        2048,Demo customer 5,compound bow,59 3/4,38 1/4,24,black,silver

        """;

    public static TheoryData<string> Sizes => [Size.Desk.Name, Size.Phone.Name];

    [Theory]
    [MemberData(nameof(Sizes))]
    public async Task Shop_FromAnEmptyHome_GetsToALoggedSet(string size)
    {
        using var station = Station.Empty();
        station.Start();
        var page = await browser.Open(Size.All.Single(s => s.Name == size));
        await page.GotoAsync(station.Address.ToString());
        await Begin(page);
        await BringOrders(page);
        var tags = await PrintPapers(page, station);
        await OpenByItsTag(page, tags);
        await Build(page, station);

        // What is on the screen is what the commands say of the same file and book.
        using var jobs = JsonDocument.Parse(Station.Run(["jobs", "--json", "--order", Order, "--templates", station.Templates]).Output);
        var build = Assert.Single(jobs.RootElement.EnumerateArray().SelectMany(j => j.GetProperty("builds").EnumerateArray()));
        Assert.Equal(60.3125, build.GetProperty("measured").GetProperty("in").GetDouble());
        await page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = $"History of {Order}" }).ClickAsync();
        var piece = page.Locator(".rows .row", new PageLocatorOptions { HasText = "string" });
        await Assertions.Expect(piece).ToContainTextAsync("built");
        await piece.ClickAsync();
        await Assertions.Expect(page.Locator(".build-row")).ToContainTextAsync("60 5/16 in");
        await page.GotoAsync($"{station.Address}orders");
        await Assertions.Expect(page.Locator($"section.set:has-text('{Order}') header")).ToContainTextAsync("part-built");
    }

    private static async Task Begin(IPage page)
    {
        await page.GetByLabel("Name").FillAsync("Demo string shop");
        await Next("What do you measure in, and print on?");
        await Next("How thick are the posts of your jig?");
        await page.GetByLabel("Diameter of a post").FillAsync("1 1/8");
        await Next("What is the finest mark of your tape?");
        await Next("Your shop is ready");
        await page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Bring the first orders" }).ClickAsync();

        async Task Next(string question)
        {
            await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Next" }).ClickAsync();
            await Assertions.Expect(page.Locator("h1")).ToHaveTextAsync(question);
        }
    }

    /// <summary>Drops the spreadsheet's file, lets its columns be read, mends a cell, and keeps the file.</summary>
    private static async Task BringOrders(IPage page)
    {
        await page.EvalOnSelectorAsync(
            "form.drop",
            """
            (place, text) => {
                const data = new DataTransfer();
                data.items.add(new File([text], "strings.csv", { type: "text/csv" }));
                place.dispatchEvent(new DragEvent("drop", { dataTransfer: data, bubbles: true, cancelable: true }));
            }
            """,
            Sheet);
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Read my own columns" }).ClickAsync();
        var set = page.Locator("section.set", new PageLocatorOptions { HasText = Order });
        await Assertions.Expect(set.Locator(".says.is-stop").First).ToContainTextAsync("expected a length such as");
        await set.Locator("button.cell", new LocatorLocatorOptions { HasText = "6o 1/4" }).ClickAsync();
        await page.Keyboard.TypeAsync("60 1/4");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(set.Locator(".says.is-stop")).ToHaveCountAsync(0);
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Keep it in the file" }).ClickAsync();
        await Assertions.Expect(page.Locator(".draft")).ToHaveCountAsync(0);
    }

    /// <summary>Looks at the papers, prints those of one order, and downloads its tags.</summary>
    /// <returns>A photo of each.</returns>
    private static async Task<IReadOnlyList<string>> PrintPapers(IPage page, Station station)
    {
        await page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { NameRegex = new Regex("^Print what is ready: 5 sets") }).ClickAsync();
        foreach (var other in new[] { "2045", "2046", "2047", "2048" })
        {
            await page.GetByLabel(other).UncheckAsync();
        }

        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Show these" }).ClickAsync();
        await page.WaitForFunctionAsync("() => document.querySelector('.page img')?.naturalWidth > 100");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Print", Exact = true }).ClickAsync();
        var tags = page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { NameRegex = new Regex("^Tags,") });
        var download = await page.RunAndWaitForDownloadAsync(() => tags.ClickAsync());
        var file = Path.Combine(station.Folder, "downloaded");
        await download.SaveAsAsync($"{file}.pdf");
        Assert.SkipUnless(Tool.Runs("pdftoppm", "-r", "200", "-png", $"{file}.pdf", file), "pdftoppm is not installed");
        return [.. Directory.GetFiles(station.Folder, "downloaded-*.png").Order(StringComparer.Ordinal)];
    }

    /// <summary>Photographs the bag's tag, then that of the string.</summary>
    private static async Task OpenByItsTag(IPage page, IReadOnlyList<string> photos)
    {
        await page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Scan", Exact = true }).ClickAsync();
        await page.Locator("#photo").SetInputFilesAsync(photos[0]);
        await Assertions.Expect(page.Locator("#found h2").First).ToHaveTextAsync($"Bag of order {Order}");
        await page.Locator("#photo").SetInputFilesAsync(photos[1]);
        await Assertions.Expect(page.Locator("#found h2").First).ToContainTextAsync($"{Order}/string");
        await Assertions.Expect(page.Locator(".found-who")).ToContainTextAsync("Demo customer 1");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Build it" }).ClickAsync();
    }

    /// <summary>Goes through all steps with the network away and the station killed between, and saves the measured length.</summary>
    private static async Task Build(IPage page, Station station)
    {
        await Assertions.Expect(page.Locator("#count")).ToHaveTextAsync(new Regex("^Step 1 of"));
        var check = JsonDocument.Parse(Station.Run(
            ["check", Path.Combine(station.Folder, "orders", "strings.csv"), "--json", "--templates", station.Templates]).Output).RootElement;
        var spec = check.EnumerateArray().Single(p => (p.GetProperty("order").GetString(), p.GetProperty("piece").GetString()) == (Order, "string"));
        var posts = spec.GetProperty("postSetting").GetProperty("tape").GetProperty("in").GetDouble();
        Assert.Equal(posts, Inch.Read(await page.Locator(".step:not([hidden]) .figure-of .unseen").InnerTextAsync()));

        await Bench.WithoutBounce(page);
        var done = page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Done", Exact = true });
        await done.ClickAsync();
        await page.Context.SetOfflineAsync(true);
        await done.ClickAsync();
        await page.Context.SetOfflineAsync(false);
        await done.ClickAsync();
        station.Kill();
        await done.ClickAsync();
        await Assertions.Expect(page.Locator("#count")).ToHaveTextAsync(new Regex("^Step 5 of"));
        station.Start();
        await page.ReloadAsync();
        await Assertions.Expect(page.Locator("#count")).ToHaveTextAsync(new Regex("^Step 5 of"));
        await Bench.WithoutBounce(page);
        while (await done.IsVisibleAsync())
        {
            await done.ClickAsync();
        }

        await page.Locator("#length").FillAsync("60 5/16");
        await Assertions.Expect(page.Locator("#verdict")).ToContainTextAsync("0.063 in longer than ordered");
        station.Kill();
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Save as built" }).ClickAsync();
        await Assertions.Expect(page.GetByText($"{Order}/string is kept on this device")).ToBeVisibleAsync();
        station.Start();
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Save as built" }).ClickAsync();
        await Assertions.Expect(page.Locator("#answer .done")).ToContainTextAsync("logged");
        await Assertions.Expect(page.GetByText("is kept on this device")).ToHaveCountAsync(0);
    }
}
