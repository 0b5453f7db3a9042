using System.Collections.Concurrent;
using ZXing.QrCode.Internal;

namespace Tagend.Qr.Symbol;

/// <summary>Where the parts of a symbol are: ISO/IEC 18004:2015, 5.3 and annex E.</summary>
internal sealed class SymbolLayout
{
    public const int Smallest = 21;
    public const int Largest = 177;

    private static readonly ConcurrentDictionary<int, SymbolLayout> Made = new();

    private readonly bool[] _taken;
    private readonly int[]?[] _masked = new int[8][];
    private readonly ConcurrentDictionary<string, SymbolBlocks> _blocks = new();

    private SymbolLayout(int size)
    {
        Size = size;
        Version = ZXing.QrCode.Internal.Version.getVersionForNumber((size - 17) / 4);
        FunctionPatterns = new sbyte[size * size];
        _taken = new bool[size * size];
        for (var i = 8; i < size - 8; i++)
        {
            Set(i, 6, i % 2 == 0);
            Set(6, i, i % 2 == 0);
        }

        FinderPattern(3, 3);
        FinderPattern(size - 4, 3);
        FinderPattern(3, size - 4);
        AlignmentPatterns = [.. AlignmentCenters()];
        foreach (var (x, y) in AlignmentPatterns)
        {
            Square(x, y, 2, (dx, dy) => Math.Max(Math.Abs(dx), Math.Abs(dy)) != 1);
        }

        Set(8, size - 8, true);
        Reserve();
        DataModules = [.. Path()];
    }

    /// <summary>Modules a side.</summary>
    public int Size { get; }

    public ZXing.QrCode.Internal.Version Version { get; }

    /// <summary>1 where a module is dark in every symbol of this size, -1 where light, 0 where that depends on the text.</summary>
    public sbyte[] FunctionPatterns { get; }

    /// <summary>Middles of the alignment patterns.</summary>
    public IReadOnlyList<(int X, int Y)> AlignmentPatterns { get; }

    /// <summary>Indices of the modules that hold the codewords' bits, in their order.</summary>
    public int[] DataModules { get; }

    public static SymbolLayout Of(int size) => Made.GetOrAdd(size, s => new SymbolLayout(s));

    /// <summary>Indices of the modules with data that a mask inverts.</summary>
    public int[] MaskedBy(int mask) => _masked[mask] ??= Inverted(new FormatInformation(ErrorCorrectionLevel.M, mask));

    /// <summary>The modules of a symbol row by row, 1 where dark, without a mask and its format information.</summary>
    /// <param name="codewords">In their order; bits over are light.</param>
    public byte[] Bare(byte[] codewords)
    {
        var modules = new byte[FunctionPatterns.Length];
        for (var i = 0; i < modules.Length; i++)
        {
            modules[i] = (byte)(FunctionPatterns[i] > 0 ? 1 : 0);
        }

        for (var i = 0; i < codewords.Length * 8; i++)
        {
            modules[DataModules[i]] = (byte)(codewords[i / 8] >> (7 - (i % 8)) & 1);
        }

        var word = Version.VersionNumber < VersionInformation.First ? 0 : VersionInformation.Word(Version.VersionNumber);
        for (var bit = 0; bit < VersionInformation.Bits && word != 0; bit++)
        {
            var (a, b) = (Size - 11 + (bit % 3), bit / 3);
            modules[(a * Size) + b] = modules[(b * Size) + a] = (byte)(word >> bit & 1);
        }

        return modules;
    }

    /// <summary>How codewords are shared among blocks at a level.</summary>
    public SymbolBlocks BlocksOf(ErrorCorrectionLevel level) => _blocks.GetOrAdd(level.Name, _ => SymbolBlocks.Of(Version, level));

    public static bool IsSize(int size) => size is >= Smallest and <= Largest && size % 4 == 1;

    private int[] Inverted(FormatInformation format)
    {
        var (inverted, count) = (new int[DataModules.Length], 0);
        for (int y = 0, place = 0; y < Size; y++)
        {
            for (var x = 0; x < Size; x++, place++)
            {
                if (!_taken[place] && format.Inverts(x, y))
                {
                    inverted[count++] = place;
                }
            }
        }

        return inverted[..count];
    }

    private IEnumerable<(int X, int Y)> AlignmentCenters()
    {
        var centers = Version.AlignmentPatternCenters;
        foreach (var y in centers)
        {
            foreach (var x in centers)
            {
                if (!(x < 8 && y < 8) && !(x < 8 && y > Size - 9) && !(x > Size - 9 && y < 8))
                {
                    yield return (x, y);
                }
            }
        }
    }

    private void FinderPattern(int x, int y) => Square(x, y, 4, (dx, dy) => Math.Max(Math.Abs(dx), Math.Abs(dy)) is not (2 or 4));

    private void Square(int x, int y, int reach, Func<int, int, bool> isDark)
    {
        for (var dy = -reach; dy <= reach; dy++)
        {
            for (var dx = -reach; dx <= reach; dx++)
            {
                if (x + dx >= 0 && y + dy >= 0 && x + dx < Size && y + dy < Size)
                {
                    Set(x + dx, y + dy, isDark(dx, dy));
                }
            }
        }
    }

    private void Set(int x, int y, bool dark)
    {
        FunctionPatterns[(y * Size) + x] = (sbyte)(dark ? 1 : -1);
        _taken[(y * Size) + x] = true;
    }

    /// <summary>The modules of format and version information.</summary>
    private void Reserve()
    {
        for (var i = 0; i < 9; i++)
        {
            _taken[(8 * Size) + i] = _taken[(i * Size) + 8] = true;
        }

        for (var i = Size - 8; i < Size; i++)
        {
            _taken[(8 * Size) + i] = _taken[(i * Size) + 8] = true;
        }

        for (var i = 0; Version.VersionNumber >= 7 && i < 18; i++)
        {
            _taken[(i / 3 * Size) + Size - 11 + (i % 3)] = _taken[((Size - 11 + (i % 3)) * Size) + (i / 3)] = true;
        }
    }

    private IEnumerable<int> Path()
    {
        var up = true;
        for (var right = Size - 1; right > 0; right -= 2)
        {
            right -= right == 6 ? 1 : 0;
            for (var n = 0; n < Size; n++)
            {
                var row = (up ? Size - 1 - n : n) * Size;
                for (var column = right; column > right - 2; column--)
                {
                    if (!_taken[row + column])
                    {
                        yield return row + column;
                    }
                }
            }

            up = !up;
        }
    }
}
