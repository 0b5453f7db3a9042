using QRCoder;
using SkiaSharp;
using Tagend.Tags;

namespace Tagend.Fuzz;

/// <summary>A code as modules that can be damaged, and its picture.</summary>
/// <remarks>The symbols come from QRCoder, an encoder that shares nothing with the reader.</remarks>
internal sealed class DrawnCode
{
    private readonly bool[,] _dark;

    private DrawnCode(string text, bool[,] dark) => (Text, _dark) = (text, dark);

    public string Text { get; }

    private int Size => _dark.GetLength(0);

    /// <summary>Short foreign codes, which have no check of their own, and a few of our tags.</summary>
    public static IReadOnlyList<DrawnCode> All(Corpus corpus) =>
    [
        Of("A-1", QRCodeGenerator.ECCLevel.L),
        Of("A-2", QRCodeGenerator.ECCLevel.L),
        Of("12345", QRCodeGenerator.ECCLevel.H),
        Of("HTTPS://A.EXAMPLE/1", QRCodeGenerator.ECCLevel.M),
        Of("https://a.example/shop?bow=7", QRCodeGenerator.ECCLevel.Q),
        Of(TagWriter.WriteContents(corpus.Sets[0]), QRCodeGenerator.ECCLevel.M),
        Of(TagWriter.WriteContents(corpus.Sets[1]), QRCodeGenerator.ECCLevel.M),
        Of(TagWriter.Write(corpus.Sets[0].Builds[1].Spec), QRCodeGenerator.ECCLevel.M),
    ];

    /// <summary>With blots, flipped modules, rows that are swapped, or a part of another code.</summary>
    public DrawnCode Damaged(Mutation mutation, DrawnCode other)
    {
        var random = mutation.Random;
        var dark = (bool[,])_dark.Clone();
        for (var marks = random.Next(1, 4); marks > 0; marks--)
        {
            var (x, y) = (random.Next(Size), random.Next(Size));
            var (w, h) = (random.Next(1, 1 + (Size / 2)), random.Next(1, 1 + (Size / 2)));
            var shade = random.Next(5);
            for (var row = y; row < Math.Min(y + h, Size); row++)
            {
                for (var column = x; column < Math.Min(x + w, Size); column++)
                {
                    dark[row, column] = shade switch
                    {
                        0 => true,
                        1 => false,
                        2 => dark[row, column] ^ (random.Next(8) == 0),
                        3 => dark[Size - 1 - row, column],
                        _ => other._dark[row % other.Size, column % other.Size],
                    };
                }
            }
        }

        return new DrawnCode(Text, dark);
    }

    /// <param name="module">In pixels.</param>
    /// <param name="degrees">That it is turned by.</param>
    /// <param name="format">Of the file.</param>
    /// <param name="blur">In modules.</param>
    public byte[] Picture(float module, float degrees, SKEncodedImageFormat format, float blur = 0)
    {
        var side = (int)(Size * module * (degrees == 0 ? 1 : 1.42f));
        using var bitmap = new SKBitmap(side, side, SKColorType.Rgba8888, SKAlphaType.Opaque);
        using var canvas = new SKCanvas(bitmap);
        using var ink = new SKPaint { Color = SKColors.Black, IsAntialias = true };
        using var lens = new SKPaint { ImageFilter = blur > 0 ? SKImageFilter.CreateBlur(blur * module, blur * module) : null };
        canvas.SaveLayer(lens);
        canvas.Clear(SKColors.White);
        canvas.Translate(side / 2f, side / 2f);
        canvas.RotateDegrees(degrees);
        canvas.Scale(module);
        canvas.Translate(-Size / 2f, -Size / 2f);
        for (var row = 0; row < Size; row++)
        {
            for (var column = 0; column < Size; column++)
            {
                if (_dark[row, column])
                {
                    canvas.DrawRect(column, row, 1, 1, ink);
                }
            }
        }

        canvas.Restore();
        using var data = bitmap.Encode(format, 80);
        return data.ToArray();
    }

    private static DrawnCode Of(string text, QRCodeGenerator.ECCLevel level)
    {
        var rows = QRCodeGenerator.GenerateQrCode(text, level).ModuleMatrix;
        var dark = new bool[rows.Count, rows.Count];
        foreach (var (y, row) in rows.Index())
        {
            for (var x = 0; x < row.Count; x++)
            {
                dark[y, x] = row[x];
            }
        }

        return new DrawnCode(text, dark);
    }
}
