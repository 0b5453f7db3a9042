using System.Runtime.CompilerServices;
using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Output;

namespace Tagend.PaperTests;

/// <summary>Files in a folder of their own, for outside tools to look at.</summary>
internal sealed class Sample : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("tagend-paper-").FullName;

    public static string Templates => Path.Combine(Root(), "templates");

    public static Fonts Fonts { get; } = Fonts.Of(Templates);

    /// <summary>Of English papers.</summary>
    public static PaperLanguage Words { get; } = PaperLanguageReader.Read(Templates, "en", [])!;

    public static DateOnly Date { get; } = new(2026, 3, 2);

    /// <summary>A page with a block at a place given in points.</summary>
    public static Page PageOf(Paper paper, Block block, float x = 36, float y = 36)
    {
        var (width, height) = (Points.Of(paper.Width), Points.Of(paper.Height));
        var placement = block.Place(Fonts, new Room(width - (2 * x), height - (2 * y)));
        return placement is Placed placed
            ? new Page(width, height, [.. placed.InksAt(x, y)])
            : throw new InvalidOperationException(string.Join("; ", ((Misfit)placement).Reasons));
    }

    public string Pdf(params IReadOnlyList<Page> pages)
    {
        var path = Place("sample.pdf");
        AtomicFiles.Write([new NewFile(path, s => PdfFile.Write(pages, Fonts, new PdfNote("A sample", Date), s))]);
        return path;
    }

    public string Place(string name) => Path.Combine(_folder, name);

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static string Root([CallerFilePath] string here = "") =>
        Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", ".."));
}
