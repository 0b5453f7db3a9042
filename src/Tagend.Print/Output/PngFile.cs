using System.Buffers.Binary;
using System.IO.Compression;
using System.IO.Hashing;
using SkiaSharp;
using Tagend.Problems;

namespace Tagend.Output;

/// <summary>How a picture's dots are held.</summary>
public enum DotDepth
{
    /// <summary>256 shades, smooth edges: previews.</summary>
    Gray,

    /// <summary>Black or white, hard edges: label printers.</summary>
    BlackOrWhite,
}

/// <summary>Writes a page as a PNG that knows its resolution.</summary>
/// <remarks>PNG (ISO/IEC 15948). Skia's own encoder writes neither pHYs nor one bit a dot.</remarks>
public static class PngFile
{
    private const double MetersPerInch = 0.0254;

    /// <summary>A dot takes a byte of memory while a picture is drawn.</summary>
    private const long MostDots = 250_000_000;

    private static readonly byte[] Signature = [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A];

    /// <param name="dotsPerInch">Of the picture; the page's size is rounded to whole dots.</param>
    /// <exception cref="TagendException">It would have too many dots.</exception>
    public static void Write(Page page, Fonts fonts, float dotsPerInch, DotDepth depth, Stream output)
    {
        using var dots = Raster(page, fonts, dotsPerInch, depth);
        output.Write(Signature);
        WriteHeader(output, dots.Width, dots.Height, depth);
        WriteResolution(output, dotsPerInch);
        WriteChunk(output, "IDAT"u8, Squeeze(dots, depth));
        WriteChunk(output, "IEND"u8, []);
    }

    private static SKBitmap Raster(Page page, Fonts fonts, float dotsPerInch, DotDepth depth)
    {
        var scale = dotsPerInch / Points.PerInch;
        var info = new SKImageInfo(
            (int)MathF.Round(page.Width * scale), (int)MathF.Round(page.Height * scale), SKColorType.Gray8, SKAlphaType.Opaque);
        if ((long)info.Width * info.Height > MostDots)
        {
            throw new TagendException(
                $"a picture of {info.Width} × {info.Height} dots is larger than programs can show: choose fewer dots an inch, or leave the pictures out");
        }

        var bitmap = new SKBitmap(info);
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(SKColors.White);
        canvas.Scale(scale);
        canvas.Concat(page.Setting);
        using var typefaces = new Typefaces(fonts, smooth: depth == DotDepth.Gray);
        using var pen = new Pen(canvas, typefaces, smooth: depth == DotDepth.Gray);
        pen.Draw(page.Inks);
        canvas.Flush();
        return bitmap;
    }

    private static void WriteHeader(Stream output, int width, int height, DotDepth depth)
    {
        Span<byte> header = stackalloc byte[13];
        BinaryPrimitives.WriteInt32BigEndian(header, width);
        BinaryPrimitives.WriteInt32BigEndian(header[4..], height);
        header[8] = (byte)(depth == DotDepth.Gray ? 8 : 1);
        WriteChunk(output, "IHDR"u8, header);
    }

    private static void WriteResolution(Stream output, float dotsPerInch)
    {
        const byte PerMeter = 1;
        var dotsPerMeter = (int)Math.Round(dotsPerInch / MetersPerInch);
        Span<byte> resolution = stackalloc byte[9];
        BinaryPrimitives.WriteInt32BigEndian(resolution, dotsPerMeter);
        BinaryPrimitives.WriteInt32BigEndian(resolution[4..], dotsPerMeter);
        resolution[8] = PerMeter;
        WriteChunk(output, "pHYs"u8, resolution);
    }

    private static ReadOnlySpan<byte> Squeeze(SKBitmap dots, DotDepth depth)
    {
        const byte Unfiltered = 0;
        using var squeezed = new MemoryStream();
        using (var zlib = new ZLibStream(squeezed, CompressionLevel.Optimal))
        {
            var pixels = dots.GetPixelSpan();
            for (var row = 0; row < dots.Height; row++)
            {
                var shades = pixels.Slice(row * dots.RowBytes, dots.Width);
                zlib.WriteByte(Unfiltered);
                zlib.Write(depth == DotDepth.Gray ? shades : Pack(shades));
            }
        }

        return squeezed.ToArray();
    }

    /// <summary>Eight dots a byte, the first in the highest bit; 1 is white.</summary>
    private static ReadOnlySpan<byte> Pack(ReadOnlySpan<byte> shades)
    {
        var packed = new byte[(shades.Length + 7) / 8];
        for (var i = 0; i < shades.Length; i++)
        {
            if (shades[i] >= 128)
            {
                packed[i / 8] |= (byte)(0x80 >> (i % 8));
            }
        }

        return packed;
    }

    private static void WriteChunk(Stream output, ReadOnlySpan<byte> type, ReadOnlySpan<byte> content)
    {
        Span<byte> number = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(number, content.Length);
        output.Write(number);
        output.Write(type);
        output.Write(content);
        var crc = new Crc32();
        crc.Append(type);
        crc.Append(content);
        BinaryPrimitives.WriteUInt32BigEndian(number, crc.GetCurrentHashAsUInt32());
        output.Write(number);
    }
}
