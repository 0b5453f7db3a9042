using System.Diagnostics;
using System.Net;
using System.Text.RegularExpressions;
using Xunit;

namespace Tagend.StationTests;

/// <summary>A station whose disk fails for a while, by strace's injection: each write is told, nothing of it is there, and it works again after.</summary>
public sealed class DiskFaultTests : IDisposable
{
    private const string Orders = "order,piece,kind,finished_length\nF-1,string,compound-string,60 1/4\n";

    private readonly Station _station = Station.OfDemoShop();
    private readonly HttpClient _client = new(new HttpClientHandler { CookieContainer = new CookieContainer(), AllowAutoRedirect = false });

    public void Dispose()
    {
        _client.Dispose();
        _station.Dispose();
    }

    [Fact]
    public async Task Write_OnADiskThatFails_IsToldAndDoneWhenItIsMended()
    {
        Printed.Order(_station, order: "B-1");
        var tag = Printed.Job(_station, "B-1").GetProperty("tag").GetString()!;
        Assert.Equal(HttpStatusCode.Redirect, (await Post("build", ("piece", "B-1/string"))).Status);
        Assert.Equal(HttpStatusCode.Redirect, (await Post("orders", ("rows", Orders))).Status);
        (string Path, (string, string)[] Form)[] writes =
        [
            ("orders/pasted.csv/cell", [("row", "0"), ("column", "3"), ("title", "finished_length"), ("was", "60 1/4"), ("text", "60 3/8"), ("set", "F-1")]),
            ("orders/pasted.csv/keep", []),
            ($"build/{Path.GetFileName(Directory.GetFiles(Path.Combine(_station.Folder, "station", "bench"))[0])}/step", [("step", "2"), ("moves", "0")]),
            ($"build/{new string('0', 24)}/built", [("tag", tag), ("key", $"{Guid.NewGuid()}"), ("length", "60 5/16")]),
            ("book/spools", [("name", "hmpe-0145"), ("lot", "H88-4"), ("length", "900 m"), ("count", "2")]),
            ("book/B-1/state", [("what", "Shipped")]),
            ("shop/setting", [("file", "shop.toml"), ("section", ""), ("key", "phone"), ("was", "555 0100"), ("value", "555 0199")]),
        ];
        var before = State();
        using (Failing())
        {
            foreach (var (path, form) in writes)
            {
                var (status, said) = await Post(path, form);
                Assert.True(status == HttpStatusCode.InternalServerError, $"{path}: {status}");
                Assert.DoesNotContain("fault of the program", said, StringComparison.Ordinal);
                Assert.Equal(before, State());
            }
        }

        foreach (var (path, form) in writes)
        {
            var (status, said) = await Post(path, form);
            Assert.True((int)status < 400, $"{path}: {status} {said}");
        }

        Assert.Contains("60 3/8", File.ReadAllText(Path.Combine(_station.Folder, "orders", "pasted.csv")), StringComparison.Ordinal);
        Assert.Equal("shipped", Printed.Job(_station, "B-1").GetProperty("state").GetString());
    }

    /// <summary>Files but hidden ones, and what the book says.</summary>
    private string State() => string.Join(
        '\n',
        Directory.GetFiles(_station.Folder, "*", SearchOption.AllDirectories).Where(f => !f.Contains(".db", StringComparison.Ordinal)).Order(StringComparer.Ordinal)
            .Select(f => $"{f} {Convert.ToHexString(File.ReadAllBytes(f))}")
            .Append(Station.Run(["jobs", "--json", "--templates", _station.Templates]).Output)
            .Append(Station.Run(["spools", "--json", "--templates", _station.Templates]).Output));

    /// <summary>Lets the station's forcing to disk fail until it is disposed of.</summary>
    private Failure Failing()
    {
        var start = new ProcessStartInfo("strace", ["-f", "-p", $"{_station.ProcessId}", "-o", "/dev/null", "-e", "trace=fsync,fdatasync", "-e", "inject=fsync,fdatasync:error=EIO"])
        {
            RedirectStandardError = true,
        };
        try
        {
            var strace = Process.Start(start)!;
            var first = strace.StandardError.ReadLine() ?? "";
            Assert.SkipUnless(first.Contains("attached", StringComparison.Ordinal), "strace may not trace here");
            return new Failure(strace);
        }
        catch (System.ComponentModel.Win32Exception)
        {
            Assert.Skip("strace is not installed");
            throw;
        }
    }

    private async Task<(HttpStatusCode Status, string Said)> Post(string path, params (string Name, string Value)[] form)
    {
        var page = await _client.GetStringAsync(new Uri(_station.Address, "orders"), TestContext.Current.CancellationToken);
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri(_station.Address, path))
        {
            Content = new FormUrlEncodedContent(form.Select(f => KeyValuePair.Create(f.Name, f.Value))),
        };
        request.Headers.Add("X-Tagend-Token", Regex.Match(page, "name=\"tagend-token\" content=\"([^\"]+)\"").Groups[1].Value);
        request.Headers.Add("Origin", _station.Address.ToString().TrimEnd('/'));
        using var answer = await _client.SendAsync(request, TestContext.Current.CancellationToken);
        return (answer.StatusCode, WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)));
    }

    /// <summary>A disk that fails as long as strace is there.</summary>
    private sealed class Failure(Process strace) : IDisposable
    {
        public void Dispose()
        {
            using (Process.Start("kill", ["-INT", $"{strace.Id}"]))
            {
                strace.WaitForExit();
            }

            strace.Dispose();
        }
    }
}
