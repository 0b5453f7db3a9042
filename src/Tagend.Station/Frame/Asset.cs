using System.Collections.Frozen;
using System.Security.Cryptography;
using Microsoft.Net.Http.Headers;

namespace Tagend.Station.Frame;

/// <summary>A file that every page may need, carried in the program: styles, scripts, fonts, shapes.</summary>
internal sealed class Asset
{
    private static readonly FrozenDictionary<string, string> Types = new Dictionary<string, string>
    {
        [".css"] = "text/css; charset=utf-8",
        [".js"] = "text/javascript; charset=utf-8",
        [".svg"] = "image/svg+xml",
        [".png"] = "image/png",
        [".woff2"] = "font/woff2",
        [".webmanifest"] = "application/manifest+json",
    }.ToFrozenDictionary();

    private static readonly Lazy<FrozenDictionary<string, Asset>> All = new(() =>
        typeof(Asset).Assembly.GetManifestResourceNames().Where(n => Types.ContainsKey(Path.GetExtension(n))).ToFrozenDictionary(n => n, n => new Asset(n)));

    private readonly byte[] _content;
    private readonly string _type;
    private readonly string _tag;

    private Asset(string name)
    {
        using var stream = typeof(Asset).Assembly.GetManifestResourceStream(name)!;
        _content = new byte[stream.Length];
        stream.ReadExactly(_content);
        _type = Types[Path.GetExtension(name)];
        _tag = Convert.ToHexStringLower(SHA256.HashData(_content).AsSpan(0, 6));
    }

    /// <summary>Its address, which is another one when the file is.</summary>
    public static string Url(string name) => $"/assets/{name}?v={All.Value[name]._tag}";

    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/assets/{name}", (string name, HttpContext context) => Send(name, context, isLasting: context.Request.Query.ContainsKey("v")));

        // A worker has the pages under its own address alone, and a manifest keeps its name.
        routes.MapGet("/worker.js", (HttpContext context) => Send("worker.js", context, isLasting: false));
        routes.MapGet("/manifest.webmanifest", (HttpContext context) => Send("manifest.webmanifest", context, isLasting: false));
    }

    private static IResult Send(string name, HttpContext context, bool isLasting)
    {
        if (!All.Value.TryGetValue(name, out var asset))
        {
            return TypedResults.NotFound();
        }

        context.Response.Headers.CacheControl = isLasting ? "public, max-age=31536000, immutable" : "no-cache";
        return TypedResults.Bytes(asset._content, asset._type, entityTag: new EntityTagHeaderValue($"\"{asset._tag}\""));
    }
}
