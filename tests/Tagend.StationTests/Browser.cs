using Microsoft.Playwright;
using Tagend.StationTests;
using Xunit;
using Xunit.Sdk;
using Xunit.v3;

[assembly: AssemblyFixture(typeof(Browser))]
[assembly: Parallelization(Mode = ParallelMode.None)]

namespace Tagend.StationTests;

/// <summary>One browser and one station of the demo's shop for all tests: each test has a browser profile of its own.</summary>
public sealed class Browser : IAsyncLifetime
{
    private static readonly string[] Programs = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

    /// <summary>In milliseconds: more than a busy machine takes.</summary>
    private const int MostWait = 30_000;

    private readonly Lazy<Station> _station = new(() => Station.OfDemoShop());
    private IPlaywright? _playwright;
    private IBrowser? _browser;
    private IBrowser? _viewer;

    /// <summary>The station that tests share; they leave its shop as it is.</summary>
    public Station Station => _station.Value;

    public ValueTask InitializeAsync()
    {
        Assertions.SetDefaultExpectTimeout(MostWait);
        return ValueTask.CompletedTask;
    }

    /// <summary>A page of a new profile at a size; skips the test where there is no browser.</summary>
    /// <param name="size">Of the window.</param>
    /// <param name="options">More of the profile; null for nothing.</param>
    public async Task<IPage> Open(Size size, BrowserNewContextOptions? options = null)
    {
        options ??= new BrowserNewContextOptions();
        options.ViewportSize = new ViewportSize { Width = size.Width, Height = size.Height };
        options.HasTouch = size != Size.Desk;
        var context = await (await Program()).NewContextAsync(options);
        context.SetDefaultTimeout(MostWait);
        return await context.NewPageAsync();
    }

    /// <summary>A page that shows PDFs, as a browser with windows does; skips the test where there is no browser.</summary>
    public async Task<IPage> OpenViewer(ViewportSize size)
    {
        _viewer ??= await Launch(isViewer: true);
        return await _viewer.NewPageAsync(new BrowserNewPageOptions { ViewportSize = size });
    }

    public async ValueTask DisposeAsync()
    {
        if (_viewer is not null)
        {
            await _viewer.DisposeAsync();
        }

        if (_browser is not null)
        {
            await _browser.DisposeAsync();
        }

        _playwright?.Dispose();
        if (_station.IsValueCreated)
        {
            _station.Value.Dispose();
        }
    }

    private async Task<IBrowser> Program() => _browser ??= await Launch(isViewer: false);

    /// <param name="isViewer">Whether it shows PDFs; without a window it saves them else.</param>
    private async Task<IBrowser> Launch(bool isViewer)
    {
        var program = Array.Find(Programs, File.Exists);
        Assert.SkipWhen(program is null, "chromium is not installed");
        _playwright ??= await Playwright.CreateAsync();
        return await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = program,
            Headless = !isViewer,
            // Root, which a test machine may be, has no sandbox.
            Args =
            [
                "--no-sandbox", "--use-fake-ui-for-media-stream", "--use-fake-device-for-media-stream", "--autoplay-policy=no-user-gesture-required",
                .. isViewer ? ["--headless=new"] : Camera.Of(Station),
            ],
        });
    }
}

/// <summary>The windows that a shop has.</summary>
public sealed record Size(string Name, int Width, int Height)
{
    public static readonly Size Phone = new("phone", 360, 740);

    public static readonly Size Tablet = new("tablet", 820, 1180);

    public static readonly Size Desk = new("desk", 1440, 900);

    public static IReadOnlyList<Size> All { get; } = [Phone, Tablet, Desk];
}
