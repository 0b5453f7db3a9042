using Tagend.Qr.Encode;
using Tagend.Station.Desk;
using Tagend.Station.Frame;
using Tagend.Station.Guard;

namespace Tagend.Station.Screens.Devices;

/// <summary>The devices of the shop, on the screen of the machine that the station runs on.</summary>
/// <param name="Addresses">Where other devices find it; none where it answers on this machine alone.</param>
/// <param name="Code">That lets the next one in.</param>
/// <param name="Link">With the code: what a phone scans.</param>
public sealed record DevicesModel(IReadOnlyList<string> Addresses, string Code, string Link, QrSymbol? Symbol, IReadOnlyList<Device> Devices);

/// <summary>A device that asks to be let in.</summary>
/// <param name="Code">As it was scanned; may be empty.</param>
/// <param name="Refusal">Why the last one did not do; null before.</param>
public sealed record EnterModel(string Code, string? Refusal);

/// <summary>Lets phones and tablets in, and shuts them out again.</summary>
internal sealed class DevicesScreen : IScreen
{
    public NavEntry? Nav => null;

    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/devices", (HttpContext context, ShopDesk shop, EntryCode code, DeviceList devices) => Show(context, shop, code, devices));
        routes.MapPost("/devices/out", (HttpContext context, ShopDesk shop, DeviceList devices) => ShutOut(context, shop, devices));
        routes.MapGet(Gate.Entrance, (string? code) => Enter(code));
        routes.MapPost(Gate.Entrance, (HttpContext context, ShopDesk shop, EntryCode code, DeviceList devices) => LetIn(context, shop, code, devices));
    }

    private static IResult Show(HttpContext context, ShopDesk shop, EntryCode code, DeviceList devices)
    {
        if (IsElsewhere(context, shop))
        {
            return AtTheDesk();
        }

        var hosts = shop.Options.IsOnNetwork ? StationCertificate.Addresses().Select(a => $"https://{a}:{shop.Options.NetworkPort}").ToList() : [];
        var current = hosts.Count > 0 ? code.Current : "";
        var link = hosts.Count > 0 ? $"{hosts[0]}{Gate.Entrance}?code={current}" : "";
        return DevicesPage.Create(new DevicesModel(hosts, current, link, hosts.Count > 0 ? QrSymbol.Of(link, QrRecovery.M) : null, devices.Devices));
    }

    private static async Task<IResult> ShutOut(HttpContext context, ShopDesk shop, DeviceList devices)
    {
        if (IsElsewhere(context, shop))
        {
            return AtTheDesk();
        }

        devices.ShutOut((await context.Request.ReadFormAsync(context.RequestAborted))["device"].ToString());
        return Redirect.To(context, "/devices");
    }

    private static IResult Enter(string? code) => EnterPage.Create(new EnterModel(code ?? "", null));

    private static async Task<IResult> LetIn(HttpContext context, ShopDesk shop, EntryCode entry, DeviceList devices)
    {
        var form = await context.Request.ReadFormAsync(context.RequestAborted);
        var answer = entry.Try(form["code"].ToString().Replace(" ", "", StringComparison.Ordinal), out var wait);
        if (answer == CodeAnswer.Right)
        {
            devices.LetIn(Session.Of(context), NameOf(context.Request.Headers.UserAgent.ToString()), shop.Options.Clock.GetUtcNow());
            return Results.LocalRedirect("/");
        }

        var page = EnterPage.Create(new EnterModel("", answer == CodeAnswer.TooSoon
            ? $"Too many codes were wrong. Wait {Math.Ceiling(wait.TotalSeconds):0} s, then try again."
            : "This is not the code on the screen, or it is too old. A code lets one device in."));
        page.StatusCode = answer == CodeAnswer.TooSoon ? StatusCodes.Status429TooManyRequests : StatusCodes.Status403Forbidden;
        return page;
    }

    /// <summary>Who is let in is decided at the desk.</summary>
    private static bool IsElsewhere(HttpContext context, ShopDesk shop) => context.Connection.LocalPort != shop.Options.Port;

    private static IResult AtTheDesk() =>
        Faults.Page(StatusCodes.Status403Forbidden, "Devices are let in and shut out on the machine that the station runs on.");

    /// <summary>What a person calls it: nothing else of a browser's long name.</summary>
    private static string NameOf(string browser) =>
        new[] { ("iPhone", "iPhone"), ("iPad", "iPad"), ("Android", "Android"), ("Windows", "Windows"), ("Mac OS", "Mac"), ("Linux", "Linux") }
            .FirstOrDefault(n => browser.Contains(n.Item1, StringComparison.Ordinal)).Item2 ?? "a device";
}
