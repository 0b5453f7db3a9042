using System.Numerics;

namespace Tagend.Qr.Read;

/// <summary>Looks for finder patterns by how well the light around each pixel agrees with rings of dark and light: where edges are lost in blur or noise.</summary>
/// <remarks>Correlation makes shadows and contrast no matter; rings around are the same however the pattern is turned.</remarks>
internal static class FinderMatch
{
    /// <summary>Pixels looked at for each of the picture, about, several at once.</summary>
    public const int Looks = 4;

    /// <summary>Of a module, in pixels: an octave, for the next is another level of the pyramid.</summary>
    private static readonly float[] Modules = [1.9f, 2.25f, 2.7f, 3.2f];

    /// <summary>A correlation below this is something else.</summary>
    private const float LeastCorrelation = 0.5f;

    /// <summary>Of patterns within so many modules of one another only the best counts.</summary>
    private const float Apart = 3;

    /// <summary>Where a square's rings are on an average of all directions, in modules from the middle, and how many places of each are looked at.</summary>
    private static readonly (float Radius, int Places, bool IsDark)[] Rings = [(0, 1, true), (1, 8, true), (2.25f, 12, false), (3.3f, 14, true), (4.5f, 16, false)];

    /// <summary>The best first.</summary>
    /// <param name="picture">In gray.</param>
    /// <param name="most">How many.</param>
    public static List<FinderPattern> Find(GrayPicture picture, int most)
    {
        var margin = (int)Math.Ceiling(Modules[^1] * Rings[^1].Radius) + 1;
        var (width, height) = (picture.Width, picture.Height);
        var framed = Framed(picture, margin, out var stride);
        var (best, scale) = (new float[width * height], new byte[width * height]);
        for (var s = 0; s < Modules.Length; s++)
        {
            var (dark, light) = (Steps(Modules[s], stride, isDark: true), Steps(Modules[s], stride, isDark: false));
            for (var y = 0; y < height; y++)
            {
                Correlate(framed.AsSpan(), ((y + margin) * stride) + margin, dark, light, best.AsSpan(y * width, width), scale.AsSpan(y * width, width), (byte)s);
            }
        }

        return Peaks(best, scale, width, most);
    }

    private static float[] Framed(GrayPicture picture, int margin, out int stride)
    {
        // Whole vectors beyond the last pixel are read, and come to nothing.
        stride = picture.Width + (2 * margin) + Vector<float>.Count;
        var framed = new float[stride * (picture.Height + (2 * margin) + 1)];
        for (var y = 0; y < picture.Height + (2 * margin); y++)
        {
            var source = picture.Pixels.AsSpan(Math.Clamp(y - margin, 0, picture.Height - 1) * picture.Width, picture.Width);
            var row = framed.AsSpan(y * stride, stride);
            row[..margin].Fill(source[0]);
            row[(margin + source.Length)..].Fill(source[^1]);
            for (var x = 0; x < source.Length; x++)
            {
                row[margin + x] = source[x];
            }
        }

        return framed;
    }

    private static int[] Steps(float module, int stride, bool isDark) =>
    [
        .. from ring in Rings
           where ring.IsDark == isDark
           from place in Enumerable.Range(0, ring.Places)
           let angle = 2 * MathF.PI * place / ring.Places
           select ((int)MathF.Round(ring.Radius * module * MathF.Sin(angle)) * stride) + (int)MathF.Round(ring.Radius * module * MathF.Cos(angle)),
    ];

    private static void Correlate(ReadOnlySpan<float> framed, int first, int[] dark, int[] light, Span<float> best, Span<byte> scale, byte s)
    {
        float all = dark.Length + light.Length;
        var factor = MathF.Sqrt(dark.Length * light.Length / all);
        for (var x = 0; x < best.Length; x += Vector<float>.Count)
        {
            var (darkSum, lightSum, squares) = (Vector<float>.Zero, Vector<float>.Zero, Vector<float>.Zero);
            foreach (var step in dark)
            {
                var v = new Vector<float>(framed[(first + x + step)..]);
                darkSum += v;
                squares += v * v;
            }

            foreach (var step in light)
            {
                var v = new Vector<float>(framed[(first + x + step)..]);
                lightSum += v;
                squares += v * v;
            }

            var sum = darkSum + lightSum;
            var variance = Vector.Max(squares - (sum * sum * (1 / all)), new Vector<float>(all));
            var correlation = ((lightSum * (1f / light.Length)) - (darkSum * (1f / dark.Length))) * factor / Vector.SquareRoot(variance);
            for (var i = 0; i < Vector<float>.Count && x + i < best.Length; i++)
            {
                if (correlation[i] > best[x + i])
                {
                    (best[x + i], scale[x + i]) = (correlation[i], s);
                }
            }
        }
    }

    private static List<FinderPattern> Peaks(float[] best, byte[] scale, int width, int most)
    {
        var found = new List<FinderPattern>();
        foreach (var i in Enumerable.Range(0, best.Length).Where(i => best[i] > LeastCorrelation && IsPeak(i)).OrderByDescending(i => best[i]))
        {
            var module = Modules[scale[i]];
            var finder = new FinderPattern(new((i % width) + 0.5f, (i / width) + 0.5f), module, 1, best[i]);
            if (!found.Exists(f => f.DistanceTo(finder) < Apart * module))
            {
                found.Add(finder);
                if (found.Count == most)
                {
                    break;
                }
            }
        }

        return found;

        bool IsPeak(int i) => best[i] >= At(i - 1) && best[i] >= At(i + 1) && best[i] >= At(i - width) && best[i] >= At(i + width);

        float At(int i) => (uint)i < (uint)best.Length ? best[i] : 0;
    }
}
