using System.CommandLine;
using Tagend.Catalog;
using Tagend.Problems;

namespace Tagend.Commands;

/// <summary>The printers a shop has measured, for the commands that draw for one.</summary>
internal static class PrinterScales
{
    public static Option<string?> Option(string description)
    {
        var option = new Option<string?>("--printer") { Description = description, HelpName = "NAME" };
        option.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string?>() is { } name && !PrinterScaleFile.CanName(name))
            {
                result.AddError($"--printer \"{name}\": expected the name of a printer, without quotes in it");
            }
        });
        return option;
    }

    /// <summary>The scale of a printer; null where it was never measured, and where none is named.</summary>
    /// <param name="isNeeded">Something is drawn to lay a string along: that it was never measured is said on standard error.</param>
    /// <exception cref="TagendException">The file has mistakes or cannot be opened.</exception>
    public static PrinterScale? Of(string? printer, string folder, bool isNeeded)
    {
        if (printer is null)
        {
            return null;
        }

        var scale = All(folder).FirstOrDefault(s => s.Printer == printer);
        if (scale is null && isNeeded)
        {
            Console.Error.WriteLine($"tagend: {printer} was never measured: printed without correction; tagend ruler makes the page to measure");
        }

        return scale;
    }

    /// <exception cref="TagendException">The file has mistakes or cannot be opened.</exception>
    public static IReadOnlyList<PrinterScale> All(string folder)
    {
        var problems = new List<Problem>();
        var scales = PrinterScaleFile.Read(folder, problems);
        return problems.Count == 0
            ? scales
            : throw new TagendException($"{string.Join("\n", problems)}\nCorrect {Path.Combine(folder, PrinterScaleFile.Name)} or delete it and measure again: tagend ruler");
    }
}
