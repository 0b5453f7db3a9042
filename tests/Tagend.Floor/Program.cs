using System.Globalization;
using SkiaSharp;
using Tagend.Floor;

// Tagend.Floor LIST OUT.pdf PAGES [WORKERS]: draws finished pages and does nothing else, so that any other program
// that draws them with the same library can be measured against it. The pages of the list come again until there are enough.
var (list, output, pages) = (args[0], args[1], int.Parse(args[2], CultureInfo.InvariantCulture));
var workers = args.Length > 3 ? int.Parse(args[3], CultureInfo.InvariantCulture) : 1;
var drawn = FinishedPage.ReadAll(list);
if (workers == 1)
{
    Write(output, 0, pages);
}
else
{
    Parallel.For(0, workers, new ParallelOptions { MaxDegreeOfParallelism = workers }, worker => Write(
        Path.ChangeExtension(output, FormattableString.Invariant($"{worker + 1}.pdf")),
        pages * worker / workers,
        pages * (worker + 1) / workers));
}

void Write(string path, int first, int end)
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
