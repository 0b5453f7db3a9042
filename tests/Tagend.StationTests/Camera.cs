using System.Diagnostics;
using Xunit;

namespace Tagend.StationTests;

/// <summary>What the browser's camera shows all the time: a printed tag, as it lies on a bench before a phone.</summary>
internal static class Camera
{
    /// <summary>The order whose tag it is.</summary>
    public const string Order = "B-CAM";

    /// <summary>Of the browser, so that its camera shows the tag; none where the programs that make the picture are not there.</summary>
    public static IEnumerable<string> Of(Station station)
    {
        Printed.Order(station, order: Order);
        var (tags, video) = (Path.Combine(Printed.FolderOf(station, Order), "tags.pdf"), Path.Combine(station.Folder, "camera.mjpeg"));
        return Run("pdftoppm", "-r", "300", "-png", "-singlefile", tags, Path.Combine(station.Folder, "camera"))
            && Run("ffmpeg", "-v", "error", "-y", "-loop", "1", "-i", Path.Combine(station.Folder, "camera.png"), "-t", "1", "-r", "10", "-vf",
                "scale=1100:640:force_original_aspect_ratio=decrease,pad=1280:720:-1:-1:white", "-pix_fmt", "yuvj420p", video)
            ? [$"--use-file-for-fake-video-capture={video}"]
            : [];
    }

    private static bool Run(string program, params string[] arguments)
    {
        try
        {
            using var process = Process.Start(program, arguments);
            process.WaitForExit();
            return process.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            TestContext.Current.SendDiagnosticMessage($"{program} is not installed");
            return false;
        }
    }
}
