using System.Net;
using System.Net.Sockets;
using Tagend.Problems;
using Tagend.Station.Desk;
using Tagend.Station.Frame;
using Tagend.Station.Guard;

namespace Tagend.Station;

/// <summary>The station: a web server for the shop's own browsers, until it is stopped.</summary>
public static class StationServer
{
    /// <summary>What the station answers to another start on its port.</summary>
    private const string AliveWord = "tagend station";

    /// <summary>A station on a busy machine takes its time; where nobody listens the answer comes at once.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    // A file of orders has 64 MB at most; a photo less.
    private const long MostBytes = 65L << 20;

    /// <summary>Answers until the process is told to stop.</summary>
    /// <param name="ready">Gets the station's address when it answers.</param>
    /// <exception cref="TagendException">It cannot start; the sentence says why.</exception>
    public static void Run(StationOptions options, Action<string> ready)
    {
        using var app = Build(options);
        try
        {
            app.StartAsync().GetAwaiter().GetResult();
        }
        catch (IOException e) when (e.InnerException is Microsoft.AspNetCore.Connections.AddressInUseException or SocketException || e is { InnerException: null })
        {
            throw new TagendException(PortTaken(options), e);
        }
        catch (SocketException e)
        {
            throw new TagendException($"port {options.Port} of this machine may not be used ({e.Message}): choose another with --port, such as {StationOptions.UsualPort}", e);
        }

        ready(AddressOf(options));
        app.WaitForShutdownAsync().GetAwaiter().GetResult();
    }

    /// <summary>Where a browser on this machine finds it.</summary>
    public static string AddressOf(StationOptions options) => $"http://localhost:{options.Port}/";

    /// <summary>Whether a station answers at the port already.</summary>
    public static bool IsRunning(StationOptions options)
    {
        try
        {
            using var client = new HttpClient { Timeout = Patience };
            return client.GetStringAsync(new Uri($"{AddressOf(options)}alive")).GetAwaiter().GetResult() == AliveWord;
        }
        catch (Exception e) when (e is HttpRequestException or TaskCanceledException)
        {
            return false; // whatever it is, it is no station
        }
    }

    private static WebApplication Build(StationOptions options)
    {
        var secret = StationSecret.In(options.OwnFolder);
        var devices = DeviceList.In(options.OwnFolder, secret);
        var addresses = options.IsOnNetwork ? StationCertificate.Addresses() : [];
        var certificate = options.IsOnNetwork ? StationCertificate.In(options.OwnFolder, addresses, options.Clock) : null;
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory });
        builder.Logging.ClearProviders();
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = MostBytes;
            kestrel.ListenLocalhost(options.Port);
            if (certificate is not null)
            {
                kestrel.ListenAnyIP(options.NetworkPort, listen => listen.UseHttps(certificate));
            }
        });
        builder.WebHost.UseKestrelHttpsConfiguration();
        builder.Services.Configure<HostOptions>(host => host.ShutdownTimeout = TimeSpan.FromSeconds(3));
        builder.Services.AddSingleton(devices);
        builder.Services.AddSingleton(new EntryCode(options.Clock));
        builder.Services.AddSingleton(new ShopDesk(options));
        builder.Services.AddSingleton<OrderDesk>();
        builder.Services.AddSingleton<PaperDesk>();
        builder.Services.AddSingleton<StartDesk>();
        builder.Services.AddSingleton<BenchDesk>();
        builder.Services.AddSingleton<CameraDesk>();
        builder.Services.AddSingleton(new Navigation([.. ScreenList.All.Select(s => s.Nav).OfType<NavEntry>()]));

        var app = builder.Build();
        var gate = new Gate(options, HostsOf(options, addresses), secret, devices);
        app.Use(next => context => SentForm.Read(context, next));
        app.Use(next => context => Faults.Catch(context, next));
        app.Use(next => context => gate.Pass(context, next));
        app.Use(next => context => LeadToStart(context, next));
        app.UseRouting();
        app.MapGet("/alive", () => TypedResults.Text(AliveWord));
        app.MapGet("/", () => TypedResults.Redirect(ScreenList.All[0].Nav!.Path));
        Asset.Map(app);
        foreach (var screen in ScreenList.All)
        {
            screen.Map(app);
        }

        app.MapFallback(() => NotHere());
        return app;
    }

    /// <summary>A shop that has said nothing of itself yet is asked first.</summary>
    private static Task LeadToStart(HttpContext context, RequestDelegate next)
    {
        string[] before = ["/start", "/assets", "/alive", "/worker.js", "/manifest.webmanifest", "/enter", "/devices"];
        if (context.RequestServices.GetRequiredService<ShopDesk>().IsBegun || before.Any(p => context.Request.Path.StartsWithSegments(p)))
        {
            return next(context);
        }

        context.Response.Redirect("/start");
        return Task.CompletedTask;
    }

    /// <summary>A page that says so, for whatever has no page.</summary>
    private static IResult NotHere() => Faults.Page(StatusCodes.Status404NotFound, "There is nothing at this address.");

    private static HashSet<string> HostsOf(StationOptions options, IReadOnlyList<IPAddress> addresses) =>
    [
        .. addresses.Select(a => $"{a}:{options.NetworkPort}"),
        .. options.IsOnNetwork ? [$"{Environment.MachineName}:{options.NetworkPort}", $"localhost:{options.NetworkPort}"] : Array.Empty<string>(),
        .. new[] { "localhost", IPAddress.Loopback.ToString(), $"[{IPAddress.IPv6Loopback}]" }.Select(host => $"{host}:{options.Port}"),
    ];

    private static string PortTaken(StationOptions options) => IsRunning(options)
        ? $"a station is running at {AddressOf(options)} already: open it in the browser, or start another with --port"
        : $"port {options.Port} is taken by another program: choose another with --port, such as {options.Port + 1}";
}
