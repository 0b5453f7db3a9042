namespace Tagend.Pictures;

/// <summary>One picture of a set, with the texts it should give.</summary>
public sealed record KnownPicture(string Path, string Kind, int Strength, bool IsTag, IReadOnlyList<string> Texts)
{
    public string Name => System.IO.Path.GetFileName(Path);
}

/// <summary>A folder of hard pictures: each kind of damage in each strength, half of them tags, half foreign codes.</summary>
public static class PictureSet
{
    /// <param name="seed">The pictures that retries are chosen on and those they are scored on differ in it.</param>
    public static IReadOnlyList<KnownPicture> Make(string folder, int seed, int perStrength)
    {
        Directory.CreateDirectory(folder);
        var pictures = new List<KnownPicture>();
        foreach (var (kind, k) in Damage.Kinds.Concat(Setting.Kinds).Concat(Exposure.Kinds).Concat(Print.Kinds).Select((kind, k) => (kind, k)))
        {
            for (var strength = 1; strength <= Damage.Strengths; strength++)
            {
                for (var n = 0; n < perStrength; n++)
                {
                    var isTag = n % 2 == 0;
                    var random = new Random((((((seed * 100) + k) * 10) + strength) * 100) + n);
                    var path = Path.Combine(folder, $"{kind.Replace(' ', '-')}-{strength}-{n}.jpg");
                    var texts = path + ".txt";
                    if (!File.Exists(texts))
                    {
                        var (file, known) = Photograph(kind, strength, isTag, random);
                        File.WriteAllBytes(path, file);
                        File.WriteAllLines(texts, known);
                    }

                    pictures.Add(new KnownPicture(path, kind, strength, isTag, File.ReadAllLines(texts)));
                }
            }
        }

        return pictures;
    }

    private static (byte[] File, IReadOnlyList<string> Texts) Photograph(string kind, int strength, bool isTag, Random random)
    {
        foreach (var (kinds, photograph) in (ReadOnlySpan<(IReadOnlyList<string>, Func<string, int, bool, Random, (byte[], IReadOnlyList<string>)>)>)
            [(Setting.Kinds, Setting.Photograph), (Exposure.Kinds, Exposure.Photograph), (Print.Kinds, Print.Photograph)])
        {
            if (kinds.Contains(kind))
            {
                return photograph(kind, strength, isTag, random);
            }
        }

        var symbol = isTag ? Symbol.OfTag(random) : Symbol.Foreign(random);
        return (Damage.Photograph(kind, strength, symbol, random), [symbol.Text]);
    }
}
