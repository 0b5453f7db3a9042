using SkiaSharp;

namespace Tagend.Qr.Read;

/// <summary>A picture file, decoded.</summary>
internal static class PictureFile
{
    /// <summary>What a header may claim, in pixels; the picture is decoded to 4 bytes each.</summary>
    public const long LargestPixels = 100_000_000;

    /// <summary>A file of more bytes is not read.</summary>
    public const long LargestFile = 200_000_000;

    /// <summary>Larger pictures are decoded at a fraction of their size where the format can: a code seldom needs more.</summary>
    private const long WorkingPixels = 25_000_000;

    private const string NoPicture = "is not a picture that can be read: give a whole PNG, JPEG or WebP file.";

    /// <summary>The marks of files in the container of ISO/IEC 14496-12 that hold HEVC or AV1 pictures: ISO/IEC 23008-12, annex B.</summary>
    private static readonly string[] UnreadBrands = ["heic", "heix", "hevc", "hevx", "heim", "heis", "mif1", "msf1", "avif", "avis"];

    /// <summary>Its pixels, upright, transparent parts white.</summary>
    /// <exception cref="PictureException">Not a regular file, not a picture, cut short, or claiming to be too large.</exception>
    public static Photograph Load(string path) => Decode(Bytes(path), path);

    /// <summary>Its pixels, upright, transparent parts white.</summary>
    /// <param name="input">Is read from where it stands to its end.</param>
    /// <param name="name">What messages call the picture.</param>
    /// <exception cref="PictureException">Not a picture, cut short, or claiming to be too large.</exception>
    public static Photograph Load(Stream input, string name) => Decode(Bytes(input, name), name);

    private static Photograph Decode(byte[] bytes, string name)
    {
        using var data = SKData.CreateCopy(bytes);
        using var codec = SKCodec.Create(data) ?? throw new PictureException(IsUnread(bytes)
            ? $"{name} is a HEIC or AVIF picture, which cannot be read: set the camera to JPEG (on a phone the \"most compatible\" format), or save it as JPEG."
            : $"{name} {NoPicture}");

        var pixels = (long)codec.Info.Width * codec.Info.Height;
        if (pixels > LargestPixels)
        {
            throw new PictureException(
                $"{name} is {codec.Info.Width} × {codec.Info.Height} pixels, more than {LargestPixels / 1_000_000} million: "
                + "crop it to the tag, or save it smaller.");
        }

        return new Photograph(Decode(codec, pixels, name), codec.EncodedOrigin);
    }

    private static byte[] Bytes(string path)
    {
        if (Directory.Exists(path))
        {
            throw new PictureException($"{path} is a folder: name a picture in it.");
        }

        try
        {
            // A pipe or a device has no length, and may never end.
            var info = new FileInfo(path);
            if (info.Exists && (info.ResolveLinkTarget(returnFinalTarget: true) as FileInfo ?? info).Length == 0)
            {
                throw new PictureException($"{path} {NoPicture}");
            }

            using var file = File.OpenRead(path);
            return Bytes(file, path);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new PictureException($"{path} does not exist: check the name.", e);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new PictureException($"{path} cannot be opened: check that you may read it.", e);
        }
    }

    private static byte[] Bytes(Stream input, string name)
    {
        try
        {
            using var bytes = new MemoryStream();
            var part = new byte[1 << 16];
            for (var read = input.Read(part); read > 0; read = input.Read(part))
            {
                bytes.Write(part, 0, read);
                if (bytes.Length > LargestFile)
                {
                    throw new PictureException($"{name} has more than {LargestFile / 1_000_000} million bytes: crop it to the tag, or save it as JPEG.");
                }
            }

            return bytes.ToArray();
        }
        catch (IOException e)
        {
            throw new PictureException($"{name} cannot be read to its end: copy the file again.", e);
        }
    }

    private static bool IsUnread(byte[] bytes) =>
        bytes.Length >= 12 && bytes.AsSpan(4, 4).SequenceEqual("ftyp"u8)
        && UnreadBrands.Contains(System.Text.Encoding.Latin1.GetString(bytes, 8, 4), StringComparer.Ordinal);

    private static SKBitmap Decode(SKCodec codec, long pixels, string name)
    {
        var size = pixels > WorkingPixels
            ? codec.GetScaledDimensions((float)Math.Sqrt((double)WorkingPixels / pixels))
            : codec.Info.Size;
        var bitmap = new SKBitmap(new SKImageInfo(size.Width, size.Height, SKColorType.Rgba8888, SKAlphaType.Premul));
        var result = codec.GetPixels(bitmap.Info, bitmap.GetPixels());
        if (result == SKCodecResult.Success)
        {
            return bitmap;
        }

        bitmap.Dispose();
        throw new PictureException(result == SKCodecResult.IncompleteInput
            ? $"{name} is cut short: copy the whole file again."
            : $"{name} is damaged: take or copy the picture again.");
    }
}
