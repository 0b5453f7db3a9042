using System.Runtime.InteropServices;
using QRCoder;
using SkiaSharp;

namespace Tagend.Tests.Qr;

/// <summary>Pictures of codes made for a test: drawn symbols, as a camera might have caught them.</summary>
/// <remarks>The symbols come from QRCoder, an encoder that shares nothing with the reader under test.</remarks>
internal sealed class Photo : IDisposable
{
    private readonly SKBitmap _bitmap;

    public Photo(int width, int height, byte background = 190)
        : this(width, height, SKAlphaType.Opaque) => _bitmap.Erase(new SKColor(background, background, background));

    private Photo(int width, int height, SKAlphaType alpha) =>
        _bitmap = new SKBitmap(width, height, SKColorType.Rgba8888, alpha);

    /// <summary>Draws a symbol with its quiet zone, <paramref name="module"/> pixels a module, its middle at a place.</summary>
    public Photo Code(
        string text, float x, float y, float module, float degrees = 0, byte dark = 20, byte light = 235, SKMatrix? tilt = null)
    {
        using var canvas = new SKCanvas(_bitmap);
        var rows = QRCodeGenerator.GenerateQrCode(text, QRCodeGenerator.ECCLevel.M).ModuleMatrix;
        canvas.Translate(x, y);
        canvas.RotateDegrees(degrees);
        if (tilt is { } matrix)
        {
            canvas.Concat(in matrix);
        }

        canvas.Scale(module);
        canvas.Translate(-rows.Count / 2f, -rows.Count / 2f);
        using var paint = new SKPaint { Color = new SKColor(light, light, light), IsAntialias = true };
        canvas.DrawRect(0, 0, rows.Count, rows.Count, paint);
        paint.Color = new SKColor(dark, dark, dark);
        using var modules = new SKPathBuilder();
        for (var row = 0; row < rows.Count; row++)
        {
            for (var column = 0; column < rows.Count; column++)
            {
                if (rows[row][column])
                {
                    modules.AddRect(SKRect.Create(column, row, 1, 1));
                }
            }
        }

        using var path = modules.Detach();
        canvas.DrawPath(path, paint);
        return this;
    }

    /// <summary>Adds noise of up to ± <paramref name="strength"/> gray levels to every pixel.</summary>
    public Photo Noise(int strength, int seed = 1)
    {
        var random = new Random(seed);
        var pixels = _bitmap.GetPixelSpan().ToArray();
        for (var i = 0; i < pixels.Length; i += 4)
        {
            var noise = random.Next(-strength, strength + 1);
            for (var channel = 0; channel < 3; channel++)
            {
                pixels[i + channel] = (byte)Math.Clamp(pixels[i + channel] + noise, 0, 255);
            }
        }

        Marshal.Copy(pixels, 0, _bitmap.GetPixels(), pixels.Length);
        return this;
    }

    /// <summary>Blurs as a lens out of focus does.</summary>
    public Photo Blur(float sigma)
    {
        using var copy = _bitmap.Copy();
        using var canvas = new SKCanvas(_bitmap);
        using var filter = SKImageFilter.CreateBlur(sigma, sigma);
        using var paint = new SKPaint { ImageFilter = filter };
        canvas.DrawBitmap(copy, 0, 0, SKSamplingOptions.Default, paint);
        return this;
    }

    /// <summary>A shadow that darkens towards the right edge, down to a share of the light.</summary>
    public Photo Shadow(float share)
    {
        using var canvas = new SKCanvas(_bitmap);
        var dark = (byte)(255 * share);
        using var shader = SKShader.CreateLinearGradient(
            new SKPoint(0, 0), new SKPoint(_bitmap.Width, 0), [SKColors.White, new SKColor(dark, dark, dark)], SKShaderTileMode.Clamp);
        using var paint = new SKPaint { BlendMode = SKBlendMode.Modulate, Shader = shader };
        canvas.DrawPaint(paint);
        return this;
    }

    /// <summary>White becomes transparent black, as in a picture cut out by a drawing program.</summary>
    public Photo WithWhiteCleared()
    {
        var cleared = new Photo(_bitmap.Width, _bitmap.Height, SKAlphaType.Unpremul);
        var pixels = _bitmap.GetPixelSpan().ToArray();
        for (var i = 0; i < pixels.Length; i += 4)
        {
            if (pixels[i] == 255)
            {
                pixels.AsSpan(i, 4).Clear();
            }
        }

        Marshal.Copy(pixels, 0, cleared._bitmap.GetPixels(), pixels.Length);
        return cleared;
    }

    /// <summary>The pixels as a camera stores them that gives this Exif orientation, so that undoing it shows this picture.</summary>
    /// <param name="orientation">1 to 8; where the stored row 0 and column 0 are in the scene: CIPA DC-008, table 6.</param>
    public Photo AsStoredFor(int orientation)
    {
        var (w, h) = (_bitmap.Width, _bitmap.Height);
        var swapped = orientation >= 5;
        var stored = new Photo(swapped ? h : w, swapped ? w : h);
        for (var y = 0; y < stored._bitmap.Height; y++)
        {
            for (var x = 0; x < stored._bitmap.Width; x++)
            {
                var (sceneX, sceneY) = orientation switch
                {
                    1 => (x, y),
                    2 => (w - 1 - x, y),
                    3 => (w - 1 - x, h - 1 - y),
                    4 => (x, h - 1 - y),
                    5 => (y, x),
                    6 => (w - 1 - y, x),
                    7 => (w - 1 - y, h - 1 - x),
                    8 => (y, h - 1 - x),
                    _ => throw new ArgumentOutOfRangeException(nameof(orientation)),
                };
                stored._bitmap.SetPixel(x, y, _bitmap.GetPixel(sceneX, sceneY));
            }
        }

        return stored;
    }

    /// <summary>The file's bytes.</summary>
    public byte[] Encode(SKEncodedImageFormat format = SKEncodedImageFormat.Png, int quality = 90)
    {
        using var data = _bitmap.Encode(format, quality);
        return data.ToArray();
    }

    public void Dispose() => _bitmap.Dispose();
}
