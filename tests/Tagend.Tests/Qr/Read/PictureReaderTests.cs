using System.Buffers.Binary;
using SkiaSharp;
using Tagend.Problems;
using Tagend.Qr.Read;
using Tagend.Workshop;
using Xunit;

namespace Tagend.Tests.Qr;

public sealed class PictureReaderTests : IDisposable
{
    /// <summary>As long as a tag's text, and of its alphabet.</summary>
    private const string Tag =
        "TAGEND1/2041/BUSS/R1/20260504/L911225000/M HMPE-0145/S24/C BLACK:12 RED:12/A 0:177800000:21/B 0:203200000:21/T27";

    private const int BombSize = 300 << 20;

    private const string OtherTag = "TAGEND1/2041/CONTROL/R1/20260504/L853000000/M HMPE-0145/S24/C BLACK:24/T25";

    private static readonly Dictionary<string, Func<Photo>> Photos = new()
    {
        ["as printed"] = () => new Photo(400, 400, 255).Code(Tag, 200, 200, 5, dark: 0, light: 255),
        ["3 pixels a module"] = () => new Photo(300, 300).Code(Tag, 150, 150, 3),
        ["2 pixels a module"] = () => new Photo(300, 300).Code(Tag, 150, 150, 2, degrees: 5),
        ["turned 17 degrees"] = () => new Photo(800, 600).Code(Tag, 400, 300, 6, degrees: 17),
        ["turned 45 degrees"] = () => new Photo(800, 600).Code(Tag, 400, 300, 6, degrees: 45),
        ["upside down"] = () => new Photo(800, 600).Code(Tag, 400, 300, 6, degrees: 180),
        ["tilted away"] = () => new Photo(800, 600)
            .Code(Tag, 400, 300, 6, tilt: new SKMatrix(1, 0.1f, 0, 0, 0.8f, 0, 0.0004f, 0.0008f, 1)),
        ["small in a large photo"] = () => new Photo(4000, 3000).Code(Tag, 2900, 2300, 4, degrees: 8),
        ["noise"] = () => new Photo(600, 600).Code(Tag, 300, 300, 6).Noise(60),
        ["heavy noise"] = () => new Photo(800, 800).Code(Tag, 400, 400, 8).Noise(150),
        ["low contrast"] = () => new Photo(600, 600, 120).Code(Tag, 300, 300, 6, dark: 95, light: 130).Noise(3),
        ["shadow"] = () => new Photo(600, 600).Code(Tag, 300, 300, 6).Shadow(0.15f),
        ["out of focus"] = () => new Photo(900, 900).Code(Tag, 450, 450, 10).Blur(4),
        ["white on black"] = () => new Photo(600, 600, 20).Code(Tag, 300, 300, 6, dark: 230, light: 20),
    };

    private readonly string _folder = Directory.CreateTempSubdirectory("tagend-scan-").FullName;

    public static TheoryData<string> PhotoNames => [.. Photos.Keys];

    public static TheoryData<SKEncodedImageFormat> Formats =>
        [SKEncodedImageFormat.Png, SKEncodedImageFormat.Jpeg, SKEncodedImageFormat.Webp];

    [Theory]
    [MemberData(nameof(PhotoNames))]
    public void Read_PhotoOfATag_GivesItsText(string name)
    {
        using var photo = Photos[name]();

        Assert.Equal([Tag], Texts(Save(photo.Encode())));
    }

    [Theory]
    [MemberData(nameof(Formats))]
    public void Read_EachFormat_GivesTheText(SKEncodedImageFormat format)
    {
        using var photo = new Photo(600, 600).Code(Tag, 300, 300, 6);

        Assert.Equal([Tag], Texts(Save(photo.Encode(format))));
    }

    [Fact]
    public void Read_TransparentBackground_IsTakenAsWhite()
    {
        using var photo = new Photo(600, 600).Code(Tag, 300, 300, 6, dark: 0, light: 255).WithWhiteCleared();

        Assert.Equal([Tag], Texts(Save(photo.Encode())));
    }

    [Fact]
    public void Read_TextBeyondAscii_ComesBack()
    {
        using var photo = new Photo(400, 400).Code("60 1/4 × ½ Ω", 200, 200, 8);

        Assert.Equal(["60 1/4 × ½ Ω"], Texts(Save(photo.Encode())));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    public void Read_TurnedByTheCamera_KeepsReadingOrder(byte orientation)
    {
        using var upright = new Photo(500, 250).Code(Tag, 125, 125, 3).Code(OtherTag, 375, 125, 3);
        using var stored = upright.AsStoredFor(orientation);

        var texts = Texts(Save(WithOrientation(stored.Encode(SKEncodedImageFormat.Jpeg), orientation)));

        Assert.Equal([Tag, OtherTag], texts);
    }

    [Fact]
    public void Read_TwoCodesOfDifferentSizeAndTurn_GivesBothFromTheTop()
    {
        using var photo = new Photo(1500, 1500).Code(OtherTag, 1100, 1000, 9, degrees: -25).Code(Tag, 400, 350, 5, degrees: 12).Noise(20);

        Assert.Equal([Tag, OtherTag], Texts(Save(photo.Encode())));
    }

    [Fact]
    public void Read_SheetOfTwelveTags_GivesAllInRows()
    {
        using var photo = new Photo(1800, 1350, 250);
        var texts = Enumerable.Range(1, 12).Select(n => $"TAGEND1/{2040 + n}/BUSS/L911225000").ToList();
        foreach (var (text, n) in texts.Select((t, n) => (t, n)))
        {
            photo.Code(text, 225 + (450 * (n % 4)), 225 + (450 * (n / 4)), 7, degrees: n % 3);
        }

        Assert.Equal(texts, Texts(Save(photo.Encode())));
    }

    [Fact]
    public void Read_SameCodeTwice_GivesItOnceWithBothPlaces()
    {
        using var photo = new Photo(1400, 700).Code(Tag, 350, 350, 6).Code(Tag, 1050, 350, 6);

        var code = Assert.Single(TagPictures.Read(Save(photo.Encode())));

        Assert.Equal(Tag, code.Text);
        var side = 6 * (QRCoder.QRCodeGenerator.GenerateQrCode(Tag, QRCoder.QRCodeGenerator.ECCLevel.M).ModuleMatrix.Count - 8);
        Assert.Equal([350, 1050], code.Places.Select(p => MathF.Round((p.TopLeft.X + p.BottomRight.X) / 2)));
        Assert.All(code.Places, p => Assert.InRange(p.TopRight.X - p.TopLeft.X, side - 3, side + 3));
    }

    /// <summary>So far from the edge a float no longer parts neighboring pixels by a thousandth.</summary>
    [Theory]
    [InlineData(32_769)]
    [InlineData(32_770)]
    [InlineData(40_000)]
    public void Read_AtTheEndOfAVeryLongPicture_GivesTheText(int width)
    {
        using var photo = new Photo(width, 120, 255).Code("60 1/4", width - 55, 60, 4);

        Assert.Equal(["60 1/4"], Texts(Save(photo.Encode())));
    }

    [Fact]
    public void Read_PipeThatNobodyWritesTo_IsNoPicture()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "pipes with a name in the file system are of Unix");
        var path = Path.Combine(_folder, "pipe");
        System.Diagnostics.Process.Start("mkfifo", [path]).WaitForExit();

        Assert.Equal($"{path} is not a picture that can be read: give a whole PNG, JPEG or WebP file.", Refusal(path));
    }

    [Fact]
    public void Read_EndlessDevice_IsNoPicture()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "devices with a name in the file system are of Unix");

        Assert.Equal("/dev/zero is not a picture that can be read: give a whole PNG, JPEG or WebP file.", Refusal("/dev/zero"));
    }

    /// <summary>The head of a file of ISO/IEC 23008-12: a phone's own format.</summary>
    [Fact]
    public void Read_Heic_SaysWhatToDo()
    {
        var path = Save([0, 0, 0, 24, .. "ftypheic"u8, 0, 0, 0, 0, .. "mif1heic"u8]);

        Assert.Equal(
            $"{path} is a HEIC or AVIF picture, which cannot be read: set the camera to JPEG (on a phone the \"most compatible\" format), or save it as JPEG.",
            Refusal(path));
    }

    [Fact]
    public void Read_StreamThatFails_SaysSo()
    {
        using var input = new FailingStream(1000);

        var refusal = Assert.Throws<PictureException>(() => TagPictures.Reader.Read(input, "the photo"));

        Assert.Equal("the photo cannot be read to its end: copy the file again.", refusal.Message);
    }

    [Fact]
    public void Read_StreamWithoutEnd_IsRefused()
    {
        using var input = new FailingStream(long.MaxValue);

        var refusal = Assert.Throws<PictureException>(() => TagPictures.Reader.Read(input, "the photo"));

        Assert.Equal("the photo has more than 200 million bytes: crop it to the tag, or save it as JPEG.", refusal.Message);
    }

    [Fact]
    public void Read_GrayPixels_GivesTheText()
    {
        using var photo = new Photo(300, 260).Code(Tag, 150, 130, 3);
        using var bitmap = SKBitmap.Decode(photo.Encode());
        using var gray = bitmap.Copy(SKColorType.Gray8);

        Assert.Equal(Tag, Assert.Single(TagPictures.Reader.Read(new GrayPicture(gray.Bytes, 300, 260))).Text);
    }

    [Fact]
    public void GrayPicture_OfTooFewPixels_IsRefused() => Assert.Throws<ArgumentException>(() => new GrayPicture(new byte[99], 10, 10));

    [Theory]
    [InlineData(0)]
    [InlineData(127)]
    public void Read_NoCode_GivesNothing(int noise)
    {
        using var photo = new Photo(900, 700, 128).Noise(noise);

        Assert.Empty(Texts(Save(photo.Encode())));
    }

    [Fact]
    public void Read_OnePixel_GivesNothing()
    {
        using var photo = new Photo(1, 1);

        Assert.Empty(Texts(Save(photo.Encode())));
    }

    [Fact]
    public void Read_Missing_SaysSo()
    {
        var path = Path.Combine(_folder, "none.png");

        Assert.Equal($"{path} does not exist: check the name.", Refusal(path));
    }

    [Fact]
    public void Read_Folder_SaysSo() => Assert.Equal($"{_folder} is a folder: name a picture in it.", Refusal(_folder));

    [Theory]
    [InlineData("")]
    [InlineData("order,piece\n2041,buss\n")]
    [InlineData("%PDF-1.7\n")]
    public void Read_NotAPicture_SaysSo(string content)
    {
        var path = Save(System.Text.Encoding.UTF8.GetBytes(content));

        Assert.Equal($"{path} is not a picture that can be read: give a whole PNG, JPEG or WebP file.", Refusal(path));
    }

    [Theory]
    [MemberData(nameof(Formats))]
    public void Read_CutShort_SaysSo(SKEncodedImageFormat format)
    {
        using var photo = new Photo(600, 600).Code(Tag, 300, 300, 6).Noise(20);
        var whole = photo.Encode(format);
        var path = Save(whole[..(whole.Length / 2)]);

        Assert.Equal($"{path} is cut short: copy the whole file again.", Refusal(path));
    }

    /// <summary>Chunks that inflate to a thousand times their size, or have as many rows.</summary>
    [Theory]
    [InlineData("IDAT", "")]
    [InlineData("zTXt", "Comment\0\0")]
    [InlineData("iCCP", "icc\0\0")]
    public void Read_ChunkThatInflatesToHundredsOfMegabytes_IsNotInflated(string chunk, string head)
    {
        using var photo = new Photo(300, 300).Code("60 1/4", 150, 150, 8);
        var path = Save(WithChunk(photo.Encode(), chunk, [.. System.Text.Encoding.ASCII.GetBytes(head), .. Bomb()]));
        var before = Environment.WorkingSet;

        var texts = Texts(path);

        Assert.Equal(chunk == "IDAT" ? [] : ["60 1/4"], texts);
        Assert.InRange(Environment.WorkingSet - before, long.MinValue, BombSize / 2);
    }

    [Fact]
    public void Read_HeaderClaimingGigapixels_IsRefusedBeforeDecoding()
    {
        using var photo = new Photo(8, 8);
        var path = Save(WithSize(photo.Encode(), 60_000, 60_000));

        Assert.Equal(
            $"{path} is 60000 × 60000 pixels, more than 100 million: crop it to the tag, or save it smaller.",
            Refusal(path));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static string[] Texts(string path) => [.. TagPictures.Read(path).Select(c => c.Text)];

    private static string Refusal(string path) => Assert.Throws<TagendException>(() => TagPictures.Read(path)).Message;

    private string Save(byte[] bytes)
    {
        var path = Path.Combine(_folder, "picture");
        File.WriteAllBytes(path, bytes);
        return path;
    }

    /// <summary>A JPEG with an Exif segment that holds the tag Orientation alone: CIPA DC-008.</summary>
    private static byte[] WithOrientation(byte[] jpeg, byte orientation)
    {
        byte[] segment =
        [
            0xFF, 0xE1, 0, 34, .. "Exif\0\0"u8,
            .. "MM"u8, 0, 42, 0, 0, 0, 8,
            0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0, 0, 0, 0, 0,
        ];
        return [.. jpeg[..2], .. segment, .. jpeg[2..]];
    }

    private static byte[] Bomb()
    {
        using var bomb = new MemoryStream();
        using (var deflate = new System.IO.Compression.ZLibStream(bomb, System.IO.Compression.CompressionLevel.SmallestSize, leaveOpen: true))
        {
            deflate.Write(new byte[BombSize]);
        }

        return bomb.ToArray();
    }

    /// <summary>A PNG with a chunk put behind its header: PNG specification, 5.3.</summary>
    private static byte[] WithChunk(byte[] png, string type, byte[] data)
    {
        const int HeaderEnd = 33;
        byte[] named = [.. System.Text.Encoding.ASCII.GetBytes(type), .. data];
        var chunk = new byte[named.Length + 8];
        BinaryPrimitives.WriteInt32BigEndian(chunk, data.Length);
        named.CopyTo(chunk, 4);
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(named.Length + 4), System.IO.Hashing.Crc32.HashToUInt32(named));
        return [.. png[..HeaderEnd], .. chunk, .. png[HeaderEnd..]];
    }

    /// <summary>A PNG whose header claims another size, with a correct check sum: PNG specification, 11.2.2.</summary>
    private static byte[] WithSize(byte[] png, int width, int height)
    {
        BinaryPrimitives.WriteInt32BigEndian(png.AsSpan(16), width);
        BinaryPrimitives.WriteInt32BigEndian(png.AsSpan(20), height);
        BinaryPrimitives.WriteUInt32BigEndian(png.AsSpan(29), System.IO.Hashing.Crc32.HashToUInt32(png.AsSpan(12, 17)));
        return png;
    }

    /// <summary>Zeros, and then an error of the device.</summary>
    private sealed class FailingStream(long good) : Stream
    {
        private long _read;

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position
        {
            get => _read;
            set => throw new NotSupportedException();
        }

        public override int Read(byte[] buffer, int offset, int count)
        {
            if (_read >= good)
            {
                throw new IOException("Input/output error");
            }

            buffer.AsSpan(offset, count).Clear();
            _read += count;
            return count;
        }

        public override void Flush() => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
