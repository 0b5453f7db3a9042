using System.CommandLine;
using Tagend.Catalog;
using Tagend.Options;
using Tagend.Jobs;
using Tagend.Orders;
using Tagend.Pages;
using Tagend.Pages.Parts;
using Tagend.Problems;
using Tagend.Workshop.Books;
using Tagend.Workshop.Printing;
using Tagend.Workshop.Shops;

namespace Tagend.Commands;

/// <summary>The options of <c>recall</c> that print or order again.</summary>
internal sealed class AgainOptions
{
    private readonly List<(IPageKind Kind, Option<bool> Option)> _kinds =
    [
        .. PageKinds.All.Where(kind => kind.FromTag is not null).Select(kind =>
            (kind, new Option<bool>($"--{kind.FromTag}") { Description = $"Prints its {kind.Title} again." })),
    ];

    private static readonly string[] Changeable =
        [.. OrderColumn.All.Where(c => c is not (OrderColumn.BowLength or OrderColumn.Order or OrderColumn.Revision))];

    private readonly Option<bool> _asOrder = new("--as-order")
    {
        Description = "Writes an order file that makes the same spec to standard output.",
    };

    private readonly Option<string?> _number = new("--number")
    {
        Description = "The number of a new order that this one is the model of: same as last time, with its changes. Default: the same order again.",
        HelpName = "NUMBER",
    };

    private readonly Option<string[]> _changes = new("--change")
    {
        Description = "A cell of the piece's order to change, such as finished_length=\"60 3/8\", of one piece of several "
            + "buss/finished_length=\"38 5/8\": a new revision. Of servings also a color alone: center_serving=green. "
            + "customer, bow, due, notes, language, units and accessories are only added.",
        HelpName = "COLUMN=TEXT",
    };

    private readonly Option<string> _folder = FolderOption.Create("what is printed again");

    private readonly Option<string?> _paper = PaperOption.Create("Paper of the sheet and the card. Default: as shop.toml says.");

    private readonly Option<string?> _labels = new Option<string?>("--labels")
    {
        Description = "Label stock of the tag, from stocks.toml. Default: as shop.toml says.",
        HelpName = "STOCK",
    }.CompletesStocks();

    private readonly Option<DateOnly?> _date = DateOption.Create("--date", "The date of a new revision. Default: today.");
    private readonly Option<string?> _templates = ShopOptions.TemplatesOption();
    private readonly Option<string?> _jobBook = JobBookOption.Create();

    public AgainOptions()
    {
        _changes.Validators.Add(result =>
        {
            foreach (var change in result.GetValueOrDefault<string[]>() ?? [])
            {
                if (Read(change, out var error) is null)
                {
                    result.AddError($"--change \"{change}\": {error}");
                }
            }
        });
        _number.Validators.Add(result =>
        {
            if (!NameReader.TryReadOrder(result.GetValueOrDefault<string>() ?? "", out _, out var fault))
            {
                result.AddError($"--number \"{result.GetValueOrDefault<string>()}\": {fault}");
            }
        });
    }

    public void AddTo(Command command)
    {
        foreach (var option in _kinds.Select(k => k.Option).Concat<Option>([_asOrder, _number, _changes, _folder, _paper, _labels, _date, _templates, _jobBook]))
        {
            command.Options.Add(option);
        }

        command.Check(result =>
        {
            if ((result.GetValue(_changes) is { Length: > 0 } || result.GetValue(_number) is not null)
                && !(_kinds.Exists(k => result.GetValue(k.Option)) || result.GetValue(_asOrder)))
            {
                result.AddError($"{(result.GetValue(_number) is null ? "--change" : "--number")}: say what to make of it with {string.Join(", ", _kinds.Select(k => k.Option.Name))} or --as-order");
            }
        });
    }

    /// <summary>The shop's job book, where there is one: it knows which tags are superseded.</summary>
    /// <exception cref="TagendException">It cannot be used.</exception>
    public IJobBook? BookOf(ParseResult parsed) => JobBookOption
        .AddressOf(parsed.GetValue(_jobBook), ShopFolders.Here.Templates(parsed.GetValue(_templates)))
        ?.OpenExisting(TimeProvider.System, BenchName.Here);

    /// <returns>Null, with its problems on standard error, where the catalog has mistakes.</returns>
    public ShopCatalog? CatalogOf(ParseResult parsed) => ShopOptions.ReadCatalog(parsed.GetValue(_templates));

    /// <returns>Null where nothing is made again.</returns>
    public AgainPrinting? RunOf(ParseResult parsed)
    {
        var plan = new AgainPlan
        {
            Kinds = [.. _kinds.Where(k => parsed.GetValue(k.Option)).Select(k => k.Kind)],
            AsOrder = parsed.GetValue(_asOrder),
            NewOrder = NameReader.TryReadOrder(parsed.GetValue(_number) ?? "", out var number, out _) ? number : null,
            Changes = [.. (parsed.GetValue(_changes) ?? []).Select(c => Read(c, out _)!)],
            Folder = parsed.GetValue(_folder)!,
            Paper = PaperSet.Named(parsed.GetValue(_paper)),
            Labels = parsed.GetValue(_labels),
            Date = DateOption.Of(parsed.GetValue(_date)),
        };
        if (plan.Kinds.Count == 0 && !plan.AsOrder)
        {
            return null;
        }

        var catalog = CatalogOf(parsed);
        var book = new RunBook(catalog is null ? null : JobBookOption.AddressOf(parsed.GetValue(_jobBook), catalog.Folder), TimeProvider.System, BenchName.Here);
        return new AgainPrinting(catalog is null ? null : new AgainRun(catalog, plan, book), book, plan.AsOrder);
    }

    /// <summary>Reads a change: <c>COLUMN=TEXT</c>, or <c>PIECE/COLUMN=TEXT</c>.</summary>
    /// <returns>Null, with what was expected, where it is none.</returns>
    private static CellChange? Read(string change, out string error)
    {
        var (name, text) = change.IndexOf('=', StringComparison.Ordinal) is var at and >= 0 ? (change[..at].Trim(), change[(at + 1)..].Trim()) : ("", "");
        var (piece, column) = name.LastIndexOf('/') is var slash and >= 0 ? (name[..slash], name[(slash + 1)..].Trim()) : (null, name);
        string? pieceName = null;
        error = "expected a column of an order, = and its text; columns are " + string.Join(", ", Changeable);
        if (!Changeable.Contains(column) || (piece is not null && !NameReader.TryReadName(piece, out pieceName, out error!)))
        {
            return null;
        }

        return new CellChange(pieceName, column, text);
    }
}
