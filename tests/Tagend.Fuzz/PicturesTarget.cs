using System.Buffers.Binary;
using System.IO.Hashing;
using SkiaSharp;
using Tagend.Problems;
using Tagend.Qr.Read;
using Tagend.Workshop;

namespace Tagend.Fuzz;

/// <summary>Pictures of codes: the bytes of their files spoiled, or the codes drawn with damage. No text but the code's may come out.</summary>
internal sealed class PicturesTarget : ITarget
{
    private const int ChunkFrame = 12;
    private const int PngSignature = 8;

    /// <summary>A picture that cannot be read takes long, so only one in so many is looked at as long as users' are.</summary>
    private const int PatientOneIn = 100;

    private const long HastyBudget = 500_000;

    private readonly string _path = Path.Combine(Directory.CreateTempSubdirectory("tagend-fuzz-").FullName, "picture");
    private readonly IReadOnlyList<DrawnCode> _codes;
    private readonly IReadOnlyList<byte[]> _files;

    public PicturesTarget(Corpus corpus)
    {
        _codes = DrawnCode.All(corpus);
        _files =
        [
            .. _codes.SelectMany(c => new[] { SKEncodedImageFormat.Png, SKEncodedImageFormat.Png, SKEncodedImageFormat.Jpeg, SKEncodedImageFormat.Webp }
                .Select(format => c.Picture(3, 0, format))),
        ];
    }

    public IReadOnlyList<byte[]> Tokens { get; } =
    [
        "IHDR"u8.ToArray(), "PLTE"u8.ToArray(), "IDAT"u8.ToArray(), "IEND"u8.ToArray(), "tRNS"u8.ToArray(), "iCCP"u8.ToArray(), "zTXt"u8.ToArray(), "acTL"u8.ToArray(),
        "RIFF"u8.ToArray(), "WEBP"u8.ToArray(), "VP8 "u8.ToArray(), "VP8L"u8.ToArray(), "VP8X"u8.ToArray(), "Exif\0\0"u8.ToArray(),
        [0xFF, 0xD8], [0xFF, 0xD9], [0xFF, 0xDA], [0xFF, 0xC0], [0xFF, 0xC2], [0xFF, 0xC4], [0xFF, 0xDB], [0xFF, 0xE1],
        [0, 0, 0, 0], [0xFF, 0xFF, 0xFF, 0xFF], [0x7F, 0xFF, 0xFF, 0xFF], [0, 0, 0xEA, 0x60], [0, 0, 0x27, 0x10], [0, 0, 0, 1], [1], [2], [4], [16],
    ];

    public bool Run(Mutation mutation)
    {
        var code = mutation.Pick(_codes);
        HashSet<string> known = [.. _codes.Select(c => c.Text)];
        byte[] file;
        if (mutation.OneIn(2))
        {
            file = mutation.Of(_files);
            Mend(file, mutation);
        }
        else
        {
            file = code.Damaged(mutation, mutation.Pick(_codes)).Picture(
                (float)(2 + (mutation.Random.NextDouble() * 2)),
                mutation.OneIn(2) ? 0 : mutation.Random.Next(360),
                mutation.OneIn(4) ? SKEncodedImageFormat.Jpeg : SKEncodedImageFormat.Png,
                mutation.OneIn(3) ? (float)mutation.Random.NextDouble() : 0);
        }

        mutation.Spoiled = file;
        File.WriteAllBytes(_path, file);
        var codes = mutation.OneIn(PatientOneIn) ? TagPictures.Read(_path) : ReadInHaste();
        return codes.FirstOrDefault(c => !known.Contains(c.Text)) is { } wrong
            ? throw new FaultException($"read \"{wrong.Text}\", which no code says")
            : codes.Count > 0;
    }

    private IReadOnlyList<ReadCode> ReadInHaste()
    {
        try
        {
            return TagPictures.Reader.Read(PictureFile.Load(_path), HastyBudget);
        }
        catch (PictureException e)
        {
            throw new TagendException(e.Message, e);
        }
    }

    /// <summary>Half of all PNG files get check sums that fit, so that what is wrong with them is read.</summary>
    private static void Mend(Span<byte> file, Mutation mutation)
    {
        if (mutation.OneIn(2) || file.Length < PngSignature || file[1] != 'P')
        {
            return;
        }

        for (var chunk = file[PngSignature..]; chunk.Length > ChunkFrame;)
        {
            var length = BinaryPrimitives.ReadUInt32BigEndian(chunk) + ChunkFrame;
            if (length > chunk.Length)
            {
                return;
            }

            var end = (int)length - 4;
            BinaryPrimitives.WriteUInt32BigEndian(chunk[end..], Crc32.HashToUInt32(chunk[4..end]));
            chunk = chunk[(end + 4)..];
        }
    }

    public void Dispose() => Directory.Delete(Path.GetDirectoryName(_path)!, recursive: true);
}
