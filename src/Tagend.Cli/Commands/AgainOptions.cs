using System.CommandLine;
using Tagend.Catalog;
using Tagend.Orders;

namespace Tagend.Commands;

/// <summary>What is made again of each tag that <c>recall</c> reads.</summary>
/// <param name="Changes">Cells of its order, by column.</param>
/// <param name="Date">Of a new revision.</param>
internal sealed record AgainPlan(
    bool Card,
    bool Tag,
    bool Sheet,
    bool AsOrder,
    IReadOnlyDictionary<string, string> Changes,
    string Folder,
    PaperSize? Paper,
    string? Labels,
    DateOnly Date);

/// <summary>The options of <c>recall</c> that print or order again.</summary>
internal sealed class AgainOptions
{
    private readonly Option<bool> _card = new("--card") { Description = "Prints the piece's jig card again." };
    private readonly Option<bool> _tag = new("--tag") { Description = "Prints its tag again." };
    private readonly Option<bool> _sheet = new("--sheet") { Description = "Prints a customer sheet of it again." };

    private readonly Option<bool> _asOrder = new("--as-order")
    {
        Description = "Writes an order file that makes the same spec to standard output.",
    };

    private readonly Option<string[]> _changes = new("--change")
    {
        Description = "A cell of the piece's order that is another now, such as finished_length=\"60 3/8\": a new revision. "
            + "customer, bow, due and notes are only added.",
        HelpName = "COLUMN=TEXT",
    };

    private readonly Option<string> _folder = new("--out")
    {
        Description = "The folder for what is printed again. Default: this folder.",
        HelpName = "DIR",
        DefaultValueFactory = _ => ".",
    };

    private readonly Option<string?> _paper = new Option<string?>("--paper")
    {
        Description = "Paper of the sheet; the card is half of it. Default: as shop.toml says.",
        HelpName = "letter|a4",
    }.AcceptOnlyFromAmong("letter", "a4");

    private readonly Option<string?> _labels = new("--labels")
    {
        Description = "Label stock of the tag, from stocks.toml. Default: as shop.toml says.",
        HelpName = "STOCK",
    };

    private readonly Option<DateOnly?> _date = DateOption.Create("--date", "The date of a new revision. Default: today.");
    private readonly Option<string?> _templates = ShopOptions.TemplatesOption();
    private readonly Option<string?> _jobBook = JobBookOption.Create();

    public AgainOptions() => _changes.Validators.Add(result =>
    {
        foreach (var change in result.GetValueOrDefault<string[]>() ?? [])
        {
            var column = change.Split('=')[0].Trim();
            if (!change.Contains('=', StringComparison.Ordinal) || !OrderColumn.All.Contains(column) || column == OrderColumn.BowLength)
            {
                result.AddError($"--change \"{change}\": expected a column of an order, = and its text; columns are "
                    + string.Join(", ", OrderColumn.All.Where(c => c != OrderColumn.BowLength)));
            }
        }
    });

    public void AddTo(Command command)
    {
        foreach (var option in new Option[]
            { _card, _tag, _sheet, _asOrder, _changes, _folder, _paper, _labels, _date, _templates, _jobBook })
        {
            command.Options.Add(option);
        }

        command.Validators.Add(result =>
        {
            if (result.GetValue(_changes) is { Length: > 0 }
                && !(result.GetValue(_card) || result.GetValue(_tag) || result.GetValue(_sheet) || result.GetValue(_asOrder)))
            {
                result.AddError("--change: say what to make of it with --card, --tag, --sheet or --as-order");
            }
        });
    }

    /// <returns>Null where nothing is made again; a run without a catalog where the templates have mistakes.</returns>
    public AgainRun? RunOf(ParseResult parsed)
    {
        var plan = new AgainPlan(
            parsed.GetValue(_card),
            parsed.GetValue(_tag),
            parsed.GetValue(_sheet),
            parsed.GetValue(_asOrder),
            (parsed.GetValue(_changes) ?? []).ToDictionary(c => c.Split('=')[0].Trim(), c => c[(c.IndexOf('=', StringComparison.Ordinal) + 1)..].Trim()),
            parsed.GetValue(_folder)!,
            parsed.GetValue(_paper) switch
            {
                "letter" => PaperSize.Letter,
                "a4" => PaperSize.A4,
                _ => null,
            },
            parsed.GetValue(_labels),
            ShopOptions.DateOf(parsed.GetValue(_date)));
        if (!(plan.Card || plan.Tag || plan.Sheet || plan.AsOrder))
        {
            return null;
        }

        var catalog = ShopOptions.ReadCatalog(parsed.GetValue(_templates));
        return new AgainRun(catalog, plan, new RunBook(catalog is null ? null : JobBookOption.AddressOf(parsed.GetValue(_jobBook), catalog.Folder)));
    }
}
