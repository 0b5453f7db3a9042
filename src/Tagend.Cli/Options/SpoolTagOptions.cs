using System.CommandLine;
using Tagend.Catalog;
using Tagend.Pages.Parts;
using Tagend.Specs;
using Tagend.Streams;
using Tagend.Workshop.Printing;

namespace Tagend.Options;

/// <summary>How the tags of spools are printed.</summary>
internal sealed class SpoolTagOptions
{
    private readonly Option<string> _folder = FolderOption.Create("spools.pdf");

    private readonly Option<string?> _labels = new("--labels")
    {
        Description = "Label stock of the tags, from stocks.toml. Default: that of loop tags, as shop.toml says.",
        HelpName = "STOCK",
    };

    private readonly Option<int> _first = new("--first-label")
    {
        Description = "Label of a part-used sheet to start at, from 1.",
        HelpName = "N",
        DefaultValueFactory = _ => 1,
    };

    public void AddTo(Command command)
    {
        foreach (var option in new Option[] { _folder, _labels, _first })
        {
            command.Options.Add(option);
        }
    }

    /// <returns>The exit code.</returns>
    public int Print(ParseResult parsed, IReadOnlyList<ReceivedSpool> spools, ShopCatalog catalog)
    {
        var use = new SheetUse(parsed.GetValue(_first), new HashSet<int>());
        var (paper, problems) = SpoolPaper.Print(spools, catalog, parsed.GetValue(_labels), use, parsed.GetValue(_folder)!, DateOption.Of(null));
        Say.Problems(problems);
        if (paper is null)
        {
            return ExitCode.Problems;
        }

        Console.WriteLine(Say.Of(paper));
        return ExitCode.Done;
    }
}
