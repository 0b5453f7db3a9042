using Microsoft.Playwright;
using Xunit;

namespace Tagend.StationTests;

/// <summary>Papers in the browser: looked at, made, downloaded, sent to a queue.</summary>
public class PapersTests(Browser browser, DemoStation demo) : IClassFixture<DemoStation>
{
    private static readonly string DemoOrders = Path.Combine(Station.Root, "demo-orders", "demo.csv");

    [Fact]
    public async Task Papers_AreThePdfsOfPrintAndEnterTheBook()
    {
        using var station = Station.OfDemoShop();
        var page = await browser.Open(Size.Desk);
        await Bring(page, station);
        await page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Print what is ready" }).ClickAsync();
        await page.GetByLabel("1002").UncheckAsync();
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Show these" }).ClickAsync();
        await Assertions.Expect(page.GetByLabel("1002")).Not.ToBeCheckedAsync();
        await page.WaitForFunctionAsync("() => [...document.images].filter(i => i.closest('.page')).slice(0, 2).every(i => i.naturalWidth > 100)");

        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Print", Exact = true }).ClickAsync();
        var cards = page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Cards" });
        var download = await page.RunAndWaitForDownloadAsync(() => cards.ClickAsync());
        var file = await download.PathAsync();
        var orders = File.ReadAllLines(DemoOrders).Skip(1).Select(l => l.Split(',')[0]).Distinct().Where(o => o != "1002" && o.Length == 4);
        var folder = Path.Combine(station.Folder, "by-command");
        Station.Run(["print", DemoOrders, "--templates", station.Templates, "--job-book", "none", "--out", folder, .. orders.SelectMany(o => new[] { "--order", o })]);
        Assert.Equal(File.ReadAllBytes(Path.Combine(folder, "cards.pdf")), File.ReadAllBytes(file));
        var jobs = Station.Run(["jobs", "--templates", station.Templates]).Output;
        Assert.Contains("1001", jobs, StringComparison.Ordinal);
        Assert.DoesNotContain("1002", jobs, StringComparison.Ordinal);

        await page.GotoAsync($"{station.Address}orders/papers.csv?show=unprinted");
        await Assertions.Expect(page.Locator("section.set")).ToHaveCountAsync(1);
    }

    [Fact]
    public async Task Papers_SentToAQueue_SayWhatBecameOfTheJob()
    {
        // A stand-in for the programs of CUPS, whose answers are those of CUPS 2.4.
        using var station = Station.Empty();
        var queue = Directory.CreateDirectory(Path.Combine(station.Folder, "queue")).FullName;
        Program("lp", "echo 'request id is laser-7 (1 file(s))'");
        Program("lpstat", """
            case "$*" in
            -e) echo laser ;;
            -d) echo 'system default destination: laser' ;;
            *not-completed*) [ -e "$0.seen" ] || echo 'laser-7  root  1024  Thu' ; touch "$0.seen" ;;
            *) printf 'laser-7  root  1024  Thu\n\tStatus: \n\tAlerts: job-completed-successfully\n\tqueued for laser\n' ;;
            esac
            """);
        station.Begin();
        station.Start(("PATH", $"{queue}:{Environment.GetEnvironmentVariable("PATH")}"));
        var page = await browser.Open(Size.Phone);
        await Bring(page, station);
        await page.GotoAsync($"{station.Address}papers/papers.csv?order=1001&kind=cards&printer=laser");
        await Assertions.Expect(page.GetByText("laser was never measured")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Print", Exact = true }).ClickAsync();
        await Assertions.Expect(page.GetByText("laser-7: waits or prints")).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByText("laser-7: printed, as the queue says")).ToBeVisibleAsync();

        void Program(string name, string script)
        {
            var path = Path.Combine(queue, name);
            File.WriteAllText(path, $"#!/bin/sh\n{script}\n");
            using var made = System.Diagnostics.Process.Start("chmod", ["+x", path]);
            made.WaitForExit();
        }
    }

    [Fact]
    public async Task Labels_ThatAreTicked_AreLeftOutAndTheNextPapersGoOnBehindThem()
    {
        using var station = Station.OfDemoShop();
        var shop = Path.Combine(station.Templates, "shop.toml");
        File.WriteAllText(shop, File.ReadAllText(shop).Replace("roll-4x2", "letter-2x5", StringComparison.Ordinal).Replace("roll-3x2", "letter-2x5", StringComparison.Ordinal));
        var page = await browser.Open(Size.Desk);
        await Bring(page, station);
        async Task<byte[]> Printed(string order)
        {
            await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Print", Exact = true }).ClickAsync();
            await Assertions.Expect(page.Locator("#made .done")).ToContainTextAsync($"1 set printed: {order}.");
            return File.ReadAllBytes(Path.Combine(station.Folder, "papers", "papers", "tags.pdf"));
        }

        byte[] ByCommand(string order, params string[] labels)
        {
            var folder = Path.Combine(station.Folder, $"by-command-{order}");
            Assert.Equal(0, Station.Run(["print", DemoOrders, "--templates", station.Templates, "--job-book", "none", "--out", folder, "--order", order, "--only", "tags", .. labels]).ExitCode);
            return File.ReadAllBytes(Path.Combine(folder, "tags.pdf"));
        }

        await page.GotoAsync($"{station.Address}papers/papers.csv?order=1001&kind=tags");
        foreach (var label in new[] { "1", "2", "4" })
        {
            await page.Locator("#labels label", new PageLocatorOptions { HasTextRegex = new System.Text.RegularExpressions.Regex($"^\\s*{label}\\s*$") }).ClickAsync();
        }

        Assert.Equal(ByCommand("1001", "--skip-labels", "1,2,4"), await Printed("1001"));

        // A bag and three loops went on 3, 5, 6 and 7.
        Assert.Equal(Enumerable.Range(1, 7).Select(l => $"{l}"), await Ticked(page));
        await page.GotoAsync($"{station.Address}papers/papers.csv?order=1002&kind=tags");
        Assert.Equal(Enumerable.Range(1, 7).Select(l => $"{l}"), await Ticked(page));
        await Assertions.Expect(page.Locator("#labels")).ToContainTextAsync("It goes on where the last papers ended");
        Assert.Equal(ByCommand("1002", "--first-label", "8"), await Printed("1002"));

        static async Task<IReadOnlyList<string?>> Ticked(IPage page) =>
            await page.Locator("#labels input:checked").EvaluateAllAsync<string[]>("boxes => boxes.map(b => b.value)");
    }

    [Fact]
    public async Task Screen_OfPapers_HasNoBarrierAndShowsAPageLarge()
    {
        var page = await browser.Open(Size.Desk);
        await Bring(page, demo.Station, "papers-look.csv");
        await page.GotoAsync($"{demo.Station.Address}papers/papers-look.csv?order=1001&kind=cards&kind=tags");
        await page.WaitForFunctionAsync("() => [...document.images].every(i => i.complete)");
        await Look.Everywhere(page, "papers");
        await page.Locator("button.page").First.ClickAsync();
        await page.WaitForFunctionAsync("() => document.querySelector('#large img').naturalWidth > 900");
        await page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(page.Locator("#large")).ToBeHiddenAsync();
    }

    private static async Task Bring(IPage page, Station station, string name = "papers.csv")
    {
        await page.GotoAsync($"{station.Address}orders");
        await page.Locator("#order-file").SetInputFilesAsync(new FilePayload { Name = name, MimeType = "text/csv", Buffer = File.ReadAllBytes(DemoOrders) });
        await Arrival.At(page, $"/orders/{name}");
    }
}
