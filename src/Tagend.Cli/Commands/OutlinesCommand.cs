using System.CommandLine;
using Tagend.Output;
using Tagend.Pages.Labels;
using Tagend.Problems;

namespace Tagend.Commands;

/// <summary><c>tagend outlines STOCK</c>: a test page of a label sheet.</summary>
internal static class OutlinesCommand
{
    public static Command Create()
    {
        var stock = new Argument<string>("STOCK") { Description = "A sheet of labels, from stocks.toml." };
        var templates = ShopOptions.TemplatesOption();
        var folder = new Option<string>("--out")
        {
            Description = "The folder for the file; made if need be. Default: this folder.",
            HelpName = "DIR",
            DefaultValueFactory = _ => ".",
        };
        var printer = new Option<string?>("--printer")
        {
            Description = "Also send the page to this queue, at true size.",
            HelpName = "NAME",
        };
        var command = new Command("outlines", "Prints the outlines of a label sheet, to hold against a real one: STOCK-outlines.pdf.")
            { stock, templates, folder, printer, PrintersOption.Create() };
        command.SetAction(parsed => Run(
            parsed.GetValue(stock)!, parsed.GetValue(templates), parsed.GetValue(folder)!, parsed.GetValue(printer)));
        return command;
    }

    private static int Run(string name, string? templates, string folder, string? printer)
    {
        if (ShopOptions.ReadCatalog(templates) is not { } catalog)
        {
            return ExitCode.Problems;
        }

        var stock = PrintOptions.StockOf(name, catalog);
        if (stock.LabelsPerPage == 1)
        {
            var sheets = catalog.Stocks.Values.Where(s => s.LabelsPerPage > 1).Select(s => s.Name);
            throw new TagendException(
                $"{stock.Name} ({stock.Title}) is one label a page: there is no sheet to outline; sheets are {string.Join(", ", sheets)}");
        }

        var fonts = Fonts.Load(Path.Combine(catalog.Folder, "fonts"));
        var path = Path.Combine(folder, $"{stock.Name}-outlines.pdf");
        var title = $"Tagend outlines of {stock.Name}";
        var note = new PdfNote(title, DateOnly.FromDateTime(TimeProvider.System.GetLocalNow().DateTime), catalog.Words.Tag);
        AtomicFiles.Write([new NewFile(path, stream => PdfFile.Write([StockOutlines.Of(stock, catalog.Words, fonts)], fonts, note, stream))]);
        Console.WriteLine(path);
        if (printer is not null)
        {
            var job = PrintQueue.Send(printer, path, title, new Paper(stock.Name, stock.PageWidth, stock.PageHeight));
            Console.WriteLine($"{path}: sent to {printer}, job {job}");
        }

        return ExitCode.Done;
    }
}
