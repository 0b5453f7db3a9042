using System.Text;
using Tagend.Catalog;
using Tagend.Output;
using Tagend.Problems;

namespace Tagend.Workshop.Shops;

/// <summary>The printers that a shop has measured: printers.toml in its templates folder.</summary>
public static class PrinterScales
{
    /// <summary>The scale of a printer; null where it was never measured.</summary>
    /// <param name="folder">The templates folder.</param>
    /// <exception cref="TagendException">The file has mistakes or cannot be opened.</exception>
    public static PrinterScale? Of(string printer, string folder) => All(folder).FirstOrDefault(s => s.Printer == printer);

    /// <summary>Keeps what a printer measured, in place of what it measured before.</summary>
    /// <param name="folder">The shop's own templates folder.</param>
    /// <returns>The file's path.</returns>
    /// <exception cref="TagendException">The file has mistakes or cannot be written.</exception>
    public static string Keep(PrinterScale scale, string folder)
    {
        var path = Path.Combine(folder, PrinterScaleFile.Name);
        var text = PrinterScaleFile.With(All(folder), scale);
        AtomicFiles.Write([new NewFile(path, stream => stream.Write(Encoding.UTF8.GetBytes(text)))]);
        return path;
    }

    private static IReadOnlyList<PrinterScale> All(string folder)
    {
        var problems = new List<Problem>();
        var scales = PrinterScaleFile.Read(folder, problems);
        return problems.Count == 0
            ? scales
            : throw new TagendException($"{string.Join("\n", problems)}\nCorrect {Path.Combine(folder, PrinterScaleFile.Name)} or delete it and measure the printers again");
    }
}
