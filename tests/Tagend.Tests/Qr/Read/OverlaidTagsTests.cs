using System.Globalization;
using System.IO.Hashing;
using System.Text;
using SkiaSharp;
using Tagend.Pictures;
using Tagend.Workshop;
using Xunit;

namespace Tagend.Tests.Qr;

/// <summary>Two tags that differ in a digit, one seen through the other: one of both may be read, never a third.</summary>
public sealed class OverlaidTagsTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("tagend-overlaid-").FullName;

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Read_TwoTagsThatDifferInADigit_GivesNoThird(int seed)
    {
        var random = new Random(seed);
        var first = Symbol.OfTag(random);
        var second = Symbol.OfText(WithOtherDigit(first.Text, random));

        ReadNoThird(first, second, random);
    }

    [Theory]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    public void Read_TwoForeignCodesThatDifferInADigit_GivesNoThird(int seed)
    {
        var random = new Random(seed);
        var number = random.Next(1000, 9999);
        ReadNoThird(
            Symbol.OfText($"https://a.example/order/{number}"), Symbol.OfText($"https://a.example/order/{(number / 10 * 10) + ((number + 1) % 10)}"), random);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private void ReadNoThird(Symbol first, Symbol second, Random random)
    {
        Assert.Equal(first.Size, second.Size);
        foreach (var share in (float[])[0.35f, 0.5f, 0.62f])
        {
            var scene = new Scene(480, 480, random);
            scene.Paint((x, y) => ((x - 50) / 6, (y - 50) / 6), (x, y) => Mixed(x, y, share));
            scene.Blur(1.2);
            scene.Noise(12);
            var path = Path.Combine(_folder, "overlaid.png");
            File.WriteAllBytes(path, scene.Encode(SKEncodedImageFormat.Png, 100));

            Assert.All(TagPictures.Read(path), code => Assert.Contains(code.Text, (string[])[first.Text, second.Text]));
        }

        double? Mixed(double x, double y, float share) =>
            first.LightAt(x, y, 30, 225) is { } below && second.LightAt(x, y, 30, 225) is { } above ? (share * above) + ((1 - share) * below) : null;
    }

    /// <summary>A tag as well signed as the one given.</summary>
    private static string WithOtherDigit(string tag, Random random)
    {
        var body = new StringBuilder(tag[..tag.LastIndexOf("*E", StringComparison.Ordinal)]);
        int place;
        do
        {
            place = random.Next(5, body.Length);
        }
        while (!char.IsAsciiDigit(body[place]));

        body[place] = (char)('0' + ((body[place] - '0' + 1) % 10));
        var check = Crc32.HashToUInt32(Encoding.ASCII.GetBytes(body.ToString()));
        return $"{body}*E{check.ToString("X8", CultureInfo.InvariantCulture)}";
    }
}
