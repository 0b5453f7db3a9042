using SkiaSharp;

namespace Tagend.Pictures;

/// <summary>Codes printed or drawn as the standard has them not, each in strengths 1 to 5.</summary>
public static class Print
{
    private delegate byte[] Recipe(int strength, Symbol symbol, Random random);

    private static readonly Dictionary<string, Recipe> Recipes = new()
    {
        ["styled"] = Styled,
        ["colors"] = Colored,
        ["stretched"] = Stretched,
        ["covered"] = Covered,
        ["screenshot"] = Screenshot,
    };

    /// <summary>Dark and light of a code, as red, green and blue.</summary>
    private static readonly (SKColor Dark, SKColor Light)[] Pairs =
    [
        (new(20, 40, 110), new(235, 225, 120)), (new(15, 15, 15), new(205, 30, 40)), (new(20, 90, 200), new(40, 160, 60)),
        (new(245, 215, 40), new(250, 250, 250)), (new(200, 40, 40), new(60, 105, 60)),
    ];

    public static IReadOnlyList<string> Kinds { get; } = [.. Recipes.Keys];

    /// <summary>The picture's file, and the text of the code in it.</summary>
    public static (byte[] File, IReadOnlyList<string> Texts) Photograph(string kind, int strength, bool isTag, Random random)
    {
        var symbol = kind == "screenshot" && strength == 5 ? Symbol.OfVersion(random, 40, isTag) : isTag ? Symbol.OfTag(random) : Symbol.Foreign(random);
        return (Recipes[kind](strength, symbol, random), [symbol.Text]);
    }

    private static double Pick(int strength, params ReadOnlySpan<double> values) => values[strength - 1];

    /// <summary>Small dots; rings for finder patterns; both with a picture in the middle; soft dots, light on dark; diamonds.</summary>
    private static byte[] Styled(int strength, Symbol symbol, Random random)
    {
        var scene = Ground(random);
        var (dot, logo) = (scene.Between(0.3, 0.4), symbol.Size * scene.Between(0.06, 0.1));
        var (ringed, half) = (strength is 2 or 3 or 5, symbol.Size / 2.0);
        scene.Paint(View(scene, symbol), (x, y) =>
        {
            var (u, v) = (x + half, y + half);
            if (symbol.LightAt(u, v, 0, 1) is not { } light)
            {
                return null;
            }

            var (a, b) = (Math.Abs(u - Math.Floor(u) - 0.5), Math.Abs(v - Math.Floor(v) - 0.5));
            var isFinder = u >= 0 && v >= 0 && u < symbol.Size && v < symbol.Size && symbol.IsFinder((int)u, (int)v);
            if (isFinder && ringed)
            {
                var (fu, fv) = (u < half ? u - 3.5 : u - symbol.Size + 3.5, v < half ? v - 3.5 : v - symbol.Size + 3.5);
                var from = Math.Sqrt((fu * fu) + (fv * fv));
                light = from < 1.6 || (from > 2.5 && from < 3.5) ? 0 : 1;
            }
            else if (light == 0 && !isFinder)
            {
                light = (strength == 5 ? a + b < 0.55 : (a * a) + (b * b) < dot * dot) ? 0 : 1;
            }

            light = strength >= 3 && Math.Max(Math.Abs(x), Math.Abs(y)) < logo ? 0.5 + (0.4 * Math.Sin(x) * Math.Cos(1.4 * y)) : light;
            return strength == 4 ? 225 - (190 * light) : 35 + (190 * light);
        });
        return Finished(scene);
    }

    private static byte[] Colored(int strength, Symbol symbol, Random random)
    {
        var (pair, seed) = (Pairs[strength - 1], random.Next());
        Scene Channel(Func<SKColor, byte> of)
        {
            var scene = Ground(new Random(seed));
            scene.Paint(View(scene, symbol), (x, y) => symbol.LightAt(x + (symbol.Size / 2.0), y + (symbol.Size / 2.0), of(pair.Dark), of(pair.Light)));
            scene.Blur(0.55);
            scene.Noise(2);
            return scene;
        }

        return Scene.Encode(Channel(c => c.Red), Channel(c => c.Green), Channel(c => c.Blue), SKEncodedImageFormat.Jpeg, 88);
    }

    /// <summary>Modules up to twice as wide as high, without a quiet zone on a dark and rough ground.</summary>
    private static byte[] Stretched(int strength, Symbol symbol, Random random)
    {
        var scene = Ground(random);
        var (wide, quiet, half) = (Pick(strength, 1.2, 1.4, 1.6, 1.8, 2), Pick(strength, 4, 2, 1, 0.5, 0), symbol.Size / 2.0);
        var view = View(scene, symbol);
        scene.Paint(view, (x, y) =>
        {
            var (u, v) = ((x / Math.Sqrt(wide)) + half, (y * Math.Sqrt(wide)) + half);
            return Math.Max(Math.Abs(u - half), Math.Abs(v - half)) < half + quiet ? symbol.LightAt(u, v, 30, 225) : null;
        });
        return Finished(scene);
    }

    /// <summary>Stickers, tape and scratches over finder patterns and modules, a pattern more with each two strengths.</summary>
    private static byte[] Covered(int strength, Symbol symbol, Random random)
    {
        var scene = Ground(random);
        var half = symbol.Size / 2.0;
        var corners = new[] { (X: 3.5, Y: 3.5), (X: symbol.Size - 3.5, Y: 3.5), (X: 3.5, Y: symbol.Size - 3.5) };
        random.Shuffle(corners);
        var covers = corners.Take((strength + 1) / 2).Select(c => (
            X: c.X + scene.Around(2.5), Y: c.Y + scene.Around(2.5), Long: scene.Between(2, 4.5), Wide: scene.Between(0.7, 1.6), Turn: scene.Between(0, 3.14),
            Tone: scene.Random.Next(2) == 0 ? scene.Between(20, 70) : scene.Between(170, 230))).ToList();
        scene.Paint(View(scene, symbol), (x, y) =>
        {
            var (u, v) = (x + half, y + half);
            foreach (var c in covers)
            {
                var (du, dv) = (u - c.X, v - c.Y);
                if (Math.Abs((du * Math.Cos(c.Turn)) + (dv * Math.Sin(c.Turn))) < c.Long && Math.Abs((dv * Math.Cos(c.Turn)) - (du * Math.Sin(c.Turn))) < c.Wide)
                {
                    return c.Tone;
                }
            }

            return symbol.LightAt(u, v, 30, 225);
        });
        return Finished(scene);
    }

    /// <summary>Upright and exact as a program draws it, at 3, 2, 1.5 and 1 pixels a module, the last in version 40, in a page of boxes.</summary>
    private static byte[] Screenshot(int strength, Symbol symbol, Random random)
    {
        var scene = new Scene(700, 600, random);
        var module = Pick(strength, 3, 2, 1.5, 1, 1);
        var (left, top) = (random.Next(20, 700 - (int)((symbol.Size + 10) * module)), random.Next(20, 600 - (int)((symbol.Size + 10) * module)));
        scene.Each((x, y, v) => symbol.LightAt(Math.Floor((x + 0.5 - left) / module), Math.Floor((y + 0.5 - top) / module), 10, 250) ?? v);
        return scene.Encode(SKEncodedImageFormat.Png, 100);
    }

    private static Scene Ground(Random random)
    {
        var scene = new Scene(1100, 950, random);
        scene.Cover(Texture.Of(random.Next(Texture.Count), scene.Between(2, 7), random));
        return scene;
    }

    private static Func<double, double, (double X, double Y)?> View(Scene scene, Symbol symbol) => Setting.View(
        scene, scene.Around(60), scene.Around(60), scene.Between(420, 620) / (symbol.Size + 8), scene.Between(0, 6.28), scene.Between(0, 25), 3 * symbol.Size);

    private static byte[] Finished(Scene scene)
    {
        scene.Blur(0.55);
        scene.Noise(2);
        return scene.Encode(SKEncodedImageFormat.Jpeg, 88);
    }
}
