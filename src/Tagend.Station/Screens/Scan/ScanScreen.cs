using Microsoft.AspNetCore.Http.Features;
using Tagend.Problems;
using Tagend.Station.Desk;
using Tagend.Station.Frame;
using Tagend.Station.Guard;
using Tagend.Workshop.Readings;

namespace Tagend.Station.Screens.Scan;

/// <summary>A tag before the camera, on a photo or from a scanner: whose it is, its post setting, and what one wants then.</summary>
internal sealed class ScanScreen : IScreen
{
    /// <summary>A frame of a megapixel has a tenth of it.</summary>
    private const long MostFrame = 4L << 20;

    private const long MostPhoto = 40L << 20;

    /// <summary>No text of a QR code is longer (ISO/IEC 18004:2015, table 7).</summary>
    private const int LongestText = 7_089;

    public NavEntry? Nav { get; } = new("/scan", "Scan", "scan");

    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/scan", () => Show());
        routes.MapPost("/scan/frame", (HttpContext context, CameraDesk cameras, ShopDesk shop) => Frame(context, cameras, shop));
        routes.MapPost("/scan/photo", (HttpContext context, CameraDesk cameras, ShopDesk shop) => Photo(context, cameras, shop));
        routes.MapPost("/scan/text", async (HttpContext context, ShopDesk shop) => Text((await context.Request.ReadFormAsync())["text"].ToString(), shop));
    }

    private static IResult Show() => ScanPage.Create(new ScanModel());

    private static async Task<IResult> Frame(HttpContext context, CameraDesk cameras, ShopDesk shop)
    {
        using var frame = await Body(context, MostFrame);
        try
        {
            var scans = await cameras.ReadFrame(Session.Of(context).Id, frame, context.RequestAborted);
            return scans.Count == 0 ? TypedResults.NoContent() : Found(scans, shop);
        }
        catch (TagendException e) when (e.Blame != Blame.World)
        {
            return Unread(e);
        }
    }

    private static async Task<IResult> Photo(HttpContext context, CameraDesk cameras, ShopDesk shop)
    {
        using var photo = await Body(context, MostPhoto);
        try
        {
            return Found(await cameras.ReadPhoto(photo, context.RequestAborted), shop);
        }
        catch (TagendException e) when (e.Blame != Blame.World)
        {
            return Unread(e);
        }
    }

    private static IResult Text(string text, ShopDesk shop)
    {
        var plain = text.Trim();
        return plain.Length is 0 or > LongestText ? TypedResults.NoContent() : Found([FoundView.Scanned(plain, shop)], shop);
    }

    private static IResult Unread(TagendException fault)
    {
        var part = FoundPart.Create(new FoundModel([new FoundMessage(fault.Message, "")]));
        part.StatusCode = StatusCodes.Status422UnprocessableEntity;
        return part;
    }

    private static IResult Found(IReadOnlyList<TagScan> scans, ShopDesk shop) => FoundPart.Create(FoundView.Of(scans, shop));

    private static async Task<MemoryStream> Body(HttpContext context, long most)
    {
        context.Features.GetRequiredFeature<IHttpMaxRequestBodySizeFeature>().MaxRequestBodySize = most;
        var body = new MemoryStream();
        await context.Request.Body.CopyToAsync(body, context.RequestAborted);
        body.Position = 0;
        return body;
    }
}
