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

    [Theory]
    [MemberData(nameof(BrokenForms))]
    public async Task Form_ThatNoPageSends_IsRefusedInWords(string how, string type, byte[] body, HttpStatusCode refused, bool isTokenInForm)
    {
        var token = await Token();
        foreach (var path in (string[])["orders", "book/spools"])
        {
            using var request = Upload("x.csv", new StringContent(""), Address.ToString().TrimEnd('/'), isTokenInForm ? null : token);
            (request.RequestUri, request.Content) = (new Uri(Address, path), new ByteArrayContent(body));
            request.Content.Headers.TryAddWithoutValidation("Content-Type", type);
            var (status, said) = await Send(request);
            Assert.True(status == refused, $"{how}, {path}: {status}");
            Assert.Contains(refused == HttpStatusCode.RequestEntityTooLarge ? "save it as a file" : "cannot be read: reload the page", said, StringComparison.Ordinal);
            Assert.DoesNotContain("fault of the program", said, StringComparison.Ordinal);
            Assert.DoesNotContain("the shop's folder", said, StringComparison.Ordinal);
        }
    }

    public static TheoryData<string, string, byte[], HttpStatusCode, bool> BrokenForms()
    {
        const string Plain = "application/x-www-form-urlencoded";
        const string Parts = "multipart/form-data";
        const string Part = "--x\r\nContent-Disposition: form-data; name=\"rows\"\r\n";
        var data = new TheoryData<string, string, byte[], HttpStatusCode, bool>();
        foreach (var isTokenInForm in (bool[])[false, true])
        {
            Add("a charset that is unsafe", $"{Plain}; charset=utf-7", "rows=a", HttpStatusCode.UnsupportedMediaType);
            Add("a charset that none has", $"{Plain}; charset=nonsense", "rows=a", HttpStatusCode.UnsupportedMediaType);
            Add("a charset that is not the pages'", $"{Plain}; charset=iso-8859-1", "rows=a", HttpStatusCode.UnsupportedMediaType);
            Add("a character that no text has", Plain, "rows=%00", HttpStatusCode.BadRequest);
            Add("too many fields", Plain, string.Concat(Enumerable.Range(0, 1025).Select(i => $"f{i}=&")), HttpStatusCode.BadRequest);
            Add("more than a field takes", Plain, $"rows={new string('a', (4 << 20) + 1)}", HttpStatusCode.RequestEntityTooLarge);

            void Add(string how, string type, string body, HttpStatusCode refused) => data.Add(how, type, System.Text.Encoding.UTF8.GetBytes(body), refused, isTokenInForm);
        }

        Multipart("a charset of a part", $"{Parts}; boundary=x", $"{Part}Content-Type: text/plain; charset=utf-7\r\n\r\na\r\n--x--\r\n", HttpStatusCode.BadRequest);
        Multipart("no boundary", Parts, $"{Part}\r\na\r\n--x--\r\n", HttpStatusCode.BadRequest);
        Multipart("another boundary", $"{Parts}; boundary=y", $"{Part}\r\na\r\n--x--\r\n", HttpStatusCode.BadRequest);
        Multipart("a boundary that is too long", $"{Parts}; boundary={new string('x', 200)}", "--x", HttpStatusCode.BadRequest);
        Multipart("no end", $"{Parts}; boundary=x", $"{Part}\r\na", HttpStatusCode.BadRequest);
        Multipart("a head that is none", $"{Parts}; boundary=x", "--x\r\nnonsense\r\n\r\na\r\n--x--\r\n", HttpStatusCode.BadRequest);
        return data;

        void Multipart(string how, string type, string body, HttpStatusCode refused) => data.Add(how, type, System.Text.Encoding.UTF8.GetBytes(body), refused, false);
    }

    [Theory]
    [InlineData("application/x-www-form-urlencoded; charset=UTF-8")]
    [InlineData("application/x-www-form-urlencoded; charset=\"utf-8\"")]
    [InlineData("application/x-www-form-urlencoded")]
    public async Task Form_InUtf8_IsRead(string type)
    {
        using var request = Upload("x.csv", new StringContent(""), Address.ToString().TrimEnd('/'), null);
        request.Content = new StringContent($"rows=order%2Cpiece%0A&token={Uri.EscapeDataString(await Token())}");
        request.Content.Headers.Remove("Content-Type");
        request.Content.Headers.TryAddWithoutValidation("Content-Type", type);
        Assert.Equal(HttpStatusCode.Redirect, (await Send(request)).Status);
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
