using SkiaSharp;

namespace Tagend.Pictures;

/// <summary>Clean codes in hard places, each in strengths 1 to 5: what is around them or how they are seen is what is hard.</summary>
public static class Setting
{
    private delegate (Scene Scene, IReadOnlyList<string> Texts) Recipe(int strength, bool isTag, Random random);

    private static readonly Dictionary<string, Recipe> Recipes = new()
    {
        ["rough ground"] = RoughGround,
        ["whole sheet"] = WholeSheet,
        ["pixels of a screen"] = PixelsOfAScreen,
        ["steep"] = Steep,
        ["high version"] = HighVersion,
        ["fine scan"] = FineScan,
        ["cut corner"] = CutCorner,
        ["close"] = Close,
        ["bent page"] = BentPage,
        ["bottle"] = Bottle,
        ["odd print"] = OddPrint,
        ["scattered"] = Scattered,
    };

    public static IReadOnlyList<string> Kinds { get; } = [.. Recipes.Keys];

    /// <summary>The picture's file, and the texts of the codes in it.</summary>
    public static (byte[] File, IReadOnlyList<string> Texts) Photograph(string kind, int strength, bool isTag, Random random)
    {
        var (scene, texts) = Recipes[kind](strength, isTag, random);
        scene.Blur(kind == "fine scan" ? 0.35 : 0.55);
        scene.Noise(2);
        return (scene.Encode(SKEncodedImageFormat.Jpeg, 88), texts);
    }

    private static double Pick(int strength, params ReadOnlySpan<double> values) => values[strength - 1];

    private static Symbol OneOf(bool isTag, Random random) => isTag ? Symbol.OfTag(random) : Symbol.Foreign(random);

    /// <summary>A label on wood, cloth, carpet, a wall or gravel, one a strength and ever smaller.</summary>
    private static (Scene, IReadOnlyList<string>) RoughGround(int strength, bool isTag, Random random)
    {
        var scene = new Scene(2400, 1800, random);
        var symbol = OneOf(isTag, random);
        scene.Cover(Texture.Of(random.Next(Texture.Count), scene.Between(2, 7), random));
        var module = Pick(strength, 9, 7, 5.2, 4, 3) * scene.Between(0.9, 1.1);
        Lay(scene, symbol, scene.Around(500), scene.Around(350), module, scene.Between(0, 6.28), scene.Between(0, 35));
        return (scene, [symbol.Text]);
    }

    /// <summary>A sheet of 10 to 60 labels before a rough ground, 12 megapixels.</summary>
    private static (Scene, IReadOnlyList<string>) WholeSheet(int strength, bool isTag, Random random)
    {
        var (columns, rows) = strength switch { 1 => (2, 5), 2 => (2, 7), 3 => (4, 5), 4 => (5, 8), _ => (6, 10) };
        var scene = new Scene(3024, 4032, random);
        scene.Cover(Texture.Of(random.Next(Texture.Count), scene.Between(2, 9), random));
        var symbols = Enumerable.Range(0, columns * rows).Select(_ => OneOf(isTag, random)).ToList();
        const double Height = 297;
        const double Width = 210;
        var (cellWidth, cellHeight) = ((Width - 12) / columns, (Height - 12) / rows);
        var codeSide = 0.78 * Math.Min(cellWidth, cellHeight);
        var pixels = scene.Height * scene.Between(0.72, 0.86) / Height;
        var view = View(scene, scene.Around(60), scene.Around(60), pixels, scene.Around(0.3), scene.Between(0, 18), 2.5 * Height);
        scene.Paint(view, (x, y) =>
        {
            (x, y) = (x + (Width / 2), y + (Height / 2));
            if (x < 0 || y < 0 || x >= Width || y >= Height)
            {
                return null;
            }

            var (column, row) = ((int)Math.Floor((x - 6) / cellWidth), (int)Math.Floor((y - 6) / cellHeight));
            if (column < 0 || row < 0 || column >= columns || row >= rows)
            {
                return 232;
            }

            var symbol = symbols[(row * columns) + column];
            var module = codeSide / symbol.Size;
            var (u, v) = ((x - 6 - (column * cellWidth) - ((cellWidth - codeSide) / 2)) / module, (y - 6 - (row * cellHeight) - ((cellHeight - codeSide) / 2)) / module);
            return u >= 0 && v >= 0 && u < symbol.Size && v < symbol.Size && symbol.IsDark((int)u, (int)v) ? 28 : 232;
        });
        return (scene, [.. symbols.Select(s => s.Text)]);
    }

    /// <summary>A code on a screen whose pixels show, of red, green and blue stripes, with the moiré of the camera's own.</summary>
    private static (Scene, IReadOnlyList<string>) PixelsOfAScreen(int strength, bool isTag, Random random)
    {
        var scene = new Scene(2000, 2000, random);
        var symbol = OneOf(isTag, random);
        var module = scene.Between(0.6, 0.85) * 2000 / (symbol.Size + 8);
        var pitch = Pick(strength, 2.3, 3.4, 5, 7, 9.5) * scene.Between(0.9, 1.1);
        var gap = Pick(strength, 0.5, 0.4, 0.3, 0.22, 0.15);
        var stripes = new[] { scene.Between(0.5, 1), scene.Between(0.7, 1), scene.Between(0.4, 0.9) };
        Lay(scene, symbol, scene.Around(100), scene.Around(100), module, scene.Around(0.2), scene.Between(0, 20));
        var (cos, sin) = (Math.Cos(scene.Around(0.1)), Math.Sin(scene.Around(0.1)));
        var reflection = scene.Waves(900);
        scene.Each((x, y, v) =>
        {
            var (u, w) = (((x * cos) + (y * sin)) / pitch, ((y * cos) - (x * sin)) / pitch);
            var (fu, fw) = (u - Math.Floor(u), w - Math.Floor(w));
            var lit = fw > 0.82 || fu > 0.9 ? gap : stripes[Math.Min(2, (int)(fu * 3.34))];
            return (v * lit) + (12 * (1 + reflection(x, y)));
        });
        return (scene, [symbol.Text]);
    }

    /// <summary>Seen from 35 down to 20 degrees over the paper.</summary>
    private static (Scene, IReadOnlyList<string>) Steep(int strength, bool isTag, Random random)
    {
        var scene = new Scene(1600, 1200, random);
        var symbol = OneOf(isTag, random);
        var module = scene.Between(800, 1000) / (symbol.Size + 8);
        Lay(scene, symbol, scene.Around(60), scene.Around(60), module, scene.Around(0.3), Pick(strength, 55, 60, 64, 67, 70), scene.Between(0, 6.28));
        return (scene, [symbol.Text]);
    }

    /// <summary>Versions 22 to 40 from near.</summary>
    private static (Scene, IReadOnlyList<string>) HighVersion(int strength, bool isTag, Random random)
    {
        var scene = new Scene(1400, 1200, random);
        var symbol = Symbol.OfVersion(random, (int)Pick(strength, 22, 27, 32, 36, 40), isTag);
        var module = 1000.0 / (symbol.Size + 8) * scene.Between(0.9, 1.08);
        Lay(scene, symbol, scene.Around(30), scene.Around(30), module, scene.Around(0.25) + (random.Next(4) * Math.PI / 2), scene.Between(0, 14));
        return (scene, [symbol.Text]);
    }

    /// <summary>Two to one pixels a module.</summary>
    private static (Scene, IReadOnlyList<string>) FineScan(int strength, bool isTag, Random random)
    {
        var scene = new Scene(900, 700, random);
        var symbol = OneOf(isTag, random);
        Lay(scene, symbol, scene.Around(150), scene.Around(100), Pick(strength, 2.1, 1.8, 1.55, 1.35, 1.2), scene.Around(0.05), 0);
        return (scene, [symbol.Text]);
    }

    /// <summary>A finder pattern torn off or under a thumb, from a third of it to all.</summary>
    private static (Scene, IReadOnlyList<string>) CutCorner(int strength, bool isTag, Random random)
    {
        var scene = new Scene(1100, 950, random);
        var symbol = OneOf(isTag, random);
        var module = scene.Between(0.85, 1.15) * (symbol.Size > 45 ? 6 : 9);
        var cut = Pick(strength, 2.5, 4, 5.5, 7, 8);
        var corner = random.Next(3);
        var tone = scene.Between(40, 200);
        var view = View(scene, scene.Around(60), scene.Around(60), module, scene.Around(0.5), scene.Between(0, 15), 3 * symbol.Size);
        scene.Paint(view, (x, y) =>
        {
            var (u, v) = (x + (symbol.Size / 2.0), y + (symbol.Size / 2.0));
            var (fromLeft, fromTop) = (corner == 1 ? symbol.Size - u : u, corner == 2 ? symbol.Size - v : v);
            return fromLeft + fromTop < 2 * cut - 3 && fromLeft < cut + 4 && fromTop < cut + 4 ? tone : symbol.LightAt(u, v, 30, 225);
        });
        return (scene, [symbol.Text]);
    }

    /// <summary>A sharp code that fills the picture to its edges.</summary>
    private static (Scene, IReadOnlyList<string>) Close(int strength, bool isTag, Random random)
    {
        var scene = new Scene(1600, 1600, random);
        var symbol = OneOf(isTag, random);
        var module = 1600.0 / (symbol.Size + Pick(strength, 6, 4, 2.5, 1.2, 0.4));
        Lay(scene, symbol, 0, 0, module, scene.Around(0.01) + (random.Next(4) * Math.PI / 2), Pick(strength, 6, 4, 2, 1, 0));
        return (scene, [symbol.Text]);
    }

    /// <summary>Versions 12 to 32 on a page that bows and waves, from near.</summary>
    private static (Scene, IReadOnlyList<string>) BentPage(int strength, bool isTag, Random random)
    {
        var scene = new Scene(1700, 1500, random);
        var symbol = Symbol.OfVersion(random, (int)Pick(strength, 12, 17, 22, 27, 32), isTag);
        var (bow, wave) = (Pick(strength, 0.02, 0.03, 0.04, 0.05, 0.06) * symbol.Size, Pick(strength, 0.3, 0.5, 0.7, 0.9, 1.1));
        var waves = scene.Waves(1.2 * symbol.Size);
        var view = View(scene, scene.Around(30), scene.Around(30), 1150.0 / (symbol.Size + 8), scene.Around(0.3), scene.Between(0, 25), 3 * symbol.Size);
        scene.Paint(
            (px, py) => view(px, py) is var (x, y) ? (x + (wave * waves(x, y)), y + (bow * 4 * x * x / symbol.Size / symbol.Size) + (wave * waves(y + 40, x))) : null,
            (u, v) => symbol.LightAt(u + (symbol.Size / 2.0), v + (symbol.Size / 2.0), 40, 215));
        return (scene, [symbol.Text]);
    }

    /// <summary>Around a bottle near the camera: to its sides from 25 to 55 degrees, the bottle upright or lying, tilted towards the camera or away.</summary>
    private static (Scene, IReadOnlyList<string>) Bottle(int strength, bool isTag, Random random)
    {
        var scene = new Scene(1400, 1100, random);
        var symbol = OneOf(isTag, random);
        var half = Pick(strength, 25, 33, 41, 48, 55) * Math.PI / 180;
        var radius = symbol.Size / 2.0 / half;
        var (distance, offset, pitch, lies) = (radius * scene.Between(2.5, 6), scene.Around(0.2) * half, scene.Around(0.3), random.Next(2) == 0);
        var (cos, sin) = (Math.Cos(pitch), Math.Sin(pitch));
        var unit = 800.0 / (symbol.Size + 8);
        var lamp = scene.Around(0.8);
        var turn = scene.Around(0.4);
        var (ct, st) = (Math.Cos(turn), Math.Sin(turn));
        scene.Paint(
            (px, py) =>
            {
                var (a, b) = ((px - (scene.Width / 2.0)) / unit, (py - (scene.Height / 2.0)) / unit);
                (a, b) = ((a * ct) + (b * st), (b * ct) - (a * st));
                // The ray from the camera, which looks at the front of the bottle, to where it meets the bottle first.
                var (dy, dz) = ((b * cos) + (distance * sin), (b * sin) - (distance * cos));
                var (fromY, fromZ) = (-distance * sin, radius + (distance * cos));
                var (square, linear) = ((a * a) + (dz * dz), fromZ * dz);
                var root = (linear * linear) - (square * ((fromZ * fromZ) - (radius * radius)));
                if (root < 0)
                {
                    return null;
                }

                var t = (-linear - Math.Sqrt(root)) / square;
                return (Math.Atan2(a * t, fromZ + (t * dz)) - offset, fromY + (t * dy));
            },
            (angle, along) =>
            {
                if (Math.Abs(angle + offset) > 1.45 || Math.Abs(along) > 1.2 * symbol.Size)
                {
                    return null;
                }

                var (x, y) = lies ? (along, -angle * radius) : (angle * radius, along);
                return (0.35 + (0.65 * Math.Max(0, Math.Cos(angle + offset - lamp)))) * (symbol.LightAt(x + (symbol.Size / 2.0), y + (symbol.Size / 2.0), 40, 230) ?? 230);
            });
        return (scene, [symbol.Text]);
    }

    /// <summary>Light on dark, seen in a mirror, in dots, with a picture in its middle, and without a quiet zone on a rough ground.</summary>
    private static (Scene, IReadOnlyList<string>) OddPrint(int strength, bool isTag, Random random)
    {
        var scene = new Scene(1200, 1000, random);
        var symbol = OneOf(isTag, random);
        scene.Cover(Texture.Of(random.Next(Texture.Count), scene.Between(2, 7), random));
        var (dot, logo) = (scene.Between(0.36, 0.46), symbol.Size * scene.Between(0.06, 0.09));
        var view = View(scene, scene.Around(60), scene.Around(60), scene.Between(500, 750) / (symbol.Size + 8), scene.Between(0, 6.28), scene.Between(0, 25), 3 * symbol.Size);
        scene.Paint(view, (x, y) =>
        {
            var (u, v) = ((strength == 2 ? -x : x) + (symbol.Size / 2.0), y + (symbol.Size / 2.0));
            var light = symbol.LightAt(u, v, 30, 225);
            return strength switch
            {
                1 => 255 - light,
                3 => light is 30 && !symbol.IsFinder((int)u, (int)v) && Math.Pow(u - (int)u - 0.5, 2) + Math.Pow(v - (int)v - 0.5, 2) > dot * dot ? 225 : light,
                4 => Math.Max(Math.Abs(x), Math.Abs(y)) < logo ? 120 + (90 * Math.Sin(x) * Math.Cos(1.4 * y)) : light,
                5 => u >= 0 && v >= 0 && u < symbol.Size && v < symbol.Size ? light : null,
                _ => light,
            };
        });
        return (scene, [symbol.Text]);
    }

    /// <summary>Cards with codes lying about on a bench, from 4 to 20 in a picture, some large and some small, one in four with something on a corner pattern.</summary>
    private static (Scene, IReadOnlyList<string>) Scattered(int strength, bool isTag, Random random)
    {
        var (columns, rows) = strength switch { 1 => (2, 2), 2 => (3, 2), 3 => (4, 3), 4 => (4, 4), _ => (5, 4) };
        var scene = new Scene(2400, 1800, random);
        if (strength > 2)
        {
            scene.Cover(Texture.Of(random.Next(Texture.Count), scene.Between(2, 7), random));
        }

        var texts = new List<string>();
        var (wide, high) = (scene.Width / columns, scene.Height / rows);
        for (var n = 0; n < columns * rows; n++)
        {
            var symbol = OneOf(isTag, random);
            var side = Math.Min(wide, high) * scene.Between(0.42, 0.66);
            var (x, y) = (((n % columns) + 0.5) * wide, ((n / columns) + 0.5) * high);
            var covered = random.Next(4) == 0 ? random.Next(3) : -1;
            var (left, top) = (covered == 1 ? symbol.Size - 6.5 : -1, covered == 2 ? symbol.Size - 6.5 : -1);
            scene.Paint(
                View(scene, x - (scene.Width / 2.0), y - (scene.Height / 2.0), side / (symbol.Size + 10), scene.Between(0, 6.28), scene.Between(0, 45), 2.6 * symbol.Size),
                (u, v) => covered >= 0 && u + (symbol.Size / 2.0) > left && v + (symbol.Size / 2.0) > top && u + (symbol.Size / 2.0) < left + 7.5 && v + (symbol.Size / 2.0) < top + 7.5
                    ? 150 : symbol.LightAt(u + (symbol.Size / 2.0), v + (symbol.Size / 2.0), 30, 228));
            texts.Add(symbol.Text);
        }

        return (scene, texts);
    }

    internal static void Lay(Scene scene, Symbol symbol, double x, double y, double module, double turn, double tilt, double? tiltedTowards = null) =>
        scene.Paint(
            View(scene, x, y, module, turn, tilt, 2.6 * symbol.Size, tiltedTowards),
            (u, v) => symbol.LightAt(u + (symbol.Size / 2.0), v + (symbol.Size / 2.0), 30, 228));

    /// <summary>From pixels to a tilted plane, whose (0, 0) is seen so far from the picture's middle.</summary>
    /// <param name="scene">The picture.</param>
    /// <param name="x">Pixels from the middle.</param>
    /// <param name="y">Pixels from the middle.</param>
    /// <param name="unit">Pixels a unit of the plane where it is nearest to the camera's axis.</param>
    /// <param name="turn">Radians, of the plane in itself.</param>
    /// <param name="tilt">Degrees from straight on.</param>
    /// <param name="distance">Of the camera, in units.</param>
    /// <param name="towards">Radians: which way it is tilted; null for any.</param>
    internal static Func<double, double, (double X, double Y)?> View(
        Scene scene, double x, double y, double unit, double turn, double tilt, double distance, double? towards = null)
    {
        var (cos, sin) = (Math.Cos(tilt * Math.PI / 180), Math.Sin(tilt * Math.PI / 180));
        var axis = towards ?? scene.Between(0, 6.28);
        var (ca, sa) = (Math.Cos(axis), Math.Sin(axis));
        var (ct, st) = (Math.Cos(turn), Math.Sin(turn));
        return (px, py) =>
        {
            var (u, v) = ((px - (scene.Width / 2.0) - x) / unit, (py - (scene.Height / 2.0) - y) / unit);
            var (a, b) = ((u * ca) + (v * sa), (v * ca) - (u * sa));
            var depth = cos + (b / distance * sin);
            if (depth < 0.02)
            {
                return null;
            }

            var down = b / depth;
            var across = a * (distance - (down * sin)) / distance;
            var (e, f) = ((across * ca) - (down * sa), (across * sa) + (down * ca));
            return ((e * ct) + (f * st), (f * ct) - (e * st));
        };
    }
}
