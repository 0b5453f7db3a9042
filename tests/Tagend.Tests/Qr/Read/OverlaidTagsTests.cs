using System.Globalization;
using System.IO.Hashing;
using System.Text;
using SkiaSharp;
using Tagend.Pictures;
using Tagend.Qr.Symbol;
using Tagend.Workshop;
using Xunit;

namespace Tagend.Tests.Qr;

/// <summary>Two codes that differ in a digit, one seen through the other: one of both may be read, never a third; and of nonsense nothing.</summary>
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

    /// <summary>A ghost beside its code, out of focus, with a pattern covered: what guesses, undone blur and nudged grids are for.</summary>
    [Theory]
    [InlineData(7)]
    [InlineData(8)]
    public void Read_TwoCodesThatDifferInADigitShiftedAndBlurred_GivesNoThird(int seed)
    {
        var random = new Random(seed);
        var number = random.Next(1000, 9999);
        var first = Symbol.OfText($"https://a.example/order/{number}");
        var second = Symbol.OfText($"https://a.example/order/{(number / 10 * 10) + ((number + 1) % 10)}");
        foreach (var (share, shift) in (ReadOnlySpan<(float, float)>)[(0.2f, 1), (0.45f, 0.5f), (0.55f, 2)])
        {
            var scene = new Scene(360, 360, random);
            scene.Paint((x, y) => ((x - 60) / 7, (y - 60) / 7), (x, y) => first.LightAt(x, y, 30, 225) is { } below
                ? (share * (second.LightAt(x - shift, y, 30, 225) ?? 225)) + ((1 - share) * (x > first.Size - 5 && y < 4 ? 120 : below)) : null);
            scene.Defocus(7 * scene.Between(0.3, 1.1));
            scene.Noise(3);

            Assert.All(Read(scene), text => Assert.Contains(text, (string[])[first.Text, second.Text]));
        }
    }

    /// <summary>The patterns of a code around nothing that was ever written, as a blurred or bent code would show it: with all that is tried none becomes a text.</summary>
    [Theory]
    [InlineData(25, 0.9)]
    [InlineData(33, 0.4)]
    public void Read_BlurredNonsense_GivesNothing(int size, double blur)
    {
        var random = new Random(size);
        var dark = SymbolLayout.Of(size).FunctionPatterns.Select(k => k == 0 ? random.Next(2) == 0 : k > 0).ToArray();
        var scene = new Scene(420, 420, random);
        var wave = scene.Waves(size);
        scene.Place(Symbol.OfModules(size, dark), (x, y) => (((x - 60) / 8) + (0.5 * wave(x / 8, y / 8)), (y - 60) / 8), 20, 230);
        scene.Blur(8 * blur);

        Assert.Empty(Read(scene));
    }

    private IEnumerable<string> Read(Scene scene)
    {
        var path = Path.Combine(_folder, "scene.png");
        File.WriteAllBytes(path, scene.Encode(SKEncodedImageFormat.Png, 100));
        return TagPictures.Read(path).Select(c => c.Text);
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

            Assert.All(Read(scene), text => Assert.Contains(text, (string[])[first.Text, second.Text]));
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
