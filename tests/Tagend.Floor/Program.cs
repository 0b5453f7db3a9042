using System.Globalization;
using SkiaSharp;
using Tagend.Floor;
using Tagend.Output;

// Tagend.Floor LIST OUT.pdf PAGES [WORKERS [FONTS]]: draws finished pages and does nothing else, so that any other program
// that draws them with the same library can be measured against it. The pages of the list come again until there are enough.
// With FONTS, the folder of the type family, they are written by Tagend's own writer instead: the second floor.
var (list, output, pages) = (args[0], args[1], int.Parse(args[2], CultureInfo.InvariantCulture));
var workers = args.Length > 3 ? int.Parse(args[3], CultureInfo.InvariantCulture) : 1;
var fonts = args.Length > 4 ? args[4] : null;
Action<string, int, int> write = fonts is null ? Drawn() : Written(fonts);
if (workers == 1)
{
    write(output, 0, pages);
}
else
{
    Parallel.For(0, workers, new ParallelOptions { MaxDegreeOfParallelism = workers }, worker => write(
        Path.ChangeExtension(output, FormattableString.Invariant($"{worker + 1}.pdf")),
        pages * worker / workers,
        pages * (worker + 1) / workers));
}

Action<string, int, int> Written(string folder)
{
    var (family, inked) = (Fonts.Load(folder), InkList.ReadAll(list));
    return (path, first, end) =>
    {
        using var file = File.Create(path);
        PdfFile.Write(Enumerable.Range(first, end - first).Select(n => inked[n % inked.Count]), family, new PdfNote("Cards", new DateOnly(2026, 3, 14)), file);
    };
}

Action<string, int, int> Drawn()
{
    var drawn = FinishedPage.ReadAll(list);
    return (path, first, end) => Draw(drawn, path, first, end);
}

void Draw(List<FinishedPage> drawn, string path, int first, int end)
{
    using var faces = new Faces(Path.GetDirectoryName(Path.GetFullPath(list))!);
    using var file = new SKFileWStream(path);
    using var document = SKDocument.CreatePdf(file, new SKDocumentPdfMetadata { RasterDpi = 7200, EncodingQuality = 101 });
    using var paint = new SKPaint { IsAntialias = true };
    for (var number = first; number < end; number++)
    {
        var page = drawn[number % drawn.Count];
        page.Draw(document.BeginPage(page.Width, page.Height), paint, faces);
        document.EndPage();
    }

    document.Close();
}
