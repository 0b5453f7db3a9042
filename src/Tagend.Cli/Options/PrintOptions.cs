using System.CommandLine;
using System.Globalization;
using Tagend.Catalog;
using Tagend.Pages;
using Tagend.Pages.Parts;
using Tagend.Workshop.Books;
using Tagend.Workshop.Checks;
using Tagend.Workshop.Printing;
using Tagend.Workshop.Shops;

namespace Tagend.Options;

/// <summary>The options of <c>print</c>.</summary>
internal sealed class PrintOptions
{
    private const int MostLabels = 200;
    private const string NextLabel = "next";

    /// <summary>Dots an inch of the heads that label printers have: 8, 12 and 24 dots a millimeter.</summary>
    private static readonly int[] LabelPrinters = [203, 300, 600];

    private static readonly string[] KindNames = [.. PageKinds.All.Select(kind => kind.Name)];

    private readonly Option<string> _folder = FolderOption.Create("the files");

    private readonly Option<string[]> _only = new("--only")
    {
        Description = $"Only these, comma-separated: {string.Join(", ", KindNames)}. "
            + $"Default: all but {string.Join(", ", PageKinds.All.Where(kind => !kind.IsUsual).Select(kind => kind.Name))}.",
        HelpName = "LIST",
        CustomParser = result => [.. result.Tokens.SelectMany(t => t.Value.Split(',', StringSplitOptions.TrimEntries))],
    };

    private readonly Option<string[]> _orders = new("--order")
    {
        Description = "Only this order, or this piece of it, such as 701/buss; may be repeated.",
        HelpName = "NUMBER",
    };

    private readonly Option<string?> _paper = PaperOption.Create("Paper of the sheets and the cards. Default: as shop.toml says.");

    private readonly Option<string?> _bagStock = new Option<string?>("--bag-labels")
    {
        Description = "Label stock of bag tags, from stocks.toml. Default: as shop.toml says.",
        HelpName = "STOCK",
    }.CompletesStocks();

    private readonly Option<string?> _loopStock = new Option<string?>("--loop-labels")
    {
        Description = "Label stock of loop tags, from stocks.toml. Default: as shop.toml says.",
        HelpName = "STOCK",
    }.CompletesStocks();

    private readonly Option<string> _firstLabel = new("--first-label")
    {
        Description = $"Label of a part-used sheet to start at, from 1; or {NextLabel}: the one after those that this bench printed last on that stock.",
        HelpName = $"N|{NextLabel}",
        DefaultValueFactory = _ => "1",
    };

    private readonly StripOptions _strips = new();

    private readonly Option<int[]> _skippedLabels = new("--skip-labels")
    {
        Description = "Spoiled labels of the first sheet, comma-separated: 3,7.",
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
        Description = "Align tags to the dots of this label printer, and also write each page of them as a one-bit PNG. "
            + "Default: as stocks.toml says, and no PNG.",
        HelpName = "203|300|600",
    };

    private readonly Option<string?> _printer = PrinterOption.Create(
        "Also send each PDF to this print queue, at true size on its own paper, corrected as measured with tagend ruler.");

    private readonly Option<int?> _preview = new("--preview")
    {
        Description = "Also a PNG of each page at this many dots per inch.",
        HelpName = "DPI",
    };

    private readonly Option<string?> _language = new Option<string?>("--language")
    {
        Description = "Language of all customer sheets: de, en, es, fr, or your own. Default: each order's own, else as shop.toml says.",
        HelpName = "LANGUAGE",
    }.CompletesLanguages();

    private readonly Option<int> _volume = new("--volume")
    {
        Description = "Split a large batch into numbered files of about this many pieces.",
        HelpName = "PIECES",
        DefaultValueFactory = _ => 250,
    };

    public PrintOptions()
    {
        _only.Validators.Add(result =>
        {
            foreach (var word in result.GetValueOrDefault<string[]>()?.Except(KindNames) ?? [])
            {
                result.AddError($"--only \"{word}\": expected {string.Join(", ", KindNames)}");
            }
        });
        _orders.Validators.Add(result =>
        {
            _ = OrderChoice.Read(result.GetValueOrDefault<string[]>() ?? [], out var error);
            if (error is not null)
            {
                result.AddError($"--order {error}");
            }
        });
        _preview.Validators.Add(result => RefuseOutside(result, 50, 600));
        _firstLabel.Validators.Add(result => RefuseOutside(result, 1, MostLabels, NextLabel));
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

    public OrderChoice OrdersOf(ParseResult parsed) => OrderChoice.Read(parsed.GetValue(_orders) ?? [], out _);

    public string? PrinterOf(ParseResult parsed) => parsed.GetValue(_printer);

    /// <exception cref="Problems.TagendException">
    /// A label stock is not in stocks.toml, or is a sheet and no label printer's; printers.toml has mistakes.
    /// </exception>
    public PrintPlan PlanOf(ParseResult parsed, ShopCatalog catalog, RunBook book)
    {
        var paper = PaperOption.Of(parsed.GetValue(_paper), catalog);
        var dpi = parsed.GetValue(_dpi);
        var only = parsed.GetValue(_only) ?? [];
        List<IPageKind> kinds = [.. PageKinds.All.Where(kind => only.Length > 0 ? only.Contains(kind.Name) : kind.IsUsual)];
        var bag = LabelStocks.Named(parsed.GetValue(_bagStock) ?? catalog.Shop.BagStock, catalog, dpi);
        var loop = LabelStocks.Named(parsed.GetValue(_loopStock) ?? catalog.Shop.LoopStock, catalog, dpi);
        return new PrintPlan
        {
            Folder = parsed.GetValue(_folder)!,
            Kinds = kinds,
            Setting = new PageSetting
            {
                Paper = paper,
                BagStock = bag,
                LoopStock = loop,
                Use = UseOf(parsed, [bag.Name, loop.Name], book),
                StripStock = _strips.StockOf(parsed, paper),
                Positions = _strips.PositionsOf(parsed),
                Language = parsed.GetValue(_language),
                Scale = PrinterOption.ScaleOf(PrinterOf(parsed), catalog.Folder, isTrueSize: kinds.Exists(kind => kind.IsMeasuredBy)),
                HasOnePaperADocument = PrinterOf(parsed) is not null,
            },
            LabelDpi = dpi,
            PreviewDpi = parsed.GetValue(_preview),
            VolumePieces = parsed.GetValue(_volume),
        };
    }

    private SheetUse UseOf(ParseResult parsed, string[] stocks, RunBook book)
    {
        var (first, spoiled) = (parsed.GetValue(_firstLabel)!, (parsed.GetValue(_skippedLabels) ?? []).ToHashSet());
        return first == NextLabel
            ? new SheetUse(1, spoiled) { Kept = book.KeptLabels(stocks) }
            : new SheetUse(int.Parse(first, CultureInfo.InvariantCulture), spoiled);
    }

    private static void RefuseOutside(System.CommandLine.Parsing.OptionResult result, int least, int most, string? word = null)
    {
        if (result.Errors.Any() || result.Tokens.Count == 0 || result.Tokens[0].Value == word)
        {
            return;
        }

        var text = result.Tokens[0].Value;
        if (!int.TryParse(text, out var number) || number < least || number > most)
        {
            result.AddError($"{result.Option.Name} \"{text}\": expected a whole number from {least} to {most}{(word is null ? "" : $", or {word}")}");
        }
    }
}
