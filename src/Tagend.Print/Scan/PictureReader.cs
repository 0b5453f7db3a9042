using Tagend.Problems;

namespace Tagend.Scan;

/// <summary>Reads QR codes from pictures.</summary>
public static class PictureReader
{
    /// <summary>Pixels looked at before a picture is given up.</summary>
    private const long PixelBudget = 80_000_000;

    /// <summary>The texts of all codes found, each once, in reading order; empty if there are none.</summary>
    /// <param name="path">A PNG, JPEG or WebP file.</param>
    /// <exception cref="TagendException">The file cannot be read as a picture.</exception>
    public static IReadOnlyList<string> Read(string path)
    {
        using var bitmap = PictureFile.Load(path);
        var search = new PictureSearch(new PicturePyramid(GrayPicture.Of(bitmap)), new Effort(PixelBudget));
        return [.. FoundCode.InReadingOrder(search.Codes()).Select(c => c.Text)];
    }
}
