namespace Tagend.Qr.Read;

/// <summary>Reads QR codes from the frames of a camera: at a glance, for the next frame comes soon.</summary>
/// <param name="checkedTexts">Texts whose own check may stand in for what error correction cannot prove.</param>
/// <remarks>
/// For one stream, one frame after the other. It looks first where the last code was. What it tries adds up over the
/// stream, so that chance makes no text in a day of frames either.
/// </remarks>
public sealed class FrameReader(CheckedTexts checkedTexts)
{
    /// <summary>Pixels looked at in a frame: a megapixel at every level, and a few symbols.</summary>
    private const long Looks = 4_500_000;

    /// <summary>How far a code may have moved since the last frame, in its own size.</summary>
    private const float Moved = 0.5f;

    private readonly SymbolDecoder _decoder = new(checkedTexts);
    private Region? _last;

    /// <summary>The texts of all codes found, in reading order; empty if there are none.</summary>
    /// <param name="frame">Upright or not; of 12 megapixels or so only large codes are found.</param>
    public IReadOnlyList<ReadCode> Read(GrayPicture frame)
    {
        var codes = _last?.Within(frame) is { } region ? Glance(frame.Crop(region), region.Corner) : [];
        codes = codes.Count > 0 ? codes : Glance(frame, default);
        _last = codes.Count > 0 ? Region.Around(codes, Moved) : null;
        return ReadingOrder.Of(codes);
    }

    /// <summary>The texts of all codes found, in reading order; empty if there are none.</summary>
    /// <param name="input">The bytes of a PNG, JPEG or WebP file, to its end.</param>
    /// <param name="name">What the message of an exception calls the frame.</param>
    /// <exception cref="PictureException">The bytes cannot be read as a picture.</exception>
    public IReadOnlyList<ReadCode> Read(Stream input, string name)
    {
        using var photograph = PictureFile.Load(input, name);
        return Read(photograph.Gray);
    }

    private List<FoundCode> Glance(GrayPicture picture, Point corner)
    {
        var search = new PictureSearch(new PicturePyramid(picture), new PixelBudget(Looks), _decoder);
        return [.. search.CodesAtAGlance().Select(c => c with { Place = c.Place.Moved(corner) })];
    }
}
