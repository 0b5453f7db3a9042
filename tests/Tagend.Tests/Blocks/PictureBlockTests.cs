using SkiaSharp;
using Tagend.Blocks;
using Tagend.Output;
using Tagend.Problems;
using Xunit;

namespace Tagend.Tests.Blocks;

public sealed class PictureBlockTests : IDisposable
{
    private readonly string _file = Path.Combine(Path.GetTempPath(), $"tagend-{Guid.NewGuid():N}.png");

    [Theory]
    [InlineData(400, 100, 150, 37.5f)] // as wide as it may be
    [InlineData(100, 100, 36, 36)] // as high as it may be
    [InlineData(10, 40, 9, 36)]
    public void Place_OfAPicture_KeepsItsProportions(int wide, int high, float width, float height)
    {
        var placed = Laid.Out(new PictureBlock(Make(wide, high), 150, Math.Max(36, height)), 400);

        Assert.Equal((width, height), (placed.Width, placed.Height));
    }

    [Fact]
    public void Place_WithoutRoom_SaysSizes() => Assert.Equal(
        ["a picture takes 150 × 30 pt and has 100 × 1000 pt"],
        Laid.Misfits(new PictureBlock(Make(500, 100), 150, 36), 100, 1000));

    [Fact]
    public void Read_OfADamagedPicture_SaysWhatToDo()
    {
        File.WriteAllBytes(_file, [0x89, 0x50, 0x4E, 0x47, 1, 2, 3]);

        Assert.Equal(
            $"{_file}: the picture is damaged; export it as PNG again",
            Assert.Throws<TagendException>(() => DotPicture.Read(_file, File.ReadAllBytes(_file))).Message);
    }

    [Fact]
    public void Read_OfAPictureCutOff_IsRefused()
    {
        Make(60, 40);
        var file = File.ReadAllBytes(_file);

        Assert.Throws<TagendException>(() => DotPicture.Read(_file, file[..(file.Length * 2 / 3)]));
    }

    public void Dispose() => File.Delete(_file);

    private DotPicture Make(int width, int height)
    {
        using var bitmap = new SKBitmap(width, height);
        bitmap.Erase(SKColors.Black);
        using (var file = File.Create(_file))
        {
            bitmap.Encode(file, SKEncodedImageFormat.Png, 100);
        }

        return DotPicture.Read(_file, File.ReadAllBytes(_file));
    }
}
