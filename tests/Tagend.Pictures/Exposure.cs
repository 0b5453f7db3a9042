using SkiaSharp;

namespace Tagend.Pictures;

/// <summary>Codes in hard light and before a hard lens, each in strengths 1 to 5.</summary>
public static class Exposure
{
    private delegate void Recipe(Scene scene, Shot shot, int strength);

    private static readonly Dictionary<string, Recipe> Recipes = new()
    {
        ["lens"] = (s, shot, n) => s.Defocus(shot.Module * Pick(n, 0.8, 1.05, 1.3, 1.55, 1.8)),
        ["striped shadow"] = (s, shot, n) => Stripes(s, shot, Pick(n, 0.55, 0.42, 0.32, 0.24, 0.17)),
        ["bright spots"] = (s, shot, n) => Spots(s, shot, (int)Pick(n, 1, 2, 3, 4, 5), Pick(n, 0.1, 0.11, 0.12, 0.13, 0.14)),
        ["exposure"] = (s, shot, n) => Exposed(s, Pick(n, 0.3, 1.9, 0.12, 3.2, 0.05)),
    };

    public static IReadOnlyList<string> Kinds { get; } = [.. Recipes.Keys];

    /// <summary>The picture's file, and the text of the code in it.</summary>
    public static (byte[] File, IReadOnlyList<string> Texts) Photograph(string kind, int strength, bool isTag, Random random)
    {
        var scene = new Scene(1100, 950, random);
        var symbol = isTag ? Symbol.OfTag(random) : Symbol.Foreign(random);
        var shot = new Shot(symbol.Size, scene.Between(0.85, 1.15) * (symbol.Size > 45 ? 6 : 9), scene.Around(60), scene.Around(60));
        Setting.Lay(scene, symbol, shot.X, shot.Y, shot.Module, scene.Between(0, 6.28), scene.Between(0, 25));
        Recipes[kind](scene, shot, strength);
        scene.Blur(0.6);
        scene.Noise(2);
        return (scene.Encode(SKEncodedImageFormat.Jpeg, 88), [symbol.Text]);
    }

    private static double Pick(int strength, params ReadOnlySpan<double> values) => values[strength - 1];

    /// <summary>Of a blind or of slats: stripes a few modules wide with hard edges.</summary>
    private static void Stripes(Scene scene, Shot shot, double share)
    {
        var (angle, pitch, edge) = (scene.Between(0, 6.28), shot.Module * scene.Between(9, 22), scene.Between(0.6, 3));
        var (cos, sin, lit) = (Math.Cos(angle), Math.Sin(angle), scene.Between(0.35, 0.65));
        scene.Each((x, y, v) =>
        {
            var d = ((x * cos) + (y * sin)) / pitch;
            var fromMiddle = Math.Abs(d - Math.Floor(d) - 0.5) * pitch;
            return v * (share + ((1 - share) / (1 + Math.Exp((fromMiddle - (lit * pitch / 2)) / edge))));
        });
    }

    /// <summary>Lamps mirrored in a glossy label: white in the middle, with a veil around, over any part of the code.</summary>
    private static void Spots(Scene scene, Shot shot, int count, double share)
    {
        var size = shot.Size * shot.Module;
        var spots = Enumerable.Range(0, count).Select(_ => (
            X: (scene.Width / 2.0) + shot.X + scene.Around(size * 0.5), Y: (scene.Height / 2.0) + shot.Y + scene.Around(size * 0.5),
            Radius: size * share * scene.Between(0.6, 1))).ToList();
        scene.Each((x, y, v) =>
        {
            var light = (double)v;
            foreach (var spot in spots)
            {
                var d = ((x - spot.X) * (x - spot.X)) + ((y - spot.Y) * (y - spot.Y));
                light += (400 * Math.Exp(-d / (spot.Radius * spot.Radius))) + (90 * Math.Exp(-d / (9 * spot.Radius * spot.Radius)));
            }

            return light;
        });
    }

    /// <summary>So many times the light there should be: clipped, or deep in the sensor's noise.</summary>
    private static void Exposed(Scene scene, double times)
    {
        scene.Each((_, _, v) => (v * times) + (times > 1 ? 20 * times : 2));
        scene.Noise(times < 1 ? 3 : 1);
    }

    /// <param name="Size">Modules a side.</param>
    /// <param name="Module">Pixels.</param>
    /// <param name="X">Of the code's middle from the picture's.</param>
    /// <param name="Y">Of the code's middle from the picture's.</param>
    private sealed record Shot(int Size, double Module, double X, double Y);
}
