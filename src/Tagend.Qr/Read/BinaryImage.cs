using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Tagend.Qr.Read;

/// <summary>A picture in black and white, a bit a pixel.</summary>
internal sealed class BinaryImage
{
    private const int WordBits = 64;

    private readonly ulong[] _dark;
    private readonly int _stride;

    private BinaryImage(int width, int height)
    {
        (Width, Height, _stride) = (width, height, (width + WordBits - 1) / WordBits);
        _dark = new ulong[_stride * height];
    }

    public int Width { get; }

    public int Height { get; }

    /// <summary>Dark is what is darker than its surroundings.</summary>
    /// <param name="picture">In gray.</param>
    /// <param name="radius">Of the surroundings, in pixels: more than a module or two, less than a shadow.</param>
    public static BinaryImage Of(GrayPicture picture, int radius)
    {
        var image = new BinaryImage(picture.Width, picture.Height);
        LocalThreshold.Each(picture, radius, (y, thresholds) =>
            Compare(picture.Pixels.AsSpan(y * picture.Width, picture.Width), thresholds, image._dark.AsSpan(y * image._stride, image._stride)));
        return image;
    }

    public bool IsDark(int x, int y) => Holds(x, y) && (_dark[(y * _stride) + (x / WordBits)] >> (x % WordBits) & 1) == 1;

    public bool Holds(int x, int y) => (uint)x < (uint)Width && (uint)y < (uint)Height;

    /// <summary>Where a row turns dark and light again, by turns; an even number of places.</summary>
    public void Edges(int y, List<int> edges)
    {
        edges.Clear();
        var before = 0UL;
        for (var i = 0; i < _stride; i++)
        {
            var word = _dark[(y * _stride) + i];
            for (var turns = word ^ (word << 1 | before); turns != 0; turns &= turns - 1)
            {
                edges.Add((i * WordBits) + System.Numerics.BitOperations.TrailingZeroCount(turns));
            }

            before = word >> (WordBits - 1);
        }

        if (edges.Count % 2 == 1)
        {
            edges.Add(Width);
        }
    }

    private static void Compare(ReadOnlySpan<byte> pixels, ReadOnlySpan<byte> thresholds, Span<ulong> dark)
    {
        var x = 0;
        ref var first = ref MemoryMarshal.GetReference(pixels);
        ref var limit = ref MemoryMarshal.GetReference(thresholds);
        for (; x + WordBits <= pixels.Length; x += WordBits)
        {
            var low = Vector256.LessThan(Vector256.LoadUnsafe(ref first, (nuint)x), Vector256.LoadUnsafe(ref limit, (nuint)x));
            var high = Vector256.LessThan(Vector256.LoadUnsafe(ref first, (nuint)x + 32), Vector256.LoadUnsafe(ref limit, (nuint)x + 32));
            dark[x / WordBits] = low.ExtractMostSignificantBits() | (ulong)high.ExtractMostSignificantBits() << 32;
        }

        for (; x < pixels.Length; x++)
        {
            dark[x / WordBits] |= (pixels[x] < thresholds[x] ? 1UL : 0) << (x % WordBits);
        }
    }
}
