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

    /// <summary>The version that a word as it was read means.</summary>
    /// <returns>Null where no word of a version is near enough.</returns>
    public static int? Nearest(int word)
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
