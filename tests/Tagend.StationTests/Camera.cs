namespace Tagend.StationTests;

/// <summary>What the browser's camera shows all the time: a printed tag, as it lies on a bench before a phone.</summary>
internal static class Camera
{
    /// <summary>The order whose tag it is.</summary>
    public const string Order = "B-CAM";

    /// <summary>Makes the video of an order's tags.</summary>
    /// <param name="shop">Gets the demo's shop, the order and its papers; it is not started.</param>
    /// <returns>The video's path; null where a program that makes it is not installed.</returns>
    public static string? Video(Station shop)
    {
        shop.Begin();
        Printed.Order(shop, order: Order);
        var (tags, video) = (Path.Combine(Printed.FolderOf(shop, Order), "tags.pdf"), Path.Combine(shop.Folder, "camera.mjpeg"));
        return Tool.Runs("pdftoppm", "-r", "300", "-png", "-singlefile", tags, Path.Combine(shop.Folder, "camera"))
            && Tool.Runs("ffmpeg", "-v", "error", "-y", "-loop", "1", "-i", Path.Combine(shop.Folder, "camera.png"), "-t", "1", "-r", "10", "-vf",
                "scale=1100:640:force_original_aspect_ratio=decrease,pad=1280:720:-1:-1:white", "-pix_fmt", "yuvj420p", video)
            ? video
            : null;
    }
}
