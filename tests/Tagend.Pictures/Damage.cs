namespace Tagend.Pictures;

/// <summary>What can be wrong with a picture, each in strengths 1 to 5.</summary>
public static class Damage
{
    public const int Strengths = 5;

    private delegate void Recipe(Scene scene, Symbol symbol, Shot shot, int strength);

    private static readonly Dictionary<string, Recipe> Recipes = new()
    {
        ["turned and small"] = (s, c, shot, n) => Flat(s, c, shot with { Module = Pick(n, 4, 3.2, 2.6, 2.2, 1.9), Angle = s.Between(0, 6.28) }),
        ["tilted"] = (s, c, shot, n) => Tilted(s, c, shot, Pick(n, 35, 45, 52, 58, 64)),
        ["out of focus"] = (s, c, shot, n) =>
        {
            Flat(s, c, shot);
            s.Blur(shot.Module * Pick(n, 0.4, 0.55, 0.7, 0.85, 1));
        },
        ["moved"] = (s, c, shot, n) =>
        {
            Flat(s, c, shot);
            s.Motion(shot.Module * Pick(n, 0.9, 1.3, 1.7, 2.1, 2.6), s.Between(0, 3.14));
        },
        ["glare"] = (s, c, shot, n) =>
        {
            Flat(s, c, shot);
            Glare(s, shot.Module * c.Size, Pick(n, 0.06, 0.1, 0.14, 0.19, 0.25));
        },
        ["uneven light"] = (s, c, shot, n) =>
        {
            Flat(s, c, shot);
            Shadow(s, Pick(n, 0.45, 0.3, 0.2, 0.13, 0.08));
        },
        ["low contrast"] = (s, c, shot, n) =>
        {
            var half = Pick(n, 25, 16, 10, 7, 5);
            Flat(s, c, shot with { Dark = 130 - half, White = 130 + half });
            s.Noise(1.5);
        },
        ["noise"] = (s, c, shot, n) =>
        {
            Flat(s, c, shot);
            s.Noise(Pick(n, 35, 60, 85, 110, 140));
        },
        ["screen"] = (s, c, shot, n) =>
        {
            Flat(s, c, shot);
            Screen(s, Pick(n, 0.25, 0.4, 0.55, 0.7, 0.85));
        },
        ["crumpled"] = (s, c, shot, n) => Crumpled(s, c, shot, Pick(n, 0.25, 0.5, 0.9, 1.4, 2)),
        ["curved"] = (s, c, shot, n) => Curved(s, c, shot, Pick(n, 35, 45, 53, 60, 66)),
        ["small in a large picture"] = (s, c, shot, n) => Flat(s, c, shot with { Module = Pick(n, 3, 2.5, 2.1, 1.8, 1.55) }),
        ["compressed"] = (s, c, shot, n) => Flat(s, c, shot with { Module = 4.5 }),
        ["dirt"] = (s, c, shot, n) =>
        {
            Flat(s, c, shot);
            Dirt(s, shot.Module * c.Size, (int)Pick(n, 2, 4, 7, 10, 14));
        },
        ["bag"] = (s, c, shot, n) =>
        {
            Crumpled(s, c, shot with { Dark = 70, White = 190 }, Pick(n, 0.1, 0.25, 0.4, 0.7, 1));
            Streaks(s, (int)Pick(n, 2, 4, 6, 9, 13));
        },
        ["all at once"] = (s, c, shot, n) =>
        {
            Tilted(s, c, shot, Pick(n, 15, 22, 30, 36, 42));
            Shadow(s, Pick(n, 0.7, 0.55, 0.45, 0.35, 0.28));
            s.Blur(shot.Module * Pick(n, 0.25, 0.35, 0.42, 0.5, 0.58));
            s.Noise(Pick(n, 4, 7, 10, 13, 16));
        },
    };

    public static IReadOnlyList<string> Kinds { get; } = [.. Recipes.Keys];

    /// <summary>A picture with one symbol in it, about a megapixel; a large one where that is what is wrong with it.</summary>
    public static byte[] Photograph(string kind, int strength, Symbol symbol, Random random)
    {
        var isLarge = kind == "small in a large picture";
        var scene = isLarge ? new Scene(2000, 1500, random) : new Scene(1100, 950, random);
        var module = scene.Between(0.85, 1.15) * (symbol.Size > 45 ? 6 : 9);
        var reach = isLarge ? 350 : 60;
        var shot = new Shot(
            (scene.Width / 2.0) + scene.Around(reach), (scene.Height / 2.0) + scene.Around(reach), module,
            scene.Around(0.3) + (random.Next(4) * Math.PI / 2), scene.Between(15, 55), scene.Between(195, 240));
        Recipes[kind](scene, symbol, shot, strength);
        scene.Blur(0.6);
        scene.Noise(2);
        var quality = kind == "compressed" ? (int)Pick(strength, 22, 15, 10, 7, 5) : 88;
        return scene.Encode(SkiaSharp.SKEncodedImageFormat.Jpeg, quality);
    }

    private static double Pick(int strength, params ReadOnlySpan<double> values) => values[strength - 1];

    private static void Flat(Scene scene, Symbol symbol, Shot shot) => Bent(scene, symbol, shot, (x, y) => (x, y));

    private static void Bent(Scene scene, Symbol symbol, Shot shot, Func<double, double, (double, double)?> bend)
    {
        var (cos, sin) = (Math.Cos(shot.Angle), Math.Sin(shot.Angle));
        scene.Place(symbol, (px, py) =>
        {
            var (dx, dy) = ((px - shot.X) / shot.Module, (py - shot.Y) / shot.Module);
            return bend((dx * cos) + (dy * sin), (dy * cos) - (dx * sin)) is var (x, y)
                ? (x + (symbol.Size / 2.0), y + (symbol.Size / 2.0))
                : null;
        }, (float)shot.Dark, (float)shot.White);
    }

    private static void Tilted(Scene scene, Symbol symbol, Shot shot, double degrees)
    {
        var distance = 2.2 * symbol.Size;
        var (cos, sin) = (Math.Cos(degrees * Math.PI / 180), Math.Sin(degrees * Math.PI / 180));
        var turn = scene.Between(0, 6.28);
        var (ct, st) = (Math.Cos(turn), Math.Sin(turn));
        Bent(scene, symbol, shot, (u, v) =>
        {
            var a = u / distance;
            var y = v / (cos + (v / distance * sin));
            var x = a * (distance - (y * sin));
            return distance - (y * sin) > 0 ? ((x * ct) - (y * st), (x * st) + (y * ct)) : null;
        });
    }

    /// <summary>On a cylinder whose edges the symbol reaches to so many degrees from its middle line.</summary>
    private static void Curved(Scene scene, Symbol symbol, Shot shot, double degrees)
    {
        var radius = symbol.Size / 2.0 / (degrees * Math.PI / 180);
        var turn = scene.Random.Next(2) == 0 ? scene.Around(0.15) : scene.Between(0, 3.14);
        var (ct, st) = (Math.Cos(turn), Math.Sin(turn));
        Bent(scene, symbol, shot, (u, v) =>
        {
            var (a, b) = ((u * ct) + (v * st), (v * ct) - (u * st));
            if (Math.Abs(a) >= radius * 0.999)
            {
                return null;
            }

            var arc = radius * Math.Asin(a / radius);
            return ((arc * ct) - (b * st), (arc * st) + (b * ct));
        });
        scene.Each((x, y, v) =>
        {
            var (dx, dy) = ((x - shot.X) / shot.Module, (y - shot.Y) / shot.Module);
            var angle = shot.Angle + turn;
            var a = ((dx * Math.Cos(angle)) + (dy * Math.Sin(angle))) / radius;
            return Math.Abs(a) < 1 ? v * (0.45 + (0.55 * Math.Sqrt(1 - (a * a)))) : v;
        });
    }

    /// <param name="modules">How far the folds move a module.</param>
    private static void Crumpled(Scene scene, Symbol symbol, Shot shot, double modules)
    {
        var wavelength = symbol.Size * 0.7;
        var (shiftX, shiftY) = (scene.Waves(wavelength), scene.Waves(wavelength));
        Bent(scene, symbol, shot, (x, y) => (x + (modules * shiftX(x, y)), y + (modules * shiftY(x, y))));
        var shade = scene.Waves(wavelength * shot.Module * 0.7);
        scene.Each((x, y, v) => v * (1 - (0.12 * modules * (1 + shade(x, y)))));
    }

    private static void Glare(Scene scene, double size, double share)
    {
        var (x0, y0) = ((scene.Width / 2.0) + scene.Around(size * 0.4), (scene.Height / 2.0) + scene.Around(size * 0.4));
        var (wide, high) = (size * share * scene.Between(0.7, 1.4), size * share * scene.Between(0.7, 1.4));
        scene.Each((x, y, v) => v + (500 * Math.Exp(-Math.Pow((x - x0) / wide, 2) - Math.Pow((y - y0) / high, 2))));
    }

    private static void Shadow(Scene scene, double share)
    {
        var (angle, place) = (scene.Between(0, 6.28), scene.Around(90));
        var (cos, sin) = (Math.Cos(angle), Math.Sin(angle));
        scene.Each((x, y, v) =>
        {
            var d = ((x - (scene.Width / 2.0)) * cos) + ((y - (scene.Height / 2.0)) * sin) + place;
            var falloff = 1 - (0.4 * (0.5 + (d / scene.Width)));
            return v * falloff * (share + ((1 - share) / (1 + Math.Exp(d / 12))));
        });
    }

    private static void Screen(Scene scene, double depth)
    {
        var (pitch, angle) = (scene.Between(2.1, 4.3), scene.Around(0.12));
        var (cos, sin, k) = (Math.Cos(angle), Math.Sin(angle), 2 * Math.PI / pitch);
        var band = scene.Between(60, 160);
        scene.Each((x, y, v) =>
        {
            var (u, w) = ((x * cos) + (y * sin), (y * cos) - (x * sin));
            var grid = (1 + Math.Cos(k * u)) * (1 + (0.6 * Math.Cos(k * w))) / 2;
            return ((v + 15) * (1 - depth + (depth * grid))) * (1 - (depth * 0.25 * (1 + Math.Sin(y / band * 6.28))));
        });
    }

    private static void Dirt(Scene scene, double size, int marks)
    {
        var blots = Enumerable.Range(0, marks).Select(_ => (
            X: (scene.Width / 2.0) + scene.Around(size * 0.55), Y: (scene.Height / 2.0) + scene.Around(size * 0.55),
            R: size * scene.Between(0.015, 0.06), Tone: scene.Random.Next(2) == 0 ? 40.0 : 220.0,
            Long: scene.Between(1, 5), Turn: scene.Between(0, 6.28))).ToList();
        scene.Each((x, y, v) =>
        {
            foreach (var b in blots)
            {
                var (dx, dy) = (x - b.X, y - b.Y);
                var (u, w) = ((dx * Math.Cos(b.Turn)) + (dy * Math.Sin(b.Turn)), (dy * Math.Cos(b.Turn)) - (dx * Math.Sin(b.Turn)));
                v = (u / b.Long * u / b.Long) + (w * w * b.Long) < b.R * b.R ? (float)b.Tone : v;
            }

            return v;
        });
    }

    /// <summary>Bright folds of a clear bag.</summary>
    private static void Streaks(Scene scene, int count)
    {
        var folds = Enumerable.Range(0, count).Select(_ => (
            Angle: scene.Between(0, 3.14), Place: scene.Around(230), Bow: scene.Around(0.0012),
            Width: scene.Between(1.5, 6), Glow: scene.Between(60, 230))).ToList();
        scene.Each((x, y, v) =>
        {
            var (dx, dy) = (x - (scene.Width / 2.0), y - (scene.Height / 2.0));
            foreach (var f in folds)
            {
                var (u, w) = ((dx * Math.Cos(f.Angle)) + (dy * Math.Sin(f.Angle)), (dy * Math.Cos(f.Angle)) - (dx * Math.Sin(f.Angle)));
                var d = u - f.Place - (f.Bow * w * w);
                v += (float)(f.Glow * Math.Exp(-d * d / (2 * f.Width * f.Width)));
            }

            return v;
        });
    }

    /// <summary>Where the label is and how it is lit.</summary>
    /// <param name="Module">Pixels.</param>
    /// <param name="Angle">Radians.</param>
    private sealed record Shot(double X, double Y, double Module, double Angle, double Dark, double White);
}
