using System.CommandLine;
using Tagend.Problems;

namespace Tagend.Commands;

/// <summary><c>tagend init DIR</c>: copies the shipped templates for a shop to edit.</summary>
internal static class InitCommand
{
    public static Command Create()
    {
        var folder = new Argument<string>("DIR") { Description = "The folder to make; it must not exist." };
        var command = new Command("init", "Copies the templates for your shop to edit.") { folder };
        command.SetAction(parsed => Run(parsed.GetValue(folder)!));
        return command;
    }

    private static int Run(string folder)
    {
        if (Path.Exists(folder))
        {
            throw new TagendException($"{folder} exists already: name a new folder, so that nothing of yours is overwritten");
        }

        try
        {
            foreach (var file in Directory.EnumerateFiles(ShopOptions.ShippedTemplates, "*", SearchOption.AllDirectories))
            {
                var target = Path.Combine(folder, Path.GetRelativePath(ShopOptions.ShippedTemplates, file));
                Directory.CreateDirectory(Path.GetDirectoryName(target)!);
                File.Copy(file, target);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new TagendException($"cannot copy the templates to {folder}: {e.Message}", e);
        }

        Console.WriteLine($"Templates are in {folder}. Start with shop.toml; then: tagend print ORDERS.csv --templates {folder}");
        return ExitCode.Done;
    }
}
