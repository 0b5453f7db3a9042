using System.CommandLine;
using System.CommandLine.Completions;
using Tagend.Output;
using Tagend.Problems;
using Tagend.Workshop.Shops;

namespace Tagend.Options;

/// <summary>Completions that the shop's own templates and the system have: label stocks, languages, print queues.</summary>
internal static class ShopNames
{
    public static Option<T> CompletesStocks<T>(this Option<T> option) => Completes(
        option, context => ShopTemplates.Read(FolderOf(context)).Catalog?.Stocks.Keys ?? []);

    public static Option<T> CompletesLanguages<T>(this Option<T> option) => Completes(
        option, context => Directory.EnumerateFiles(Path.Combine(FolderOf(context), "words"), "*.toml").Select(f => Path.GetFileNameWithoutExtension(f)!));

    public static Option<T> CompletesPrinters<T>(this Option<T> option) => Completes(option, _ => PrintQueue.Names());

    /// <summary>Names as they are now; none where what has them cannot be read, for nobody reads a sentence there.</summary>
    private static Option<T> Completes<T>(Option<T> option, Func<CompletionContext, IEnumerable<string>> names)
    {
        option.CompletionSources.Add(context =>
        {
            try
            {
                return names(context).Order(StringComparer.Ordinal).Select(n => new CompletionItem(n)).ToList();
            }
            catch (Exception e) when (e is TagendException or IOException or UnauthorizedAccessException)
            {
                return [];
            }
        });
        return option;
    }

    private static string FolderOf(CompletionContext context) => ShopFolders.Here.Templates(
        context.ParseResult.CommandResult.Command.Options.FirstOrDefault(o => o.Name == "--templates") is Option<string?> templates
            ? context.ParseResult.GetValue(templates)
            : null);
}
