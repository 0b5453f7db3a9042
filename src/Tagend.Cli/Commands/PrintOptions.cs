using System.CommandLine;
using Tagend.Catalog;
using Tagend.Orders;
using Tagend.Pages;

namespace Tagend.Commands;

/// <summary>What is printed, on what and to where.</summary>
/// <param name="Folder">Where the files go.</param>
/// <param name="PreviewDpi">Of the PNG pictures beside each PDF; null for none.</param>
/// <param name="Language">Of customer sheets; null for the shop's own.</param>
/// <param name="FirstLabel">Label of the first sheet to print on, from 1.</param>
/// <param name="Scale">Of the printer named; null where none is.</param>
internal sealed record PrintPlan(
    string Folder,
    IReadOnlySet<string> Papers,
    PaperSize Paper,
    LabelStock BagStock,
    LabelStock LoopStock,
    int FirstLabel,
    StripStock StripStock,
    StripPositions Positions,
    PrinterScale? Scale,
    int? PreviewDpi,
    string? Language);

/// <summary>The options of <c>print</c>.</summary>
internal sealed class PrintOptions
{
    public const string Cards = "cards";
    public const string Tags = "tags";
    public const string Sheets = "sheets";
    public const string Pulls = "pulls";
    public const string Strips = "strips";

    private static readonly string[] UsualPapers = [Cards, Tags, Sheets, Pulls];
    private static readonly string[] AllPapers = [.. UsualPapers, Strips];

    private readonly Option<string> _folder = new("--out")
    {
        Description = "The folder for the files; made if need be. Default: this folder.",
        HelpName = "DIR",
        DefaultValueFactory = _ => ".",
    };

    private readonly Option<string[]> _only = new Option<string[]>("--only")
    {
        Description = "Only these, parted by commas: cards, tags, sheets, pulls, strips. Default: all but strips.",
        HelpName = "LIST",
        CustomParser = result => [.. result.Tokens.SelectMany(t => t.Value.Split(',', StringSplitOptions.TrimEntries))],
    };

    private readonly Option<string[]> _orders = new("--order")
    {
        Description = "Only this order; may be given several times.",
        HelpName = "NUMBER",
    };

    private readonly Option<string?> _paper = PaperOption("Paper of the sheets; cards are half of it. Default: as shop.toml says.");

    private readonly Option<string?> _bagStock = new("--bag-labels")
    {
        Description = "Label stock of bag tags, from stocks.toml. Default: as shop.toml says.",
        HelpName = "STOCK",
    };

    private readonly Option<string?> _loopStock = new("--loop-labels")
    {
        Description = "Label stock of loop tags, from stocks.toml. Default: as shop.toml says.",
        HelpName = "STOCK",
    };

    private readonly Option<int> _firstLabel = new("--first-label")
    {
        Description = "Label of a part-used sheet to start at, from 1.",
        HelpName = "N",
        DefaultValueFactory = _ => 1,
    };

    private readonly StripOptions _strips = new();

    private readonly Option<int?> _preview = new("--preview")
    {
        Description = "Also a PNG picture of each page, at so many dots an inch.",
        HelpName = "DPI",
    };

    private readonly Option<string?> _language = new("--language")
    {
        Description = "Language of customer sheets: de, en, es, fr, or your own. Default: as shop.toml says.",
        HelpName = "LANGUAGE",
    };

    public PrintOptions()
    {
        _only.Validators.Add(result =>
        {
            foreach (var word in result.GetValueOrDefault<string[]>()?.Except(AllPapers) ?? [])
            {
                result.AddError($"--only \"{word}\": expected {string.Join(", ", AllPapers)}");
            }
        });
        _preview.Validators.Add(result => RefuseOutside(result, 50, 600));
        _firstLabel.Validators.Add(result => RefuseOutside(result, 1, 200));
    }

    public Option<bool> Strict { get; } = new("--strict") { Description = "Print nothing if anything has a problem." };

    public Option<string?> Printer { get; } = PrinterScales.Option("Draw lengths as this printer needs them, measured by tagend ruler.");

    public void AddTo(Command command)
    {
        foreach (var option in new Option[]
            { _folder, _only, _orders, _paper, _bagStock, _loopStock, _firstLabel, _preview, _language, Strict })
        {
            command.Options.Add(option);
        }

        _strips.AddTo(command);
        command.Options.Add(Printer);
    }

    public List<string> OrdersOf(ParseResult parsed) =>
        [.. (parsed.GetValue(_orders) ?? []).Select(o => NameReader.TryReadOrder(o, out var order, out _) ? order : o)];

    /// <exception cref="Problems.TagendException">A label stock is not in stocks.toml, or printers.toml has mistakes.</exception>
    public PrintPlan PlanOf(ParseResult parsed, ShopCatalog catalog)
    {
        var paper = PaperOf(parsed.GetValue(_paper), catalog);
        return new PrintPlan(
            parsed.GetValue(_folder)!,
            (parsed.GetValue(_only) is { Length: > 0 } only ? only : UsualPapers).ToHashSet(),
            paper,
            StockOf(parsed.GetValue(_bagStock) ?? catalog.Shop.BagStock, catalog),
            StockOf(parsed.GetValue(_loopStock) ?? catalog.Shop.LoopStock, catalog),
            parsed.GetValue(_firstLabel),
            _strips.StockOf(parsed, paper),
            _strips.PositionsOf(parsed),
            PrinterScales.Of(parsed.GetValue(Printer), catalog.Folder),
            parsed.GetValue(_preview),
            parsed.GetValue(_language));
    }

    public static Option<string?> PaperOption(string description) =>
        new Option<string?>("--paper") { Description = description, HelpName = "letter|a4" }.AcceptOnlyFromAmong("letter", "a4");

    public static PaperSize PaperOf(string? name, ShopCatalog catalog) => name switch
    {
        "letter" => PaperSize.Letter,
        "a4" => PaperSize.A4,
        _ => catalog.Shop.Paper,
    };

    public static LabelStock StockOf(string name, ShopCatalog catalog) => catalog.Stocks.TryGetValue(name, out var stock)
        ? stock
        : throw new Problems.TagendException(
            $"there is no label stock {name} in stocks.toml; there are {string.Join(", ", catalog.Stocks.Keys)}");

    private static void RefuseOutside(System.CommandLine.Parsing.OptionResult result, int least, int most)
    {
        if (result.Errors.Any() || result.Tokens.Count == 0)
        {
            return;
        }

        var text = result.Tokens[0].Value;
        if (!int.TryParse(text, out var number) || number < least || number > most)
        {
            result.AddError($"{result.Option.Name} \"{text}\": expected a whole number from {least} to {most}");
        }
    }
}
