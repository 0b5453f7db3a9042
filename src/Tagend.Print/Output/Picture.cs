using SkiaSharp;
using Tagend.Problems;

namespace Tagend.Output;

/// <summary>A picture of dots, such as a shop's logo. Held as long as the program runs, so that a PDF has it once.</summary>
public sealed class Picture
{
    private Picture(SKImage image) => Image = image;

    /// <summary>In dots.</summary>
    public int Width => Image.Width;

    /// <summary>In dots.</summary>
    public int Height => Image.Height;

    internal SKImage Image { get; }

    /// <exception cref="TagendException">The file cannot be read, or is no picture.</exception>
    public static Picture Read(string path)
    {
        byte[] file;
        try
        {
            file = File.ReadAllBytes(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new TagendException($"{path}: the picture cannot be read ({e.Message})", e);
        }

        using var data = SKData.CreateCopy(file);
        var image = SKImage.FromEncodedData(data)?.ToRasterImage(ensurePixelData: true)
            ?? throw new TagendException($"{path}: the picture is damaged; export it as PNG again");
        return new Picture(image);
    }
}
