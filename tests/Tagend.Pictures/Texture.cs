namespace Tagend.Pictures;

/// <summary>Rough grounds: light from 0 to 255 at each pixel, of noise that is the same for the same seed.</summary>
public static class Texture
{
    private delegate double Ground(double x, double y);

    private static readonly Func<uint, double, Ground>[] Grounds = [Wood, Cloth, Carpet, Roughcast, Gravel];

    public static int Count => Grounds.Length;

    /// <param name="ground">0 to <see cref="Count"/> - 1.</param>
    /// <param name="grain">About the size of its grain, in pixels.</param>
    /// <param name="random">Gives the seed.</param>
    public static Func<double, double, double> Of(int ground, double grain, Random random)
    {
        var seed = (uint)random.Next();
        var light = Grounds[ground](seed, grain);
        return (x, y) => light(x, y);
    }

    private static Ground Wood(uint seed, double grain) => (x, y) =>
    {
        var rings = (x / (9 * grain)) + (2.2 * Noise(seed, x / (22 * grain), y / (160 * grain)));
        var fibers = Noise(seed + 1, x / (0.6 * grain), y / (14 * grain));
        return 120 + (60 * Math.Sin(rings * 2 * Math.PI) * 0.6) + (75 * (fibers - 0.5));
    };

    private static Ground Cloth(uint seed, double grain) => (x, y) =>
    {
        var (column, row) = (Math.Floor(x / grain), Math.Floor(y / grain));
        var over = ((int)column + (int)row) % 2 == 0;
        var across = over ? (x / grain) - column : (y / grain) - row;
        var thread = Noise(seed, column * 3.7, row * 1.9);
        return 45 + (130 * Math.Sin(across * Math.PI)) + (60 * (thread - 0.5)) + (20 * Noise(seed + 2, x, y));
    };

    private static Ground Carpet(uint seed, double grain) => (x, y) =>
        40 + (330 * Math.Abs(Noise(seed, x / grain, y / grain) - 0.5)) + (110 * (Noise(seed + 3, x / (3 * grain), y / (3 * grain)) - 0.4));

    private static Ground Roughcast(uint seed, double grain)
    {
        double Height(double x, double y) =>
            Noise(seed, x / (2.5 * grain), y / (2.5 * grain)) + (0.5 * Noise(seed + 4, x / (1.2 * grain), y / (1.2 * grain)));
        return (x, y) => 140 + (420 / 1.4 * (Height(x + 1, y + 1) - Height(x - 1, y - 1)) * grain / 2);
    }

    private static Ground Gravel(uint seed, double grain) => (x, y) =>
    {
        var n = Noise(seed, x / (2 * grain), y / (2 * grain));
        return (n > 0.55 ? 210 : n > 0.45 ? 120 : 35) + (50 * (Noise(seed + 5, x / (0.7 * grain), y / (0.7 * grain)) - 0.5));
    };

    /// <summary>Smooth between random values at whole places: 0 to 1.</summary>
    private static double Noise(uint seed, double x, double y)
    {
        var (column, row) = (Math.Floor(x), Math.Floor(y));
        var (fx, fy) = (Smooth(x - column), Smooth(y - row));
        var (i, j) = ((int)column, (int)row);
        var upper = Value(seed, i, j) + ((Value(seed, i + 1, j) - Value(seed, i, j)) * fx);
        var lower = Value(seed, i, j + 1) + ((Value(seed, i + 1, j + 1) - Value(seed, i, j + 1)) * fx);
        return upper + ((lower - upper) * fy);
    }

    private static double Smooth(double t) => t * t * (3 - (2 * t));

    private static double Value(uint seed, int x, int y)
    {
        unchecked
        {
            var h = seed ^ ((uint)x * 0x9E3779B1) ^ ((uint)y * 0x85EBCA77);
            h = (h ^ (h >> 15)) * 0x2C1B3C6D;
            h = (h ^ (h >> 12)) * 0x297A2D39;
            return (h ^ (h >> 15)) / (double)uint.MaxValue;
        }
    }
}
