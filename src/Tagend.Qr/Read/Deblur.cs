using System.Numerics;

namespace Tagend.Qr.Read;

/// <summary>Undoes a blur of a whole picture, before anything is known of what it shows, well enough to find patterns by.</summary>
/// <remarks>
/// Van Cittert's iteration against a Gaussian blur: what is missing after blurring the guess again is added to it. It makes
/// contrast of a wave that the blur left a share h of (1 − (1 − h)ⁿ) / h times as large.
/// </remarks>
internal static class Deblur
{
    /// <summary>Pixels looked at for each of the picture, about.</summary>
    public const int Looks = 4;

    private const int Steps = 6;

    /// <param name="picture">That is not sharp.</param>
    /// <param name="sigma">Of the blur, in pixels.</param>
    public static GrayPicture Of(GrayPicture picture, float sigma)
    {
        var kernel = Kernel(sigma);
        float[] seen = [.. picture.Pixels.Select(p => (float)p)];
        var (sharp, blurred) = ((float[])seen.Clone(), new float[seen.Length]);
        for (var step = 0; step < Steps; step++)
        {
            Blur(sharp, blurred, picture.Width, kernel);
            var i = 0;
            for (; i + Vector<float>.Count <= sharp.Length; i += Vector<float>.Count)
            {
                (new Vector<float>(sharp, i) + new Vector<float>(seen, i) - new Vector<float>(blurred, i)).CopyTo(sharp, i);
            }

            for (; i < sharp.Length; i++)
            {
                sharp[i] += seen[i] - blurred[i];
            }
        }

        return new GrayPicture([.. sharp.Select(v => (byte)Math.Clamp(v + 0.5f, 0, 255))], picture.Width, picture.Height);
    }

    /// <summary>Its middle and one side.</summary>
    private static float[] Kernel(float sigma)
    {
        var kernel = Enumerable.Range(0, (int)Math.Ceiling(2.5f * sigma) + 1).Select(d => MathF.Exp(-d * d / (2 * sigma * sigma))).ToArray();
        var sum = (2 * kernel.Sum()) - kernel[0];
        return [.. kernel.Select(k => k / sum)];
    }

    /// <summary>Across, then down; the edge goes on beyond the picture.</summary>
    private static void Blur(float[] from, float[] to, int width, float[] kernel)
    {
        var (reach, height) = (kernel.Length - 1, from.Length / width);
        var across = new float[from.Length];
        var row = new float[width + (2 * reach)];
        for (var y = 0; y < height; y++)
        {
            var source = from.AsSpan(y * width, width);
            source.CopyTo(row.AsSpan(reach));
            row.AsSpan(0, reach).Fill(source[0]);
            row.AsSpan(reach + width).Fill(source[^1]);
            Sum(across.AsSpan(y * width, width), d => row.AsSpan(reach + d, width), kernel);
        }

        for (var y = 0; y < height; y++)
        {
            Sum(to.AsSpan(y * width, width), d => across.AsSpan(Math.Clamp(y + d, 0, height - 1) * width, width), kernel);
        }
    }

    private delegate ReadOnlySpan<float> Shifted(int by);

    private static void Sum(Span<float> sum, Shifted line, float[] kernel)
    {
        sum.Clear();
        for (var d = 1 - kernel.Length; d < kernel.Length; d++)
        {
            var source = line(d);
            var weight = kernel[Math.Abs(d)];
            var i = 0;
            for (; i + Vector<float>.Count <= sum.Length; i += Vector<float>.Count)
            {
                (new Vector<float>(sum[i..]) + (new Vector<float>(source[i..]) * weight)).CopyTo(sum[i..]);
            }

            for (; i < sum.Length; i++)
            {
                sum[i] += source[i] * weight;
            }
        }
    }
}
