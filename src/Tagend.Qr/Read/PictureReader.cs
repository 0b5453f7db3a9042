using Tagend.Problems;

namespace Tagend.Qr.Read;

/// <summary>Reads QR codes from pictures.</summary>
public static class PictureReader
{
    /// <summary>Pixels looked at before a picture of a megapixel or more is given up: under two seconds.</summary>
    private const long MostPixels = 80_000_000;

    /// <summary>The same for a small one, which is given up within a second.</summary>
    private const long LeastBudget = 8_000_000;

    /// <summary>Looks at each pixel, between the two.</summary>
    private const long LooksAtPixel = 80;

    /// <summary>The texts of all codes found, each once, in reading order; empty if there are none.</summary>
    /// <param name="path">A PNG, JPEG or WebP file.</param>
    /// <exception cref="TagendException">The file cannot be read as a picture.</exception>
    public static IReadOnlyList<string> Read(string path) => Read(path, MostPixels);

    /// <param name="most">Pixels looked at before the picture is given up.</param>
    internal static IReadOnlyList<string> Read(string path, long most)
    {
        using var bitmap = PictureFile.Load(path);
        var picture = GrayPicture.Of(bitmap);
        var budget = Math.Min(most, Math.Clamp(picture.Area * LooksAtPixel, LeastBudget, MostPixels));
        var search = new PictureSearch(new PicturePyramid(picture), new PixelBudget(budget));
        return [.. FoundCode.InReadingOrder(search.Codes()).Select(c => c.Text)];
    }
}
