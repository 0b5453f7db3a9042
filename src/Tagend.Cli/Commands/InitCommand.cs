using System.CommandLine;
using Tagend.Workshop.Shops;

namespace Tagend.Commands;

/// <summary><c>tagend init DIR</c>: copies the shipped templates for a shop to edit.</summary>
internal static class InitCommand
{
    public static Command Create()
    {
        var folder = new Argument<string>("DIR") { Description = "The folder to make; it must not exist." }.NamesSomething();
        var command = new Command("init", "Copies the templates for your shop to edit.") { folder };
        command.SetAction(parsed => Run(parsed.GetValue(folder)!));
        return command;
    }

    private static int Run(string folder)
    {
        ShopTemplates.Begin(ShopOptions.ShippedTemplates, folder);
        Console.WriteLine($"Templates are in {folder}. Start with shop.toml; then: tagend print ORDERS.csv --templates {folder}");
        return ExitCode.Done;
    }
}
