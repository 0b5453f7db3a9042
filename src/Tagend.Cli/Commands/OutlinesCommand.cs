using System.CommandLine;
using Tagend.Options;
using Tagend.Output;
using Tagend.Streams;
using Tagend.Workshop.Printing;

namespace Tagend.Commands;

/// <summary><c>tagend outlines STOCK</c>: a test page of a label sheet.</summary>
internal static class OutlinesCommand
{
    public static Command Create(string name)
    {
        var stock = new Argument<string>("STOCK") { Description = "A sheet of labels, from stocks.toml." };
        var templates = ShopOptions.TemplatesOption();
        var folder = FolderOption.Create("the file");
        var printer = new Option<string?>("--printer")
        {
            Description = "Also send the page to this print queue, at true size.",
            HelpName = "NAME",
        };
        var command = new Command(name, "Prints the outlines of a label sheet as STOCK-outlines.pdf, to hold against a real sheet.")
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

        using var turn = FolderTurn.Take(folder);
        var page = OutlinesPaper.Print(name, catalog, folder, DateOption.Of(null));
        Console.WriteLine(page.Path);
        if (printer is not null)
        {
            Say.Sent(page, printer);
        }

        return ExitCode.Done;
    }
}
