using Tagend.Pictures;
using Tagend.Qr.Symbol;
using Tagend.Tags;
using Tagend.Workshop;
using Xunit;

namespace Tagend.Tests.Qr;

/// <summary>
/// Floors of what is read, a kind of damage each, and a ceiling of none for wrong reads. Doing better raises a floor.
/// docs/PICTURES.md has the whole score.
/// </summary>
public sealed class HardPictureTests : IDisposable
{
    /// <summary>Makes other pictures than those of any set.</summary>
    private const int Seed = 3;

    /// <summary>Read of two pictures: a foreign code in strength 2 and a tag in strength 3.</summary>
    private static readonly Dictionary<string, int> Floors = new()
    {
        ["turned and small"] = 2,
        ["tilted"] = 2,
        ["out of focus"] = 2,
        ["moved"] = 2,
        ["glare"] = 2,
        ["uneven light"] = 2,
        ["low contrast"] = 2,
        ["noise"] = 2,
        ["screen"] = 2,
        ["crumpled"] = 2,
        ["curved"] = 2,
        ["small in a large picture"] = 2,
        ["compressed"] = 2,
        ["dirt"] = 2,
        ["bag"] = 2,
        ["all at once"] = 2,
    };

    private readonly string _folder = Directory.CreateTempSubdirectory("tagend-hard-").FullName;

    public static TheoryData<string> Kinds => [.. Damage.Kinds];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Read_HardPictures_KeepsToItsFloorAndIsNeverWrong(string kind)
    {
        var read = 0;
        for (var strength = 2; strength <= 3; strength++)
        {
            var random = new Random((Seed * 10) + strength);
            var symbol = strength == 2 ? Symbol.Foreign(random) : Symbol.OfTag(random);
            var path = Path.Combine(_folder, $"{strength}.jpg");
            File.WriteAllBytes(path, Damage.Photograph(kind, strength, symbol, random));

            var codes = TagPictures.Read(path);

            Assert.All(codes, code => Assert.Equal(symbol.Text, code.Text));
            read += codes.Count;
        }

        Assert.InRange(read, Floors[kind], 2);
    }

    public static TheoryData<string> Places => [.. Setting.Kinds.Where(k => k is not "whole sheet" and not "scattered")];

    /// <summary>Pictures of many codes take long to draw: PictureReaderTests has one of twelve, and the score has them all.</summary>
    [Theory]
    [MemberData(nameof(Places))]
    public void Read_CleanCodeInAHardPlace_GivesItsText(string kind)
    {
        var (file, texts) = Setting.Photograph(kind, 3, isTag: true, new Random(Seed));
        var path = Path.Combine(_folder, "3.jpg");
        File.WriteAllBytes(path, file);

        Assert.Equal(texts, TagPictures.Read(path).Select(c => c.Text));
    }

    public static TheoryData<string> Lights => [.. Exposure.Kinds.Concat(Print.Kinds)];

    [Theory]
    [MemberData(nameof(Lights))]
    public void Read_CodeInHardLightOrOddlyPrinted_GivesItsText(string kind)
    {
        var (file, texts) = Exposure.Kinds.Contains(kind)
            ? Exposure.Photograph(kind, 2, isTag: false, new Random(Seed))
            : Print.Photograph(kind, 2, isTag: false, new Random(Seed));
        var path = Path.Combine(_folder, "2.jpg");
        File.WriteAllBytes(path, file);

        Assert.Equal(texts, TagPictures.Read(path).Select(c => c.Text));
    }

    [Fact]
    public void OfTag_IsATagThatRecallReads() =>
        Assert.All(Enumerable.Range(0, 50), seed => Assert.IsType<TagReading.Piece>(TagReader.Read(Symbol.OfTag(new Random(seed)).Text)));

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Read_BenchWithoutACode_GivesNothing(int seed)
    {
        var path = Path.Combine(_folder, "bench.jpg");
        File.WriteAllBytes(path, new Scene(900, 700, new Random(seed)).Encode(SkiaSharp.SKEncodedImageFormat.Jpeg, 90));

        Assert.Empty(TagPictures.Read(path));
    }

    [Theory]
    [InlineData(21)]
    [InlineData(29)]
    [InlineData(57)]
    public void Read_PatternsOfACodeAroundNonsense_GivesNothing(int size)
    {
        var path = Path.Combine(_folder, "nonsense.png");
        var random = new Random(Seed);
        var dark = SymbolLayout.Of(size).FunctionPatterns.Select(k => k == 0 ? random.Next(2) == 0 : k > 0).ToArray();
        var scene = new Scene(500, 500, random);
        scene.Place(Symbol.OfModules(size, dark), (x, y) => ((x - 60) / 6, (y - 60) / 6), 20, 230);
        File.WriteAllBytes(path, scene.Encode(SkiaSharp.SKEncodedImageFormat.Png, 100));

        Assert.Empty(TagPictures.Read(path));
    }

    [Fact]
    public void Read_HalfACode_GivesNothing()
    {
        var random = new Random(Seed);
        var symbol = Symbol.OfTag(random);
        var scene = new Scene(500, 500, random);
        scene.Place(symbol, (x, y) => (x / 6, (y / 6) + (symbol.Size / 2.0)), 20, 230);
        var path = Path.Combine(_folder, "half.png");
        File.WriteAllBytes(path, scene.Encode(SkiaSharp.SKEncodedImageFormat.Png, 100));

        Assert.Empty(TagPictures.Read(path));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
