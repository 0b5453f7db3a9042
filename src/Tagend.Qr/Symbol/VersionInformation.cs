namespace Tagend.Qr.Symbol;

/// <summary>Version information of symbols from version 7: ISO/IEC 18004:2015, 7.10.</summary>
internal static class VersionInformation
{
    public const int First = 7;
    public const int Last = 40;
    public const int Bits = 18;

    private const int Generator = 0x1F25;

    /// <summary>Wrong bits that still leave the version certain.</summary>
    private const int Forgiven = 3;

    public static int Word(int version)
    {
        var rest = version << 12;
        for (var bit = 17; bit >= 12; bit--)
        {
            rest ^= (rest >> bit & 1) == 1 ? Generator << (bit - 12) : 0;
        }

        return version << 12 | rest;
    }

    /// <summary>Sizes in modules that one of the two copies tells.</summary>
    public static IEnumerable<int> Read(float[] darkness, int size)
    {
        var (right, below) = (0, 0);
        for (var bit = Bits - 1; bit >= 0; bit--)
        {
            var (a, b) = (size - 11 + (bit % 3), bit / 3);
            right = right << 1 | (darkness[(b * size) + a] > 0 ? 1 : 0);
            below = below << 1 | (darkness[(a * size) + b] > 0 ? 1 : 0);
        }

        int?[] versions = [Nearest(right), Nearest(below)];
        return versions.OfType<int>().Distinct().Select(v => (4 * v) + 17);
    }

    /// <returns>The version; null where no word is near enough.</returns>
    private static int? Nearest(int word)
    {
        for (var version = First; version <= Last; version++)
        {
            if (System.Numerics.BitOperations.PopCount((uint)(word ^ Word(version))) <= Forgiven)
            {
                return version;
            }
        }

        return null;
    }
}
