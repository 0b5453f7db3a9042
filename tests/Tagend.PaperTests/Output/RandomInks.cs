using System.Text;
using SkiaSharp;
using Tagend.Catalog;
using Tagend.Logos;
using Tagend.Output;
using Tagend.Qr.Encode;

namespace Tagend.PaperTests.Output;

/// <summary>Pages of inks of every kind at random, the same for the same seed.</summary>
internal sealed class RandomInks(int seed)
{
    private const float Width = 300;
    private const float Height = 400;
    private const string Letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789 ½⅜⚠()\\/.,:;-–éäñß";

    private static readonly Picture[] Pictures = [Vector(), Dots(hasAlpha: false), Dots(hasAlpha: true)];

    private readonly Random _random = new(seed);

    public Page Page() => new(Width, Height, [.. Enumerable.Range(0, 40).Select(_ => Ink())]) { IsLying = _random.Next(4) == 0 };

    private Ink Ink() => _random.Next(7) switch
    {
        0 => new TextInk(Across(), Down(), Text(), new TextStyle(
            (Weight)_random.Next(3), Between(5, 40), Shade(), _random.Next(3) == 0 ? Between(-0.5f, 2) : 0, Color: Color())),
        1 => new LineInk(Across(), Down(), Across(), Down(), Between(0.3f, 4), Shade(), _random.Next(2) == 0 ? Between(1, 5) : 0, Color()),
        2 => new BoxInk(Across(), Down(), Between(12, 100), Between(12, 100), Stroke(), Fill(), _random.Next(2) == 0 ? Between(1, 6) : 0, Shade()),
        3 => new ShapeInk([.. Enumerable.Range(0, _random.Next(3, 7)).Select(_ => (Across(), Down()))], Stroke(), Fill()),
        4 => new OvalInk(Across(), Down(), Between(3, 60), Between(3, 60), Stroke(), Fill()),
        5 => new BarsInk(Across(), Down(), Between(0.5f, 3), [.. Enumerable.Range(0, 30).Select(_ => Bar())]),
        _ => new PictureInk(Across(), Down(), Between(20, 120), Between(20, 120), Pictures[_random.Next(Pictures.Length)]),
    };

    private string Text() => string.Concat(Enumerable.Range(0, _random.Next(1, 25)).Select(_ => Letters[_random.Next(Letters.Length)]));

    private Bar Bar() => new((byte)_random.Next(30), (byte)_random.Next(30), (byte)_random.Next(1, 6), (byte)_random.Next(1, 6));

    /// <summary>Not far from gray: renderers differ in how light they take a color for.</summary>
    private InkColor? Color() => _random.Next(2) == 0 && Shade() is var shade ? new InkColor(Near(shade), shade, Near(shade)) : null;

    private byte Near(byte shade) => (byte)Math.Clamp(shade + _random.Next(-20, 21), 0, 255);

    private float Stroke() => _random.Next(2) == 0 ? Between(0.3f, 5) : 0;

    private byte? Fill() => _random.Next(3) > 0 ? Shade() : null;

    private byte Shade() => (byte)_random.Next(256);

    private float Across() => Between(-20, Width);

    private float Down() => Between(-20, Height);

    private float Between(float least, float most) => least + (_random.NextSingle() * (most - least));

    private static Picture Vector() => SvgReader.Read("logo.svg", Encoding.UTF8.GetBytes(
        """
        <svg xmlns="http://www.w3.org/2000/svg" viewBox="-10 -10 120 80">
          <path fill="#304050" fill-rule="evenodd" d="M0 0h100v60h-100z M20 10q30 40 60 0a20 20 0 0 1 -60 0z"/>
          <g opacity=".5" transform="rotate(10) scale(.9 1.1)"><circle cx="50" cy="30" r="22"/><rect x="40" y="20" width="50" height="30" rx="6" fill="#843"/></g>
          <polyline points="5 50 30 20 60 55 95 5" fill="none" stroke="#364" stroke-opacity=".6" stroke-width="5" stroke-linejoin="round" stroke-linecap="round"/>
        </svg>
        """), [])!;

    private static DotPicture Dots(bool hasAlpha)
    {
        using var bitmap = new SKBitmap(160, 120, SKColorType.Rgba8888, SKAlphaType.Unpremul);
        for (var y = 0; y < bitmap.Height; y++)
        {
            for (var x = 0; x < bitmap.Width; x++)
            {
                bitmap.SetPixel(x, y, new SKColor((byte)(x + (y / 3)), (byte)(x + (y / 2)), (byte)(x + (y / 2)), hasAlpha ? (byte)(x * 8 / 5) : (byte)255));
            }
        }

        using var data = bitmap.Encode(SKEncodedImageFormat.Png, 100);
        return DotPicture.Read("logo.png", data.ToArray());
    }
}
