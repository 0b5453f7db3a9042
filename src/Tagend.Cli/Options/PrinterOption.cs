using System.CommandLine;
using Tagend.Catalog;
using Tagend.Streams;
using Tagend.Workshop.Shops;

namespace Tagend.Options;

/// <summary><c>--printer</c>, for the commands that draw for one.</summary>
internal static class PrinterOption
{
    public static Option<string?> Create(string description)
    {
        var option = new Option<string?>("--printer") { Description = description, HelpName = "NAME" }.CompletesPrinters();
        option.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string?>() is { } name && !PrinterScaleFile.CanName(name))
            {
                result.AddError($"--printer \"{name}\": expected the name of a printer, without quotes in it");
            }
        });
        return option;
    }

    /// <summary>The scale of a printer; null where none is named or it was never measured.</summary>
    /// <param name="isTrueSize">Something is printed at true size: a printer never measured is spoken of on standard error.</param>
    /// <exception cref="Problems.TagendException">printers.toml has mistakes or cannot be opened.</exception>
    public static PrinterScale? ScaleOf(string? printer, string folder, bool isTrueSize)
    {
        if (printer is null)
        {
            return null;
        }

        var scale = PrinterScales.Of(printer, folder);
        if (scale is null && isTrueSize)
        {
            Say.Error($"{printer} has not been measured: printed without correction; tagend ruler prints the page to measure");
        }

        return scale;
    }
}
