using SkiaSharp;
using Tagend.Qr.Read;
using Xunit;

namespace Tagend.Tests.Qr;

public sealed class FrameReaderTests
{
    private const string Text = "TAGEND1/2041/BUSS/R1/20260504/L911225000";
    private const string Other = "TAGEND1/2041/CONTROL/R1/20260504";

    private readonly FrameReader _reader = new(CheckedTexts.None);

    [Fact]
    public void Read_CodeThatMoves_GivesItInEachFrameWhereItIs()
    {
        foreach (var x in (float[])[300, 330, 380, 640])
        {
            using var photo = new Photo(900, 700).Code(Text, x, 350, 6, degrees: x / 20).Noise(10);

            var code = Assert.Single(_reader.Read(Gray(photo)));

            Assert.Equal(Text, code.Text);
            var place = Assert.Single(code.Places);
            Assert.InRange((place.TopLeft.X + place.BottomRight.X) / 2, x - 3, x + 3);
        }
    }

    [Fact]
    public void Read_CodeThatLeaves_GivesTheNextOneElsewhere()
    {
        using var first = new Photo(900, 700).Code(Text, 250, 250, 5);
        using var second = new Photo(900, 700).Code(Other, 650, 480, 5);
        using var empty = new Photo(900, 700);

        Assert.Equal(Text, Assert.Single(_reader.Read(Gray(first))).Text);
        Assert.Equal(Other, Assert.Single(_reader.Read(Gray(second))).Text);
        Assert.Empty(_reader.Read(Gray(empty)));
        Assert.Equal(Text, Assert.Single(_reader.Read(Gray(first))).Text);
    }

    [Fact]
    public void Read_StreamOfAFile_GivesTheText()
    {
        using var photo = new Photo(900, 700).Code(Text, 450, 350, 6);
        using var input = new MemoryStream(photo.Encode(SKEncodedImageFormat.Jpeg));

        Assert.Equal(Text, Assert.Single(_reader.Read(input, "frame")).Text);
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(20, 3000)]
    [InlineData(3000, 20)]
    public void Read_FrameTooSmallForACode_GivesNothing(int width, int height) =>
        Assert.Empty(_reader.Read(new GrayPicture(new byte[width * height], width, height)));

    private static GrayPicture Gray(Photo photo)
    {
        using var bitmap = SKBitmap.Decode(photo.Encode());
        using var gray = bitmap.Copy(SKColorType.Gray8);
        return new GrayPicture(gray.Bytes, gray.Width, gray.Height);
    }
}
