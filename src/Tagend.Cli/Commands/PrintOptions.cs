using System.CommandLine;
using System.Globalization;
using Tagend.Catalog;
using Tagend.Orders;
using Tagend.Pages.Labels;
using Tagend.Pages.Strip;

namespace Tagend.Commands;

/// <summary>What is printed, on what and to where.</summary>
/// <param name="Folder">Where the files go.</param>
/// <param name="PreviewDpi">Of the PNG pictures beside each PDF; null for none.</param>
/// <param name="BagStock">With the dots of the printer that tags are drawn for.</param>
/// <param name="Use">Of the first sheet of labels.</param>
/// <param name="LabelDpi">Of the one-bit pictures beside tags.pdf; null for none.</param>
/// <param name="Scale">Of the printer named; null where it was not measured.</param>
/// <param name="Language">Of customer sheets; null for the shop's own.</param>
/// <param name="VolumePieces">Most pieces of a volume, but for a set that has more.</param>
/// <param name="Printer">The queue that takes what is made; null to leave it at the files.</param>
internal sealed record PrintPlan(
    string Folder,
    IReadOnlySet<string> Papers,
    PaperSize Paper,
    LabelStock BagStock,
    LabelStock LoopStock,
    SheetUse Use,
    StripStock StripStock,
    StripPositions Positions,
    PrinterScale? Scale,
    int? LabelDpi,
    int? PreviewDpi,
    string? Language,
    int VolumePieces,
    string? Printer);

/// <summary>The options of <c>print</c>.</summary>
internal sealed class PrintOptions
{
    public const string Cards = "cards";
    public const string Tags = "tags";
    public const string Sheets = "sheets";
    public const string Pulls = "pulls";
    public const string Strips = "strips";

    private const int MostLabels = 200;

    /// <summary>Dots an inch of the heads that label printers have: 8, 12 and 24 dots a millimeter.</summary>
    private static readonly int[] LabelPrinters = [203, 300, 600];

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

    private readonly Option<int[]> _skippedLabels = new("--skip-labels")
    {
        Description = "Spoiled labels of the first sheet, parted by commas: 3,7.",
        HelpName = "LIST",
        CustomParser = result =>
        {
            var words = result.Tokens.SelectMany(t => t.Value.Split(',', StringSplitOptions.TrimEntries)).ToList();
            foreach (var word in words.Where(w => !int.TryParse(w, out var number) || number is < 1 or > MostLabels))
            {
                result.AddError($"--skip-labels \"{word}\": expected whole numbers from 1 to {MostLabels}, such as 3,7");
                return [];
            }

            return [.. words.Select(w => int.Parse(w, CultureInfo.InvariantCulture))];
        },
    };

    private readonly Option<int?> _dpi = new Option<int?>("--dpi")
    {
        Description = "Tags on the dots of this label printer, and each page of them as a one-bit PNG. "
            + "Default: as stocks.toml says, and no PNG.",
        HelpName = "203|300|600",
    };

    private readonly Option<string?> _printer = PrinterScales.Option(
        "Also send each PDF to this queue: true size, on its own paper, corrected by what tagend ruler measured.");

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

    private readonly Option<int> _volume = new("--volume")
    {
        Description = "A large batch is printed in numbered files of so many pieces.",
        HelpName = "PIECES",
        DefaultValueFactory = _ => 250,
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
        _firstLabel.Validators.Add(result => RefuseOutside(result, 1, MostLabels));
        _volume.Validators.Add(result => RefuseOutside(result, 1, 10_000));
        _dpi.Validators.Add(result =>
        {
            if (result.Tokens is [var token] && !Array.Exists(LabelPrinters, dpi => token.Value == $"{dpi}"))
            {
                result.AddError($"--dpi \"{token.Value}\": expected one of {string.Join(", ", LabelPrinters)}");
            }
        });
    }

    public Option<bool> Strict { get; } = new("--strict") { Description = "Print nothing if anything has a problem." };

    public void AddTo(Command command)
    {
        foreach (var option in new Option[]
            { _folder, _only, _orders, _paper, _bagStock, _loopStock, _firstLabel, _skippedLabels, _dpi, _preview, _language, _volume, _printer, PrintersOption.Create(), Strict })
        {
            command.Options.Add(option);
        }

        _strips.AddTo(command);
    }

    public List<string> OrdersOf(ParseResult parsed) =>
        [.. (parsed.GetValue(_orders) ?? []).Select(o => NameReader.TryReadOrder(o, out var order, out _) ? order : o)];

    /// <exception cref="Problems.TagendException">
    /// A label stock is not in stocks.toml, or is a sheet and no label printer's; printers.toml has mistakes.
    /// </exception>
    public PrintPlan PlanOf(ParseResult parsed, ShopCatalog catalog)
    {
        var paper = PaperOf(parsed.GetValue(_paper), catalog);
        var dpi = parsed.GetValue(_dpi);
        var printer = parsed.GetValue(_printer);
        var papers = (parsed.GetValue(_only) is { Length: > 0 } only ? only : UsualPapers).ToHashSet();
        return new PrintPlan(
            parsed.GetValue(_folder)!,
            papers,
            paper,
            Drawn(parsed.GetValue(_bagStock) ?? catalog.Shop.BagStock),
            Drawn(parsed.GetValue(_loopStock) ?? catalog.Shop.LoopStock),
            new SheetUse(parsed.GetValue(_firstLabel), (parsed.GetValue(_skippedLabels) ?? []).ToHashSet()),
            _strips.StockOf(parsed, paper),
            _strips.PositionsOf(parsed),
            PrinterScales.Of(printer, catalog.Folder, isTrueSize: papers.Contains(Strips)),
            dpi,
            parsed.GetValue(_preview),
            parsed.GetValue(_language),
            parsed.GetValue(_volume),
            printer);

        LabelStock Drawn(string name)
        {
            var stock = StockOf(name, catalog);
            return dpi is null || stock.LabelsPerPage == 1
                ? stock with { DotsPerInch = dpi ?? stock.DotsPerInch }
                : throw new Problems.TagendException(
                    $"--dpi is for label printers, and {stock.Name} ({stock.Title}) is a sheet: its codes are drawn for laser and ink "
                    + "printers of 300, 600 or 1200 dpi as it is; leave --dpi out, or choose a roll with --bag-labels and --loop-labels");
        }
    }

    public static Option<string?> PaperOption(string description) =>
        new Option<string?>("--paper") { Description = description, HelpName = "letter|a4" }.AcceptOnlyFromAmong("letter", "a4");

    public static PaperSize PaperOf(string? name, ShopCatalog catalog) => name switch
    {
        "letter" => PaperSize.Letter,
        "a4" => PaperSize.A4,
        _ => catalog.Shop.Paper,
    };

    /// <exception cref="Problems.TagendException">It is not in stocks.toml.</exception>
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
