using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.RegularExpressions;
using Tagend.Tags;

namespace Tagend.Benchmarks;

/// <summary>A figure of the station.</summary>
/// <param name="Bound">What it is held to.</param>
internal sealed record StationFigure(string Name, string Value, string Bound);

/// <summary>The station as published, asked as a browser asks: its start against a bare web server's, and its answers.</summary>
/// <param name="tagend">The program.</param>
/// <param name="floor">The bare web server.</param>
/// <param name="templates">A shop's, which are copied.</param>
/// <param name="folder">For the shop; gone afterwards.</param>
internal sealed partial class StationRuns(string tagend, string floor, string templates, string folder)
{
    private const int Rows = 300;

    /// <param name="once">A single run of each, which proves that it runs.</param>
    public async Task<IReadOnlyList<StationFigure>> Run(Bench bench, bool once)
    {
        var (starts, edits, frames, idle) = once ? (1, 2, 2, TimeSpan.Zero) : (15, 60, 60, TimeSpan.FromSeconds(10));
        Copy(templates, Path.Combine(folder, "templates"));
        try
        {
            var firsts = new List<(double Floor, double Station)>();
            for (var round = 0; round < starts; round++)
            {
                firsts.Add((await FirstPage(p => [floor, $"{p}"]), await FirstPage(Station)));
            }

            var port = FreePort();
            using var station = Begin(Station(port));
            using var client = await Client(port);
            await Task.Delay(idle);
            var memory = Resident(station);
            var weight = await Weight(client);
            var cell = await Edits(client, edits);
            var frame = await Frames(client, bench, frames);
            station.Kill();
            await station.WaitForExitAsync();
            return
            [
                new("from its start to its first page", $"{Milliseconds(firsts.Select(f => f.Station))}, a bare web server {Milliseconds(firsts.Select(f => f.Floor))}: "
                    + $"× {Number(Median(firsts.Select(f => f.Station / f.Floor)))}", "× 3"),
                new($"a cell edited in a file of {Rows} rows: checked and answered", Milliseconds(cell), "100 ms"),
                new("a frame of 1 megapixel with a tag: read and answered", Milliseconds(frame), "150 ms"),
                new("the first page with all it needs", $"{Number(weight / 1000.0)} KB", "150 KB"),
                new("memory when idle", $"{Number(memory)} MB", "100 MB"),
            ];
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private IReadOnlyList<string> Station(int port) =>
        [tagend, "station", "--no-browser", "--port", $"{port}", "--templates", Path.Combine(folder, "templates"), "--job-book", Path.Combine(folder, "book.db")];

    private static async Task<double> FirstPage(Func<int, IReadOnlyList<string>> commandAt)
    {
        var port = FreePort();
        using var client = new HttpClient { BaseAddress = new Uri($"http://localhost:{port}/") };
        var watch = Stopwatch.StartNew();
        using var process = Begin(commandAt(port));
        await Page(client);
        var milliseconds = watch.Elapsed.TotalMilliseconds;
        process.Kill();
        await process.WaitForExitAsync();
        return milliseconds;
    }

    /// <summary>The page, asked for until somebody answers.</summary>
    private static async Task<string> Page(HttpClient client)
    {
        for (; ; )
        {
            try
            {
                return await client.GetStringAsync(new Uri("orders", UriKind.Relative));
            }
            catch (HttpRequestException e) when (e.InnerException is SocketException)
            {
                await Task.Yield();
            }
        }
    }

    private static Process Begin(IReadOnlyList<string> command) =>
        Process.Start(new ProcessStartInfo(command[0], command.Skip(1)) { RedirectStandardOutput = true, RedirectStandardInput = true })!;

    private static async Task<HttpClient> Client(int port)
    {
        var address = $"http://localhost:{port}";
        var client = new HttpClient(new HttpClientHandler { CookieContainer = new CookieContainer() }) { BaseAddress = new Uri(address + "/") };
        client.DefaultRequestHeaders.Add("X-Tagend-Token", Token().Match(await Page(client)).Groups[1].Value);
        client.DefaultRequestHeaders.TryAddWithoutValidation("Origin", address);
        return client;
    }

    /// <summary>Of the page and everything that it names.</summary>
    private static async Task<long> Weight(HttpClient client)
    {
        var page = await Page(client);
        var bytes = Encoding.UTF8.GetByteCount(page);
        foreach (var asset in Assets().Matches(page).Select(m => m.Groups[1].Value).Append("/assets/inter-semibold.woff2").Distinct())
        {
            bytes += (await client.GetByteArrayAsync(new Uri(asset, UriKind.Relative))).Length;
        }

        return bytes;
    }

    private static async Task<IReadOnlyList<double>> Edits(HttpClient client, int edits)
    {
        var season = Season.Csv(Rows);
        using var file = new MultipartFormDataContent { { new StringContent(season), "file", "season.csv" } };
        using var taken = await client.PostAsync(new Uri("orders", UriKind.Relative), file);
        var header = season.Split('\n')[0].Split(',');
        var column = Array.IndexOf(header, "strands");
        var times = new List<double>();
        var strands = "24";
        for (var edit = -1; edit < edits; edit++)
        {
            var text = strands == "24" ? "26" : "24";
            using var cell = new FormUrlEncodedContent(new Dictionary<string, string>
            {
                ["row"] = "150",
                ["column"] = $"{column}",
                ["title"] = "",
                ["was"] = strands,
                ["text"] = text,
                ["show"] = "all",
                ["set"] = "set-10051-150",
            });
            times.Add(await Timed(client, "orders/season.csv/cell", cell, $">{text}</button>"));
            strands = text;
        }

        return times[1..];
    }

    private static async Task<IReadOnlyList<double>> Frames(HttpClient client, Bench bench, int frames)
    {
        var path = Path.GetTempFileName();
        Bench.Photograph(TagWriter.Write(bench.Sets(Encoding.UTF8.GetBytes(Season.Csv(1)))[0].Builds[0].Spec), 1152, 864, path);
        var picture = await File.ReadAllBytesAsync(path);
        File.Delete(path);
        var times = new List<double>();
        for (var frame = -1; frame < frames; frame++)
        {
            using var content = new ByteArrayContent(picture);
            times.Add(await Timed(client, "scan/frame", content, "10001/string"));
        }

        return times[1..];
    }

    /// <summary>The milliseconds to an answer, which says what it must.</summary>
    private static async Task<double> Timed(HttpClient client, string path, HttpContent content, string expected)
    {
        var watch = Stopwatch.StartNew();
        using var answer = await client.PostAsync(new Uri(path, UriKind.Relative), content);
        var said = await answer.Content.ReadAsStringAsync();
        var milliseconds = watch.Elapsed.TotalMilliseconds;
        return answer.IsSuccessStatusCode && said.Contains(expected, StringComparison.Ordinal)
            ? milliseconds
            : throw new InvalidOperationException($"{path}: {answer.StatusCode}, without {expected}: {said}");
    }

    private static void Copy(string from, string to)
    {
        foreach (var file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories).Where(f => !Path.GetFileName(f).StartsWith("tagend-jobs", StringComparison.Ordinal)))
        {
            var copy = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }
    }

    private static double Resident(Process process) => double.Parse(
        File.ReadLines($"/proc/{process.Id}/status").First(l => l.StartsWith("VmRSS", StringComparison.Ordinal)).Split(' ', StringSplitOptions.RemoveEmptyEntries)[^2],
        CultureInfo.InvariantCulture) / 1024;

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    private static double Median(IEnumerable<double> numbers) => numbers.Order().ElementAt(numbers.Count() / 2);

    private static string Milliseconds(IEnumerable<double> times) => $"{Number(Median(times))} ms";

    private static string Number(double number) => number.ToString("#,0.0", CultureInfo.InvariantCulture);

    [GeneratedRegex("name=\"tagend-token\" content=\"([^\"]+)\"")]
    private static partial Regex Token();

    [GeneratedRegex("(?:src|href)=\"(/(?:assets|manifest)[^\"#]*)")]
    private static partial Regex Assets();
}
