namespace Tagend.Station.Frame;

/// <summary>Leads a browser to another page after something was sent.</summary>
internal static class Redirect
{
    /// <param name="path">Within the station.</param>
    public static IResult To(HttpContext context, string path)
    {
        if (!context.Request.Headers.ContainsKey("HX-Request"))
        {
            return Results.LocalRedirect(path);
        }

        context.Response.Headers["HX-Redirect"] = path;
        return Results.NoContent();
    }
}
