using System.Buffers.Binary;
using System.IO.Compression;
using System.IO.Hashing;
using System.Net;
using System.Text;
using Xunit;

namespace Tagend.StationTests;

/// <summary>Pictures that are none, or more than any: what a camera's and a photo's address takes.</summary>
public class PictureTests(DemoStation demo) : IClassFixture<DemoStation>
{
    private const string Photo = "scan/photo";
    private const string Frame = "scan/frame";

    [Theory]
    [InlineData(Photo)]
    [InlineData(Frame)]
    public async Task Bomb_OfAFewBytesAndBillionsOfDots_IsRefusedWithoutItsMemory(string path)
    {
        using var sender = await Sender.To(demo.Station);
        var before = demo.Station.ResidentMegabytes;
        var (status, said) = await sender.Said(path, new ByteArrayContent(Png(60_000, 60_000)));
        Assert.NotEqual(HttpStatusCode.InternalServerError, status);
        Assert.Contains("60000 × 60000", said, StringComparison.Ordinal);
        Assert.InRange(demo.Station.ResidentMegabytes, 1, before + 50);
    }

    [Theory]
    [InlineData(Photo, 1L << 30)]
    [InlineData(Frame, 1L << 30)]
    [InlineData(Frame, (4L << 20) + 1)]
    public async Task Picture_OfTooManyBytes_IsRefusedBeforeItIsRead(string path, long length)
    {
        using var sender = await Sender.To(demo.Station);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, await sender.Announce(path, new StreamContent(new Zeros(length))));
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(3, 2_000)]
    [InlineData(2_000, 3)]
    [InlineData(1_279, 719)]
    public async Task Frame_OfAnySize_IsLookedAt(int width, int height)
    {
        using var sender = await Sender.To(demo.Station);
        Assert.Equal(HttpStatusCode.NoContent, (await sender.Said(Frame, new ByteArrayContent(Png(width, height)))).Status);
    }

    [Fact]
    public async Task Frame_ThatIsNoPicture_IsRefusedInWordsAndTheNextOneIsRead()
    {
        using var sender = await Sender.To(demo.Station);
        foreach (var (bytes, sentence) in new[] { ([], "is not a picture that can be read"), ([1, 2, 3], "is not a picture that can be read"), (Png(640, 480)[..60], "is cut short") })
        {
            var (status, said) = await sender.Said(Frame, new ByteArrayContent(bytes));
            Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
            Assert.Contains(sentence, said, StringComparison.Ordinal);
        }

        var order = Printed.Order(demo.Station);
        var frame = Printed.Frame(demo.Station, order);
        Assert.SkipWhen(frame is null, "pdftoppm is not installed");
        Assert.Contains($"{order}/string", (await sender.Said(Frame, new ByteArrayContent(frame))).Said, StringComparison.Ordinal);
    }

    /// <summary>A white picture of one bit a dot (ISO/IEC 15948): its rows of zeros take next to nothing.</summary>
    private static byte[] Png(int width, int height)
    {
        using var png = new MemoryStream();
        png.Write([0x89, .. "PNG\r\n\x1a\n"u8]);
        var header = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(header, width);
        BinaryPrimitives.WriteInt32BigEndian(header.AsSpan(4), height);
        (header[8], header[9]) = (1, 0); // a bit of gray
        Chunk(png, "IHDR", header);
        using var packed = new MemoryStream();
        using (var zip = new ZLibStream(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            var row = new byte[1 + ((width + 7) / 8)];
            row.AsSpan(1).Fill(0xFF);
            for (var y = 0; y < Math.Min(height, 3_000); y++)
            {
                zip.Write(row);
            }
        }

        Chunk(png, "IDAT", packed.ToArray());
        Chunk(png, "IEND", []);
        return png.ToArray();
    }

    private static void Chunk(Stream png, string type, byte[] data)
    {
        Span<byte> number = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(number, data.Length);
        png.Write(number);
        byte[] body = [.. Encoding.ASCII.GetBytes(type), .. data];
        png.Write(body);
        BinaryPrimitives.WriteUInt32BigEndian(number, Crc32.HashToUInt32(body));
        png.Write(number);
    }
}
