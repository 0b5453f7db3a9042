namespace Tagend.Qr.Read;

/// <summary>A picture in black and white.</summary>
internal sealed class BinaryImage
{
    private readonly bool[] _dark;

    private BinaryImage(bool[] dark, int width, int height) => (_dark, Width, Height) = (dark, width, height);

    public int Width { get; }

    public int Height { get; }

    /// <summary>Dark is what is darker than its surroundings.</summary>
    /// <param name="radius">Of the surroundings, in pixels: more than a module or two, less than a shadow.</param>
    public static BinaryImage Of(GrayPicture picture, int radius)
    {
        var (w, h, pixels) = (picture.Width, picture.Height, picture.Pixels);
        var dark = new bool[w * h];
        BoxMean.Each(picture, radius, (y, means) =>
        {
            var source = pixels.AsSpan(y * w, w);
            var row = dark.AsSpan(y * w, w);
            for (var x = 0; x < source.Length; x++)
            {
                row[x] = source[x] < means[x] - 1;
            }
        });
        return new BinaryImage(dark, w, h);
    }

    public ReadOnlySpan<bool> Row(int y) => _dark.AsSpan(y * Width, Width);

    public bool IsDark(int x, int y) => x >= 0 && y >= 0 && x < Width && y < Height && _dark[(y * Width) + x];

    public bool Holds(int x, int y) => x >= 0 && y >= 0 && x < Width && y < Height;
}
