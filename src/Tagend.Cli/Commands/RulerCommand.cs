using System.CommandLine;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Options;
using Tagend.Problems;
using Tagend.Streams;
using Tagend.Workshop.Printing;
using Tagend.Workshop.Shops;

namespace Tagend.Commands;

/// <summary><c>tagend ruler</c>: a page to measure a printer by, and what it measured.</summary>
internal static class RulerCommand
{
    public static Command Create(string name)
    {
        var folder = FolderOption.Create("ruler.pdf");
        var templates = ShopOptions.TemplatesOption();
        var paper = PaperOption.Create("The paper of the page. Default: as shop.toml says.");
        var date = DateOption.Create("--date", "The date of the document. Default: today.");
        var printer = PrinterOption.Create("The printer that was measured; without measurements, the page is drawn with its correction.");
        var across = Measure("--across", "Measured length of the bar across the feed, such as 149.3mm.");
        var along = Measure("--along", "Measured length of the bar along the feed, such as 149.8mm.");
        var command = new Command(name, "Prints a page for measuring a printer (ruler.pdf), or stores what was measured.")
        {
            folder, templates, paper, date, printer, across, along,
        };
        command.SetAction(parsed =>
        {
            var name = parsed.GetValue(printer);
            return (parsed.GetValue(across), parsed.GetValue(along)) switch
            {
                (null, null) => Print(
                    parsed.GetValue(folder)!, parsed.GetValue(templates), parsed.GetValue(paper), DateOption.Of(parsed.GetValue(date)), name),
                ({ } a, { } b) when name is not null => Store(parsed.GetValue(templates), new PrinterScale(name, Read(a)!.Value, Read(b)!.Value)),
                _ => Incomplete(),
            };
        });
        return command;
    }

    private static int Print(string folder, string? templates, string? paper, DateOnly date, string? printer)
    {
        if (ShopOptions.ReadCatalog(templates) is not { } catalog)
        {
            return ExitCode.Problems;
        }

        var scale = PrinterOption.ScaleOf(printer, catalog.Folder, isTrueSize: true);
        var (page, problems) = RulerPaper.Print(catalog, PaperOption.Of(paper, catalog).Sheet, scale, folder, date);
        if (page is null)
        {
            Say.Problems(problems);
            return ExitCode.Problems;
        }

        Console.WriteLine($"{page.Path}: print it at 100 % (\"actual size\") and measure its bars");
        return ExitCode.Done;
    }

    private static int Store(string? templates, PrinterScale scale)
    {
        foreach (var (option, measured) in new[] { ("--across", scale.MeasuredAcross), ("--along", scale.MeasuredAlong) })
        {
            if (PrinterScale.Refusal(measured) is { } refusal)
            {
                Say.Error($"{option} {LengthWriter.Setting(measured, LengthUnit.Millimeter)} {refusal}");
                return ExitCode.Usage;
            }
        }

        var folder = ShopFolders.Here.Templates(templates);
        if (!Directory.Exists(folder) || ShopFolders.Here.IsShipped(folder))
        {
            throw new TagendException(
                "what a printer measured is kept in your shop's templates folder, and you have none yet: make it with tagend init, or name it with --templates");
        }

        var path = PrinterScales.Keep(scale, folder);
        Console.WriteLine(FormattableString.Invariant(
            $"{path}: with --printer {scale.Printer}, pages are drawn {scale.Across:0.0000} times as wide and {scale.Along:0.0000} times as long"));
        return ExitCode.Done;
    }

    private static int Incomplete()
    {
        Say.Error("to store a printer's measurements, give all three: --printer NAME --across LENGTH --along LENGTH");
        return ExitCode.Usage;
    }

    private static Option<string?> Measure(string name, string description)
    {
        var option = new Option<string?>(name) { Description = description, HelpName = LengthWords.Value };
        option.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string?>() is { } text && Read(text) is null)
            {
                result.AddError($"{name} \"{text}\": expected the measured length of the bar, such as 149.3mm or 5.88in");
            }
        });
        return option;
    }

    /// <summary>The bars are stated in millimeters, and so is a bare number.</summary>
    private static Length? Read(string text) =>
        LengthReader.TryRead(text, LengthUnit.Millimeter, out var length) && length > Length.Zero ? length : null;
}
