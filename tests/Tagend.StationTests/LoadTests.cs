using System.Net;
using System.Text.Json;
using Microsoft.Playwright;
using Xunit;

namespace Tagend.StationTests;

/// <summary>Several stations and browsers at once on one job book, and a season's scans.</summary>
public class LoadTests(Browser browser)
{
    private const int Browsers = 10;

    /// <summary>TAGEND_LONG=1 in the environment scans 10,000 times.</summary>
    private static readonly int Scans = Environment.GetEnvironmentVariable("TAGEND_LONG") is { Length: > 0 } ? 10_000 : 200;

    [Fact]
    public async Task TwoStations_WithTenBrowsersOnOneBook_LoseNothingAndEnterNothingTwice()
    {
        using var first = Station.Empty();
        var book = Path.Combine(first.Folder, "shared.db");
        using var second = Station.Empty("--job-book", book);
        first.Begin();
        second.Begin();
        first.Start(("TAGEND_JOB_BOOK", book));
        second.Start();
        Station Of(int i) => i % 2 == 0 ? first : second;
        await Task.WhenAll(Enumerable.Range(0, Browsers).Select(i => PrintASet(Of(i), 7001 + i)));

        var orders = Enumerable.Range(7001, Browsers).Select(o => $"{o}").ToList();
        Assert.Equal(orders, Jobs(book).Select(j => j.GetProperty("order").GetString()).Order(StringComparer.Ordinal));

        // All of them save what they measured at once, two pieces of them at both stations: one of each is logged, and the other bench is asked.
        var pages = await Task.WhenAll(Enumerable.Range(0, Browsers).Select(i => Measured(Of(i), orders[i])));
        var twins = await Task.WhenAll(Enumerable.Range(0, 2).Select(i => Measured(Of(i + 1), orders[i])));
        var said = await Saved([.. pages, .. twins]);
        Assert.Equal(Browsers, said.Count(a => a.Contains("logged: ", StringComparison.Ordinal)));
        Assert.Equal(2, said.Count(a => a.Contains("is logged as built already", StringComparison.Ordinal)));
        Assert.All(Jobs(book), j => Assert.Equal(1, j.GetProperty("builds").GetArrayLength()));
    }

    [Fact]
    public async Task Scans_OneAfterTheOther_AreAllReadAndLeaveMemoryFlat()
    {
        using var station = Station.OfDemoShop();
        var order = Printed.Order(station);
        var frame = Printed.Frame(station, order);
        Assert.SkipWhen(frame is null, "pdftoppm is not installed");
        using var sender = await Sender.To(station);
        for (var scan = 0; scan < Scans / 2; scan++)
        {
            await Scan();
        }

        var half = station.ResidentMegabytes;
        for (var scan = 0; scan < Scans / 2; scan++)
        {
            await Scan();
        }

        TestContext.Current.SendDiagnosticMessage($"{Scans} scans: {half} MB after half of them, {station.ResidentMegabytes} MB after all");
        Assert.InRange(station.ResidentMegabytes, 1, half * 1.1);

        async Task Scan()
        {
            var (status, said) = await sender.Said("scan/frame", new ByteArrayContent(frame));
            Assert.True(status == HttpStatusCode.OK && said.Contains($"{order}/string", StringComparison.Ordinal), $"{status}: {said}");
        }
    }

    private static List<JsonElement> Jobs(string book) =>
        [.. JsonDocument.Parse(Station.Run(["jobs", "--json", "--job-book", book]).Output).RootElement.EnumerateArray()];

    /// <summary>What a browser sends for it, one after the other.</summary>
    private static async Task PrintASet(Station station, int order)
    {
        using var sender = await Sender.To(station);
        var rows = new StringContent($"order,piece,kind,finished_length\n{order},string,recurve-string,66\n");
        using var taken = await sender.Post("orders", new MultipartFormDataContent { { rows, "file", $"of-{order}.csv" } });
        Assert.Equal(HttpStatusCode.Redirect, taken.StatusCode);
        var (_, said) = await sender.Said($"papers/of-{order}.csv", new FormUrlEncodedContent([new("order", $"{order}"), new("kind", "cards")]));
        Assert.Contains($"1 set printed: {order}.", said, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(station.Folder, "papers", $"of-{order}", "cards.pdf")));
    }

    /// <summary>Presses save in all pages at once.</summary>
    /// <returns>What each was answered.</returns>
    private static async Task<string[]> Saved(IReadOnlyList<IPage> pages)
    {
        await Task.WhenAll(pages.Select(p => p.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Save as built" }).ClickAsync()));
        return await Task.WhenAll(pages.Select(async p =>
        {
            await Assertions.Expect(p.Locator("#answer :is(.done, .warning)").First).ToBeVisibleAsync();
            return await p.Locator("#answer").InnerTextAsync();
        }));
    }

    /// <summary>A browser of its own at a piece whose length is typed and not saved.</summary>
    private async Task<IPage> Measured(Station station, string order)
    {
        var page = await browser.Open(Size.Tablet);
        await page.GotoAsync($"{station.Address}build/of/{order}/string");
        await Bench.To(page, "Measured");
        await page.Locator("#length").FillAsync("66");
        return page;
    }
}
