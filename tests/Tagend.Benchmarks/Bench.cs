using System.Text;
using SkiaSharp;
using Tagend.Catalog;
using Tagend.Orders;
using Tagend.Output;
using Tagend.Pages.Card;
using Tagend.Specs;
using Tagend.Tags;

namespace Tagend.Benchmarks;

/// <summary>The steps from orders to pages and from pictures to texts, one at a time, as the program takes them.</summary>
internal sealed class Bench(string templates)
{
    private static readonly DateOnly Date = new(2026, 3, 14);

    public ShopCatalog Catalog { get; } =
        CatalogReader.Read(templates, []) ?? throw new InvalidOperationException($"{templates} has mistakes: tagend check says which");

    public Fonts Fonts { get; } = Fonts.Of(templates);

    public IReadOnlyList<BuildSet> Sets(byte[] csv)
    {
        var orders = OrderReader.Read("season.csv", csv, Catalog.Shop.Unit, Catalog.Shop.Columns);
        var report = SetBuilder.Build(orders, new SpecBuilder(Catalog, Catalog.Shop.Unit, Date));
        return report.Withheld.Count == 0
            ? report.MakeSets()
            : throw new InvalidOperationException($"the invented orders have problems: {report.Problems[0]}");
    }

    /// <summary>Both sides of a card.</summary>
    public IReadOnlyList<Page> Card(Build build) => JigCard.Compose(build, Catalog, TagWriter.Write(build.Spec), Paper.HalfLetter, Fonts).Pages;

    /// <summary>The sides of the cards of a season's first pieces.</summary>
    public IReadOnlyList<Page> Cards(int pieces) =>
        [.. Sets(Encoding.UTF8.GetBytes(Season.Csv(pieces))).SelectMany(s => s.Builds).SelectMany(Card)];

    /// <summary>A photograph in gray of a tag on a bench, somewhat turned, its modules as large as the picture allows.</summary>
    public static void Photograph(string tagText, int width, int height, string path)
    {
        var symbol = Qr.Encode.QrSymbol.Of(tagText) ?? throw new InvalidOperationException("the tag text is too long");
        using var bitmap = new SKBitmap(width, height, SKColorType.Gray8, SKAlphaType.Opaque);
        using var canvas = new SKCanvas(bitmap);
        using var paint = new SKPaint { IsAntialias = true };
        canvas.Clear(new SKColor(150, 150, 150));
        canvas.Translate(width / 2f, height / 2f);
        canvas.RotateDegrees(8);
        var side = symbol.Modules + (2 * Qr.Encode.QrSymbol.QuietModules);
        canvas.Scale(height / 3f / side);
        paint.Color = new SKColor(235, 235, 235);
        canvas.DrawRect(SKRect.Create(-side / 2f, -side / 2f, side, side), paint);
        canvas.Translate(-symbol.Modules / 2f, -symbol.Modules / 2f);
        paint.Color = new SKColor(30, 30, 30);
        for (var row = 0; row < symbol.Modules; row++)
        {
            for (var column = 0; column < symbol.Modules; column++)
            {
                if (symbol.IsDark(column, row))
                {
                    canvas.DrawRect(SKRect.Create(column, row, 1.02f, 1.02f), paint);
                }
            }
        }

        using var file = File.Create(path);
        bitmap.Encode(file, SKEncodedImageFormat.Jpeg, 85);
    }
}
