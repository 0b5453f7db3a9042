using System.Net;
using System.Text.RegularExpressions;
using Xunit;

namespace Tagend.StationTests;

/// <summary>Phones and tablets: let in by a code, shut out again, and slowed down when they guess.</summary>
public sealed class DevicesTests(Browser browser) : IDisposable
{
    private readonly Station _station = Station.OfDemoShop("--lan");

    private Uri Outside => new($"https://localhost:{_station.Port + 1}/");

    [Fact]
    public async Task Device_WithTheCode_IsLetInOnceAndCanBeShutOut()
    {
        var desk = await browser.Open(Size.Desk);
        await desk.GotoAsync($"{_station.Address}devices");
        await Look.Everywhere(desk, "devices-code");
        var code = await desk.Locator(".entrance .number").InnerTextAsync();
        var phone = await browser.Open(Size.Phone, new Microsoft.Playwright.BrowserNewContextOptions { IgnoreHTTPSErrors = true });
        await phone.GotoAsync($"{Outside}orders");
        Assert.EndsWith("/enter", phone.Url, StringComparison.Ordinal);
        await Look.Everywhere(phone, "enter");
        await phone.GetByLabel("The code on the station's screen").FillAsync(code);
        await phone.GetByRole(Microsoft.Playwright.AriaRole.Button).ClickAsync();
        await Arrival.At(phone, "/orders");
        var refused = await phone.GotoAsync($"{Outside}devices");
        Assert.Equal(403, refused!.Status);
        Assert.Contains("on the machine that the station runs on", await phone.InnerTextAsync("main"), StringComparison.Ordinal);

        // The code was for one device.
        var (client, _) = Stranger();
        Assert.Equal(HttpStatusCode.Forbidden, await Enter(client, code.Replace(" ", "", StringComparison.Ordinal)));

        _station.Kill();
        _station.Start(); // it knows the phone again
        await phone.GotoAsync($"{Outside}orders");
        Assert.EndsWith("/orders", phone.Url, StringComparison.Ordinal);
        await desk.ReloadAsync();
        await desk.GetByRole(Microsoft.Playwright.AriaRole.Button, new() { Name = "Shut it out" }).ClickAsync();
        await Microsoft.Playwright.Assertions.Expect(desk.GetByText("None.")).ToBeVisibleAsync();
        await phone.GotoAsync($"{Outside}orders");
        Assert.EndsWith("/enter", phone.Url, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Code_OnTheScreen_IsReadByAnotherDecoderAndLetsAPhoneIn()
    {
        var desk = await browser.Open(Size.Tablet);
        await desk.GotoAsync($"{_station.Address}devices");
        var picture = Path.Combine(_station.Folder, "code.png");
        await desk.Locator("svg.code").ScreenshotAsync(new Microsoft.Playwright.LocatorScreenshotOptions { Path = picture });
        var link = Tool.Said("zbarimg", "--quiet", "--raw", picture)?.Trim();
        Assert.SkipWhen(link is null, "zbarimg is not installed");
        Assert.Matches($@"^https://[0-9.]+:{_station.Port + 1}/enter\?code=[A-Z0-9]{{8}}$", link);

        var phone = await browser.Open(Size.Phone, new Microsoft.Playwright.BrowserNewContextOptions { IgnoreHTTPSErrors = true });
        await phone.GotoAsync(link);
        await phone.GetByRole(Microsoft.Playwright.AriaRole.Button, new() { Name = "Let this device in" }).ClickAsync();
        await Arrival.At(phone, "/orders");
    }

    [Fact]
    public async Task Stranger_SeesNothingAndIsSlowedDown()
    {
        var (client, handler) = Stranger();
        foreach (var path in new[] { "orders", "shop", "papers", "devices", "alive", "" })
        {
            var answer = await client.GetAsync(new Uri(Outside, path), TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        }

        Assert.Equal(HttpStatusCode.Forbidden, await Enter(client, "AAAAAAAA"));
        Assert.Equal(HttpStatusCode.TooManyRequests, await Enter(client, "BBBBBBBB"));
        Assert.Equal(HttpStatusCode.TooManyRequests, await Enter(client, "CCCCCCCC"));
        Assert.NotNull(handler);
    }

    public void Dispose() => _station.Dispose();

    private static (HttpClient Client, HttpClientHandler Handler) Stranger()
    {
        var handler = new HttpClientHandler
        {
            CookieContainer = new CookieContainer(),
            AllowAutoRedirect = false,
            ServerCertificateCustomValidationCallback = HttpClientHandler.DangerousAcceptAnyServerCertificateValidator,
        };
        return (new HttpClient(handler), handler);
    }

    private async Task<HttpStatusCode> Enter(HttpClient client, string code)
    {
        var page = await client.GetStringAsync(new Uri(Outside, "enter"), TestContext.Current.CancellationToken);
        var token = Regex.Match(page, "name=\"tagend-token\" content=\"([^\"]+)\"").Groups[1].Value;
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri(Outside, "enter"))
        {
            Content = new FormUrlEncodedContent(new Dictionary<string, string> { ["token"] = token, ["code"] = code }),
        };
        request.Headers.TryAddWithoutValidation("Origin", Outside.ToString().TrimEnd('/'));
        return (await client.SendAsync(request, TestContext.Current.CancellationToken)).StatusCode;
    }
}
