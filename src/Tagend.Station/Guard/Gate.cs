using Microsoft.AspNetCore.Http.Extensions;
using Tagend.Station.Desk;

namespace Tagend.Station.Guard;

/// <summary>
/// What every request passes first: it must be meant for this station by name (a page elsewhere may point its own name
/// here), and what changes something must come from one of the station's own pages, with its token.
/// </summary>
/// <param name="hosts">The names and ports it answers at.</param>
internal sealed class Gate(StationOptions options, IReadOnlySet<string> hosts, StationSecret secret, DeviceList devices)
{
    /// <summary>The one page for a device that was not let in yet.</summary>
    public const string Entrance = "/enter";

    private static readonly PathString Assets = "/assets";

    /// <summary>The header that the station's script sets.</summary>
    public const string TokenHeader = "X-Tagend-Token";

    /// <summary>The field of a form that a browser sends by itself.</summary>
    public const string TokenField = "token";

    // No script and no style but our own files; pictures that a page makes itself are blobs.
    private const string ContentSecurity =
        "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; img-src 'self' blob:; connect-src 'self'; "
        + "manifest-src 'self'; worker-src 'self'; form-action 'self'; frame-ancestors 'none'; base-uri 'none'";

    public async Task Pass(HttpContext context, RequestDelegate next)
    {
        AddHeaders(context.Response.Headers);
        var request = context.Request;
        if (!hosts.Contains(request.Host.Value ?? ""))
        {
            await Refuse(context, StatusCodes.Status421MisdirectedRequest, "This station answers at its own address only: see the one it said when it started.");
            return;
        }

        var session = Session.Find(context, secret);
        if (context.Connection.LocalPort != options.Port && !IsOfEntrance(request.Path) && !devices.Has(session))
        {
            if (HttpMethods.IsGet(request.Method) && request.Headers["Sec-Fetch-Mode"] == "navigate")
            {
                context.Response.Redirect(Entrance);
                return;
            }

            await Refuse(context, StatusCodes.Status403Forbidden, "This device was not let in: scan the code on the station's screen, or ask at the desk.");
            return;
        }

        if (!IsReading(request))
        {
            if (!IsFromHere(request))
            {
                await Refuse(context, StatusCodes.Status403Forbidden, "This was sent from a page that is not the station's, and nothing was done.");
                return;
            }

            if (!session.IsToken(await TokenOf(request)))
            {
                await Refuse(context, StatusCodes.Status403Forbidden, "This page is an old one, and nothing was done: reload it and try again.");
                return;
            }
        }

        await next(context);
    }

    private static bool IsOfEntrance(PathString path) => path == Entrance || path.StartsWithSegments(Assets);

    private static bool IsReading(HttpRequest request) => HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method);

    /// <summary>A browser says where a request that changes something was made.</summary>
    private static bool IsFromHere(HttpRequest request) =>
        request.Headers.Origin.ToString() == UriHelper.BuildAbsolute(request.Scheme, request.Host).TrimEnd('/');

    private static async Task<string?> TokenOf(HttpRequest request) =>
        request.Headers.TryGetValue(TokenHeader, out var header) ? header.ToString()
        : request.ContentType?.StartsWith("application/x-www-form-urlencoded", StringComparison.OrdinalIgnoreCase) == true
            ? (await request.ReadFormAsync())[TokenField].ToString()
            : null;

    private static void AddHeaders(IHeaderDictionary headers)
    {
        headers.ContentSecurityPolicy = ContentSecurity;
        headers.XContentTypeOptions = "nosniff";
        headers.CacheControl = "no-store";
        headers["Referrer-Policy"] = "same-origin";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(self), microphone=(), geolocation=()";
    }

    private static Task Refuse(HttpContext context, int status, string sentence)
    {
        context.Response.StatusCode = status;
        context.Response.ContentType = "text/plain; charset=utf-8";
        return context.Response.WriteAsync(sentence);
    }
}
