using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using Xunit;

namespace Tagend.StationTests;

/// <summary>Several stations and browsers at once on one job book.</summary>
public class LoadTests
{
    private const int Browsers = 10;

    [Fact]
    public async Task TwoStations_WithTenBrowsersOnOneBook_LoseNothing()
    {
        using var first = Station.Empty();
        var book = Path.Combine(first.Folder, "shared.db");
        using var second = Station.Empty("--job-book", book);
        first.Begin();
        second.Begin();
        first.Start(("TAGEND_JOB_BOOK", book));
        second.Start();
        await Task.WhenAll(Enumerable.Range(0, Browsers).Select(i => PrintASet(i % 2 == 0 ? first : second, 7001 + i)));

        using var jobs = JsonDocument.Parse(Station.Run(["jobs", "--json", "--job-book", book]).Output);
        Assert.Equal(
            Enumerable.Range(7001, Browsers).Select(o => $"{o}"),
            jobs.RootElement.EnumerateArray().Select(j => j.GetProperty("order").GetString()).Order(StringComparer.Ordinal));
    }

    /// <summary>What a browser sends for it, one after the other.</summary>
    private static async Task PrintASet(Station station, int order)
    {
        using var client = new HttpClient(new HttpClientHandler { CookieContainer = new CookieContainer(), AllowAutoRedirect = false });
        var token = Regex.Match(await client.GetStringAsync(new Uri(station.Address, "orders"), TestContext.Current.CancellationToken), "name=\"tagend-token\" content=\"([^\"]+)\"").Groups[1].Value;
        client.DefaultRequestHeaders.Add("X-Tagend-Token", token);
        client.DefaultRequestHeaders.TryAddWithoutValidation("Origin", station.Address.ToString().TrimEnd('/'));
        var rows = new StringContent($"order,piece,kind,finished_length\n{order},string,recurve-string,66\n");
        var taken = await client.PostAsync(new Uri(station.Address, "orders"), new MultipartFormDataContent { { rows, "file", $"of-{order}.csv" } }, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Redirect, taken.StatusCode);
        var wish = new FormUrlEncodedContent([new("order", $"{order}"), new("kind", "cards")]);
        var printed = await client.PostAsync(new Uri(station.Address, $"papers/of-{order}.csv"), wish, TestContext.Current.CancellationToken);
        Assert.Contains($"1 set printed: {order}.", await printed.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(station.Folder, "papers", $"of-{order}", "cards.pdf")));
    }
}
