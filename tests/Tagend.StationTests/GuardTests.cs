using System.Net;
using System.Text.RegularExpressions;
using Xunit;

namespace Tagend.StationTests;

/// <summary>Who is answered, and what is refused: without a browser, as somebody would try.</summary>
public sealed class GuardTests(DemoStation demo) : IClassFixture<DemoStation>, IDisposable
{
    private readonly HttpClient _client = new(new HttpClientHandler { CookieContainer = new CookieContainer(), AllowAutoRedirect = false });

    private Uri Address => demo.Station.Address;

    [Theory]
    [InlineData("evil.example")]
    [InlineData("evil.example:80")]
    [InlineData("localhost.evil.example")]
    [InlineData("localhost")]
    public async Task Host_ThatIsForeign_IsNotAnswered(string host)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, new Uri(Address, "orders")) { Headers = { Host = host } };
        var (status, said) = await Send(request);
        Assert.Equal(HttpStatusCode.MisdirectedRequest, status);
        Assert.DoesNotContain("<", said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("https://evil.example", true)]
    [InlineData("null", true)]
    [InlineData(null, true)]
    [InlineData("own", false)]
    public async Task Change_FromAForeignPageOrWithoutAToken_IsRefused(string? origin, bool hasToken)
    {
        using var request = Upload("evil.csv", new StringContent("order,piece\n"), origin == "own" ? Address.ToString().TrimEnd('/') : origin, hasToken ? await Token() : null);
        Assert.Equal(HttpStatusCode.Forbidden, (await Send(request)).Status);
        Assert.False(File.Exists(Path.Combine(demo.Station.Folder, "station", "drafts", "evil.csv")));
    }

    [Fact]
    public async Task Token_OfAnotherBrowser_IsRefused()
    {
        using var other = new HttpClient();
        var foreign = TokenIn(await other.GetStringAsync(new Uri(Address, "orders"), TestContext.Current.CancellationToken));
        _ = await Token();
        using var request = Upload("evil.csv", new StringContent("order,piece\n"), Address.ToString().TrimEnd('/'), foreign);
        Assert.Equal(HttpStatusCode.Forbidden, (await Send(request)).Status);
    }

    [Theory]
    [InlineData("orders/..%2f..%2ftemplates%2fshop.toml")]
    [InlineData("orders/..%2fstation%2fsecret/file")]
    [InlineData("orders/%2e%2e/file")]
    [InlineData("papers/..%2ftemplates/made/shop.toml")]
    [InlineData("papers/x/made/..%2f..%2ftemplates%2fshop.toml")]
    [InlineData("assets/..%2f..%2ftagend")]
    public async Task Path_ThatLeadsElsewhere_IsNotThere(string path)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, new Uri(Address, path));
        var (status, said) = await Send(request);
        Assert.Equal(HttpStatusCode.NotFound, status);
        Assert.DoesNotContain("post_diameter", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Upload_WithANameThatLeadsElsewhere_IsKeptAmongTheDrafts()
    {
        using var request = Upload("../../templates/sneaked.csv", new StringContent("order,piece\n"), Address.ToString().TrimEnd('/'), await Token());
        await Send(request);
        Assert.Single(Directory.EnumerateFiles(demo.Station.Folder, "sneaked.csv", SearchOption.AllDirectories), f => f.Contains("drafts", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("orders")]
    [InlineData("build")]
    [InlineData("book/spools")]
    [InlineData("scan/text")]
    public async Task Change_ThatIsNoForm_IsRefusedInWords(string path)
    {
        using var request = Upload("x.csv", new StringContent(""), Address.ToString().TrimEnd('/'), await Token());
        (request.RequestUri, request.Content) = (new Uri(Address, path), new StringContent("{}", System.Text.Encoding.UTF8, "application/json"));
        var (status, said) = await Send(request);
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, status);
        Assert.DoesNotContain("fault of the program", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task BuildOfANumberThatNoneHas_IsSaid()
    {
        using var request = Upload("x.csv", new StringContent(""), Address.ToString().TrimEnd('/'), await Token());
        (request.RequestUri, request.Content) = (new Uri(Address, "book/builds/999999"), new FormUrlEncodedContent([KeyValuePair.Create("what", "")]));
        Assert.Equal(HttpStatusCode.NotFound, (await Send(request)).Status);
    }

    [Fact]
    public async Task Upload_OfAGigabyte_IsRefusedBeforeItIsRead()
    {
        using var request = Upload("huge.csv", new StreamContent(new Zeros(1L << 30)), Address.ToString().TrimEnd('/'), await Token());
        request.Headers.ExpectContinue = true;
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, (await Send(request)).Status);
        Assert.False(File.Exists(Path.Combine(demo.Station.Folder, "station", "drafts", "huge.csv")));
    }

    [Fact]
    public async Task Pages_OfTheStation_AllowNothingButItsOwnFiles()
    {
        var answer = await _client.GetAsync(new Uri(Address, "orders"), TestContext.Current.CancellationToken);
        var policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
        Assert.StartsWith("default-src 'none'; script-src 'self'; style-src 'self';", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        var page = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.DoesNotMatch(@"<script>|<script(?![^>]*\bsrc=)|\son\w+=|\sstyle=|https?://", page);
    }

    public void Dispose() => _client.Dispose();

    private HttpRequestMessage Upload(string name, HttpContent content, string? origin, string? token)
    {
        var request = new HttpRequestMessage(HttpMethod.Post, new Uri(Address, "orders")) { Content = new MultipartFormDataContent { { content, "file", name } } };
        if (origin is not null)
        {
            request.Headers.TryAddWithoutValidation("Origin", origin);
        }

        if (token is not null)
        {
            request.Headers.Add("X-Tagend-Token", token);
        }

        return request;
    }

    private async Task<(HttpStatusCode Status, string Said)> Send(HttpRequestMessage request)
    {
        using var answer = await _client.SendAsync(request, TestContext.Current.CancellationToken);
        return (answer.StatusCode, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    private async Task<string> Token() => TokenIn(await _client.GetStringAsync(new Uri(Address, "orders"), TestContext.Current.CancellationToken));

    private static string TokenIn(string page) => Regex.Match(page, "name=\"tagend-token\" content=\"([^\"]+)\"").Groups[1].Value;
}
