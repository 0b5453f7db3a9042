using Tagend.Scan;
using ZXing.QrCode.Internal;

namespace Tagend.Blocks;

/// <summary>Which mask a symbol should have: ISO/IEC 18004:2015, 7.8.3.</summary>
/// <remarks>The encoder chooses the same one in five times the time.</remarks>
internal static class QrMask
{
    private const int Masks = 8;

    // Table 11 of the standard.
    private const int RunPoints = 3;
    private const int BlockPoints = 3;
    private const int FinderPoints = 40;
    private const int BalancePoints = 10;
    private const int ShortestRun = 5;

    /// <summary>1:1:3:1:1, as a finder pattern has it.</summary>
    private const int FinderLike = 0b1011101;

    /// <summary>Light modules that make it one, before or after.</summary>
    private const int Beside = 4;

    /// <summary>The mask with the fewest points against it; the first of several.</summary>
    /// <param name="code">With any mask.</param>
    public static int BestFor(QRCode code)
    {
        var layout = SymbolLayout.Of(code.Matrix.Width);
        var bare = new byte[layout.Size * layout.Size];
        for (var i = 0; i < bare.Length; i++)
        {
            bare[i] = (byte)code.Matrix[i % layout.Size, i / layout.Size];
        }

        Turn(bare, layout, code.MaskPattern);
        return Enumerable.Range(0, Masks).MinBy(mask =>
        {
            var masked = (byte[])bare.Clone();
            Turn(masked, layout, mask);
            foreach (var (place, isDark) in new FormatMark(code.ECLevel, mask).Modules(layout.Size))
            {
                masked[place] = (byte)(isDark ? 1 : 0);
            }

            return PointsOf(masked, layout.Size);
        });
    }

    private static void Turn(byte[] modules, SymbolLayout layout, int mask)
    {
        foreach (var place in layout.MaskedBy(mask))
        {
            modules[place] ^= 1;
        }
    }

    private static int PointsOf(byte[] modules, int size)
    {
        var (points, dark) = (0, 0);
        for (var i = 0; i < size; i++)
        {
            points += PointsOfLine(modules, i * size, 1, size) + PointsOfLine(modules, i, size, size);
        }

        for (var i = 0; i < modules.Length; i++)
        {
            dark += modules[i];
        }

        return points
            + PointsOfBlocks(modules, size)
            + (Math.Abs((2 * dark) - modules.Length) * 10 / modules.Length * BalancePoints);
    }

    /// <summary>Of runs, and of what looks like a finder pattern with light before or after it within the symbol.</summary>
    private static int PointsOfLine(byte[] modules, int first, int step, int size)
    {
        var (points, run, last, window) = (0, 0, -1, 0);
        for (var i = 0; i < size + Beside; i++)
        {
            var isInside = i < size;
            int module = isInside ? modules[first + (i * step)] : 0;
            window = ((window << 1) | module) & 0x7FFF;
            if ((window >> Beside & 0x7F) == FinderLike
                && ((window >> (Beside + 7) == 0 && i >= (2 * Beside) + 6) || ((window & 0xF) == 0 && isInside)))
            {
                points += FinderPoints;
            }

            run = module == last ? run + 1 : 1;
            last = module;
            points += !isInside || run < ShortestRun ? 0 : run == ShortestRun ? RunPoints : 1;
        }

        return points;
    }

    private static int PointsOfBlocks(byte[] modules, int size)
    {
        var points = 0;
        for (var row = 0; row < modules.Length - size; row += size)
        {
            for (var i = row; i < row + size - 1; i++)
            {
                points += modules[i] + modules[i + 1] + modules[i + size] + modules[i + size + 1] is 0 or 4 ? BlockPoints : 0;
            }
        }

        return points;
    }
}
