namespace Tagend.Qr.Read;

/// <summary>Reads QR codes from pictures.</summary>
/// <param name="checkedTexts">Texts whose own check may stand in for what error correction cannot prove.</param>
public sealed class PictureReader(CheckedTexts checkedTexts)
{
    /// <summary>Pixels looked at before a picture of a megapixel or more is given up, within two seconds.</summary>
    private const long MostPixels = 80_000_000;

    /// <summary>The same for a small one, which is given up within a second.</summary>
    private const long LeastBudget = 16_000_000;

    /// <summary>Looks at each pixel, between the two.</summary>
    private const long LooksAtPixel = 80;

    /// <summary>The texts of all codes found, in reading order; empty if there are none.</summary>
    /// <param name="path">A PNG, JPEG or WebP file.</param>
    /// <exception cref="PictureException">The file cannot be read as a picture.</exception>
    public IReadOnlyList<ReadCode> Read(string path) => Read(PictureFile.Load(path), MostPixels);

    /// <summary>The texts of all codes found, in reading order; empty if there are none.</summary>
    /// <param name="input">The bytes of a PNG, JPEG or WebP file, to its end.</param>
    /// <param name="name">What the message of an exception calls the picture.</param>
    /// <exception cref="PictureException">The bytes cannot be read as a picture.</exception>
    public IReadOnlyList<ReadCode> Read(Stream input, string name) => Read(PictureFile.Load(input, name), MostPixels);

    /// <summary>The texts of all codes found, in reading order; empty if there are none.</summary>
    public IReadOnlyList<ReadCode> Read(GrayPicture picture) => Read(picture, [], MostPixels);

    /// <param name="photograph">Is done with afterwards.</param>
    /// <param name="most">Pixels looked at before the picture is given up.</param>
    internal IReadOnlyList<ReadCode> Read(Photograph photograph, long most)
    {
        using (photograph)
        {
            return Read(photograph.Gray, photograph.InSingleColors(), most);
        }
    }

    private IReadOnlyList<ReadCode> Read(GrayPicture picture, IEnumerable<GrayPicture> inSingleColors, long most)
    {
        var pixels = new PixelBudget(Math.Min(most, Math.Clamp(picture.Area * LooksAtPixel, LeastBudget, MostPixels)));
        var decoder = new SymbolDecoder(checkedTexts);
        var search = new PictureSearch(new PicturePyramid(picture), pixels, decoder);
        var codes = search.LookPlainly();
        foreach (var color in inSingleColors.TakeWhile(_ => codes.Count == 0))
        {
            codes = new PictureSearch(new PicturePyramid(color), pixels, decoder).LookPlainly();
        }

        return ReadingOrder.Of(codes.Count > 0 ? codes : search.LookInCostlyWays());
    }
}

/// <summary>A text that was read in a picture, and where.</summary>
/// <param name="Text">As the code says it, in the character set it names or is likeliest to be in.</param>
/// <param name="Places">Of the codes with this text: the symbols' corners, in pixels of the upright picture; one or more.</param>
public sealed record ReadCode(string Text, IReadOnlyList<Quadrilateral> Places);
