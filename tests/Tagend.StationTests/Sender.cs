using System.Net;
using System.Text.RegularExpressions;
using Xunit;

namespace Tagend.StationTests;

/// <summary>Sends what a browser would, without one: with its cookie, its token, and the page it comes from.</summary>
internal sealed class Sender : IDisposable
{
    private readonly HttpClient _client = new(new HttpClientHandler { CookieContainer = new CookieContainer(), AllowAutoRedirect = false });

    private Sender(Station station) => _client.BaseAddress = station.Address;

    public static async Task<Sender> To(Station station)
    {
        var sender = new Sender(station);
        var page = await sender._client.GetStringAsync(new Uri("orders", UriKind.Relative), TestContext.Current.CancellationToken);
        sender._client.DefaultRequestHeaders.Add("X-Tagend-Token", Regex.Match(page, "name=\"tagend-token\" content=\"([^\"]+)\"").Groups[1].Value);
        sender._client.DefaultRequestHeaders.TryAddWithoutValidation("Origin", station.Address.ToString().TrimEnd('/'));
        return sender;
    }

    public Task<HttpResponseMessage> Post(string path, HttpContent content) =>
        _client.PostAsync(new Uri(path, UriKind.Relative), content, TestContext.Current.CancellationToken);

    /// <summary>What the station says to a post.</summary>
    public async Task<(HttpStatusCode Status, string Said)> Said(string path, HttpContent content)
    {
        using var answer = await Post(path, content);
        return (answer.StatusCode, WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)));
    }

    /// <summary>Asks before it sends, as a browser does not and curl does.</summary>
    public async Task<HttpStatusCode> Announce(string path, HttpContent content)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri(path, UriKind.Relative)) { Content = content, Headers = { ExpectContinue = true } };
        using var answer = await _client.SendAsync(request, TestContext.Current.CancellationToken);
        return answer.StatusCode;
    }

    public void Dispose() => _client.Dispose();
}
