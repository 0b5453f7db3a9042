using Microsoft.Playwright;
using Tagend.StationTests;
using Xunit;
using Xunit.Sdk;
using Xunit.v3;

[assembly: AssemblyFixture(typeof(Browser))]
[assembly: Parallelization(Mode = ParallelMode.Collections, MaxThreads = 3)]

namespace Tagend.StationTests;

/// <summary>One browser for all tests: each has a profile of its own in it, so that classes run side by side.</summary>
public sealed class Browser : IAsyncLifetime
{
    private static readonly string[] Programs = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

    /// <summary>The same engine without windows: a page costs half, for none of its own screens are made for each profile.</summary>
    private const string WithoutWindows = "/usr/bin/chromium-headless-shell";

    /// <summary>In milliseconds: more than a busy machine takes.</summary>
    public const int MostWait = 90_000;

    private readonly Lazy<Station> _shopOfTag = new(() => Station.Empty());
    private readonly Lazy<Task<IPlaywright>> _playwright = new(Playwright.CreateAsync);
    private readonly Lazy<Task<IBrowser>> _browser;
    private readonly Lazy<Task<IBrowser>> _viewer;
    private readonly SemaphoreSlim _keeping = new(1);
    private readonly Dictionary<string, (string Test, List<IBrowserContext> Profiles)> _open = [];

    public Browser() => (_browser, _viewer) = (new(() => Launch(isViewer: false)), new(() => Launch(isViewer: true)));

    /// <summary>Whether the camera shows a tag; not where a program that makes the picture is not installed.</summary>
    public bool HasCamera { get; private set; }

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
        options.Permissions = ["camera"];
        var context = await (await _browser.Value).NewContextAsync(options);
        context.SetDefaultTimeout(MostWait);
        await Keep(context);
        return await context.NewPageAsync();
    }

    /// <summary>Keeps a profile open to the end of its test: pages of tests that are over would go on asking their stations.</summary>
    private async Task Keep(IBrowserContext context)
    {
        await _keeping.WaitAsync();
        try
        {
            var (ofClass, test) = (TestContext.Current.TestClass!.UniqueID, TestContext.Current.Test!.UniqueID);
            if (!_open.TryGetValue(ofClass, out var known) || known.Test != test)
            {
                foreach (var over in known.Profiles ?? [])
                {
                    await over.CloseAsync();
                }

                _open[ofClass] = known = (test, []);
            }

            known.Profiles.Add(context);
        }
        finally
        {
            _keeping.Release();
        }
    }

    /// <summary>A page that shows PDFs, as a browser with windows does; skips the test where there is no browser.</summary>
    public async Task<IPage> OpenViewer(ViewportSize size)
    {
        return await (await _viewer.Value).NewPageAsync(new BrowserNewPageOptions { ViewportSize = size });
    }

    public async ValueTask DisposeAsync()
    {
        _keeping.Dispose();
        foreach (var browser in new[] { _browser, _viewer }.Where(b => b is { IsValueCreated: true, Value.IsCompletedSuccessfully: true }))
        {
            await (await browser.Value).DisposeAsync();
        }

        if (_playwright.IsValueCreated)
        {
            (await _playwright.Value).Dispose();
        }

        if (_shopOfTag.IsValueCreated)
        {
            _shopOfTag.Value.Dispose();
        }
    }

    /// <param name="isViewer">Whether it shows PDFs; without a window it saves them else.</param>
    private async Task<IBrowser> Launch(bool isViewer)
    {
        var program = !isViewer && File.Exists(WithoutWindows) ? WithoutWindows : Array.Find(Programs, File.Exists);
        Assert.SkipWhen(program is null, "chromium is not installed");
        var camera = isViewer ? null : Camera.Video(_shopOfTag.Value);
        HasCamera |= camera is not null;
        return await (await _playwright.Value).Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = program,
            Headless = !isViewer,
            // Root, which a test machine may be, has no sandbox.
            Args =
            [
                "--no-sandbox", "--use-fake-ui-for-media-stream", "--use-fake-device-for-media-stream", "--autoplay-policy=no-user-gesture-required",
                .. isViewer ? ["--headless=new"] : camera is null ? Array.Empty<string>() : [$"--use-file-for-fake-video-capture={camera}"],
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
