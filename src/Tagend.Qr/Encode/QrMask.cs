using System.Numerics;
using Tagend.Qr.Symbol;
using ZXing.QrCode.Internal;

namespace Tagend.Qr.Encode;

/// <summary>Which mask a symbol should have: ISO/IEC 18004:2015, 7.8.3.</summary>
/// <remarks>63 lines side by side are scored at once, a bit each.</remarks>
internal static class QrMask
{
    private const int Masks = 8;

    // Table 11 of the standard.
    private const int RunPoints = 3;
    private const int BlockPoints = 3;
    private const int FinderPoints = 40;
    private const int BalancePoints = 10;

    /// <summary>Modules of 1:1:3:1:1, as a finder pattern has it.</summary>
    private const int FinderLength = 7;

    /// <summary>Light modules that make it one, before or after.</summary>
    private const int Beside = 4;

    /// <summary>Lines that are scored at once; one bit more sees the next line.</summary>
    private const int Together = 63;

    /// <summary>The mask with the fewest points against it, the first of several, and the modules it gives.</summary>
    /// <param name="bare">Of a symbol without a mask: <see cref="SymbolLayout.Bare"/>.</param>
    /// <returns>Modules row by row; 1 is dark.</returns>
    public static (int Mask, byte[] Modules) BestFor(byte[] bare, SymbolLayout layout, ErrorCorrectionLevel level)
    {
        var best = (Mask: 0, Modules: bare);
        var fewest = int.MaxValue;
        for (var mask = 0; mask < Masks; mask++)
        {
            var masked = Masked(bare, layout, new FormatInformation(level, mask));
            if (PointsOf(masked, layout.Size) is var points && points < fewest)
            {
                (best, fewest) = ((mask, masked), points);
            }
        }

        return best;
    }

    private static byte[] Masked(byte[] bare, SymbolLayout layout, FormatInformation format)
    {
        var modules = (byte[])bare.Clone();
        foreach (var place in layout.MaskedBy(format.Mask))
        {
            modules[place] ^= 1;
        }

        foreach (var (place, isDark) in format.Modules(layout.Size))
        {
            modules[place] = (byte)(isDark ? 1 : 0);
        }

        return modules;
    }

    private static int PointsOf(byte[] modules, int size)
    {
        var dark = modules.AsSpan().Count((byte)1);
        var points = Math.Abs((2 * dark) - modules.Length) * 10 / modules.Length * BalancePoints;
        for (var first = 0; first < size; first += Together)
        {
            var down = Lines(modules, size, first, step: size, aside: 1);
            points += PointsOfRuns(down) + PointsOfFinders(down) + PointsOfBlocks(down, Math.Min(Together, size - 1 - first));
            var right = Lines(modules, size, first, step: 1, aside: size);
            points += PointsOfRuns(right) + PointsOfFinders(right);
        }

        return points;
    }

    /// <summary>At each step along some neighboring lines, their modules: a bit a line.</summary>
    /// <param name="first">Of the lines, from 0.</param>
    /// <param name="step">From a module to the next of its line.</param>
    /// <param name="aside">From a module to that of the next line.</param>
    private static Strip Lines(byte[] modules, int size, int first, int step, int aside)
    {
        var steps = new ulong[size];
        for (var i = 0; i < size; i++)
        {
            for (var line = Math.Min(Together, size - 1 - first); line >= 0; line--)
            {
                steps[i] = (steps[i] << 1) | modules[(i * step) + ((first + line) * aside)];
            }
        }

        return new Strip(steps, (1UL << Math.Min(Together, size - first)) - 1);
    }

    private static int PointsOfRuns(Strip strip)
    {
        // Where the module here and the ones before it are alike: two, three, four, five, more.
        var (points, two, three, four, five) = (0, 0UL, 0UL, 0UL, 0UL);
        for (var i = 1; i < strip.Steps.Length; i++)
        {
            var alike = ~(strip.Steps[i] ^ strip.Steps[i - 1]) & strip.Counted;
            var more = alike & five;
            (two, three, four, five) = (alike, alike & two, alike & three, alike & four);
            points += (RunPoints * BitOperations.PopCount(five & ~more)) + BitOperations.PopCount(more);
        }

        return points;
    }

    /// <summary>Of what looks like a finder pattern with light before or after it within the symbol.</summary>
    private static int PointsOfFinders(Strip strip)
    {
        var (points, s) = (0, strip.Steps);
        for (var i = 0; i <= s.Length - FinderLength; i++)
        {
            var pattern = s[i] & ~s[i + 1] & s[i + 2] & s[i + 3] & s[i + 4] & ~s[i + 5] & s[i + 6];
            var before = i < Beside ? 0 : ~(s[i - 1] | s[i - 2] | s[i - 3] | s[i - 4]);
            var after = i > s.Length - FinderLength - Beside ? 0 : ~(s[i + 7] | s[i + 8] | s[i + 9] | s[i + 10]);
            points += FinderPoints * BitOperations.PopCount(pattern & (before | after) & strip.Counted);
        }

        return points;
    }

    /// <summary>Of two by two modules alike.</summary>
    /// <param name="pairs">Lines that have a next one.</param>
    private static int PointsOfBlocks(Strip strip, int pairs)
    {
        var (points, counted) = (0, (1UL << pairs) - 1);
        for (var i = 1; i < strip.Steps.Length; i++)
        {
            var alike = ~(strip.Steps[i] ^ strip.Steps[i - 1]);
            var beside = ~(strip.Steps[i] ^ (strip.Steps[i] >> 1));
            points += BlockPoints * BitOperations.PopCount(alike & (alike >> 1) & beside & counted);
        }

        return points;
    }

    /// <param name="Steps">One after the other, a bit a line.</param>
    /// <param name="Counted">The lines that count here; the next one is only looked at.</param>
    private readonly record struct Strip(ulong[] Steps, ulong Counted);
}
