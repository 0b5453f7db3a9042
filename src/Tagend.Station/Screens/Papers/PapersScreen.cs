using System.Globalization;
using Tagend.Orders;
using Tagend.Output;
using Tagend.Pages;
using Tagend.Problems;
using Tagend.Station.Desk;
using Tagend.Station.Frame;
using Tagend.Workshop.Books;
using Tagend.Workshop.Shops;

namespace Tagend.Station.Screens.Papers;

/// <summary>The papers of sets as they will be printed; made, downloaded or sent to a queue.</summary>
internal sealed class PapersScreen : IScreen
{
    /// <summary>Of one paper: a season has thousands.</summary>
    private const int MostShown = 8;

    private static readonly int[] Resolutions = [60, 110, 200];

    public NavEntry? Nav { get; } = new("/papers", "Papers", "papers");

    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/papers", (HttpContext context, OrderDesk orders) => First(context, orders));
        routes.MapGet("/papers/{name}", (string name, HttpContext context, PaperDesk papers, OrderDesk orders, ShopDesk shop) => Show(name, context, papers, orders, shop));
        routes.MapGet("/papers/{name}/page.png", (string name, int paper, int page, int dpi, HttpContext context, PaperDesk papers) =>
            Picture(name, paper, page, dpi, context, papers));
        routes.MapPost("/papers/{name}", (string name, HttpContext context, PaperDesk papers) => Make(name, context, papers));
        routes.MapGet("/papers/{name}/made/{file}", (string name, string file, PaperDesk papers) => Download(name, file, papers));
        routes.MapGet("/papers/jobs/{job}", (string job) => Fate(job));
    }

    private static IResult First(HttpContext context, OrderDesk orders) =>
        orders.Files() is [var newest, ..] ? Redirect.To(context, $"/papers/{Uri.EscapeDataString(newest.Name)}") : NoPapersPage.Create("");

    private static IResult Show(string name, HttpContext context, PaperDesk papers, OrderDesk orders, ShopDesk shop)
    {
        if (orders.Open(name) is not { } file)
        {
            return Faults.Page(StatusCodes.Status404NotFound, $"There is no order file {name}.");
        }

        var catalog = shop.Catalog;
        var book = shop.RunBook();
        var found = shop.Check(file, book);
        var report = found.Report;
        var printed = shop.Listed(found.File).Values.Where(o => o.State != OrderState.New).Select(o => o.Order).ToHashSet();
        var wish = WishOf(name, context.Request.Query);
        var isFirst = context.Request.QueryString.Value!.Length == 0;
        if (isFirst)
        {
            wish = wish with { Orders = [.. report.Ready.Select(s => s.Order).Where(o => !printed.Contains(o))] };
        }

        var kinds = PageKinds.All.Select(k => new Choice(k.Name, Capital(k.Title), wish.Kinds.Count > 0 ? wish.Kinds.Contains(k.Name) : k.IsUsual)).ToList();
        var drawn = wish.Orders.Count == 0 ? null : papers.Draw(wish, context.RequestAborted);
        var (queues, note) = Queues();
        return PapersPage.Create(new PapersModel(
            name,
            [.. report.Ready.Select(s => new Choice(s.Order, s.Order, wish.Orders.Contains(s.Order), printed.Contains(s.Order) ? "printed" : ""))],
            kinds,
            LabelsOf(wish.Used, papers),
            [.. queues.Select(q => new Choice(q, q, q == wish.Printer))],
            note,
            wish.Printer.Length > 0 && PrinterScales.Of(wish.Printer, catalog.Folder) is null ? wish.Printer : "",
            [.. (drawn?.Papers ?? []).Select((p, i) => new PaperView(i, p, Capital(p.Name), Math.Min(p.Pages, MostShown)))],
            drawn?.Problems ?? [],
            QueryOf(wish)));
    }

    private static IResult Picture(string name, int paper, int page, int dpi, HttpContext context, PaperDesk papers)
    {
        if (!Resolutions.Contains(dpi) || papers.Draw(WishOf(name, context.Request.Query), context.RequestAborted) is not { } drawn
            || paper < 0 || paper >= drawn.Papers.Count || page < 0 || page >= drawn.Papers[paper].Pages)
        {
            return Results.NotFound();
        }

        var picture = new MemoryStream();
        drawn.WritePicture(paper, page, dpi, picture);
        return Results.Bytes(picture.ToArray(), "image/png");
    }

    private static async Task<IResult> Make(string name, HttpContext context, PaperDesk papers)
    {
        var form = await context.Request.ReadFormAsync(context.RequestAborted);
        var wish = WishOf(name, form);
        if (wish.Orders.Count == 0)
        {
            throw new TagendException("No set is chosen: tick what is to be printed.") { Blame = Blame.WrongValue };
        }

        var made = papers.Make(wish, CancellationToken.None);
        List<string> notes = [];
        if (made.Entry is { } entry)
        {
            notes.Add($"{Workshop.Counted.Of(entry.Added, "piece")} entered in the job book{(entry.Known > 0 ? $", {entry.Known} in it already" : "")}.");
        }

        if (made.Fault is { } fault)
        {
            notes.Add($"{fault.Reason}. Went on without the job book: {fault.Consequence}.");
        }

        if (made.Removed.Count > 0)
        {
            notes.Add($"Files of an earlier, larger run are gone: {string.Join(", ", made.Removed)}.");
        }

        return MadePart.Create(new MadeModel(
            name,
            [.. made.Papers.Select(p => new MadeView(Path.GetFileName(p.Paper.Path), Capital(Path.GetFileNameWithoutExtension(p.Paper.Path)), p.Paper.Pages, p.Job, p.Refusal))],
            made.Orders,
            notes,
            made.Problems,
            papers.FolderOf(name),
            LabelsOf(null, papers) is { } labels ? labels with { IsUpdate = true } : null));
    }

    private static LabelSheet? LabelsOf(IReadOnlyList<int>? said, PaperDesk papers) => papers.SheetStock is { } stock
        ? new LabelSheet(stock.Title, stock.Rows, stock.Columns, papers.UsedOf(said), said is null)
        : null;

    /// <summary>A paper that was made; nothing else of the disk.</summary>
    private static IResult Download(string name, string file, PaperDesk papers)
    {
        var folder = new DirectoryInfo(papers.FolderOf(Path.GetFileName(name)));
        return folder.Exists && folder.EnumerateFiles("*.pdf").FirstOrDefault(f => f.Name == file) is { } pdf
            ? Results.File(pdf.FullName, "application/pdf", file)
            : Faults.Page(StatusCodes.Status404NotFound, "There is no such paper any more: make it again.");
    }

    private static IResult Fate(string job)
    {
        var (sentence, isOver, isGood) = PrintQueue.FateOf(job) switch
        {
            JobFate.Waiting => ("waits or prints", false, true),
            JobFate.Printed => ("printed, as the queue says", true, true),
            JobFate.Stopped => ("the queue gave it up: see the printer, then send it again", true, false),
            _ => ("the queue does not know it any more", true, true),
        };
        return JobPart.Create(new JobModel(job, sentence, isOver, isGood));
    }

    private static (IReadOnlyList<string> Queues, string Note) Queues()
    {
        try
        {
            var names = PrintQueue.Names();
            return (names, names.Count == 0 ? "There is no print queue: add the printer in the system's settings, or print the PDFs at actual size, 100 %." : "");
        }
        catch (TagendException e)
        {
            return ([], Capital(e.Message));
        }
    }

    private static PaperWish WishOf(string name, IEnumerable<KeyValuePair<string, Microsoft.Extensions.Primitives.StringValues>> fields)
    {
        var values = fields.ToDictionary(f => f.Key, f => f.Value.OfType<string>().ToList());
        List<string> Of(string key) => values.GetValueOrDefault(key) ?? [];
        int? Number(string text) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number is >= 1 and <= 200 ? number : null;
        var printer = Of("printer").FirstOrDefault() ?? "";
        return new PaperWish(
            name,
            [.. Of("order").Select(o => NameReader.TryReadOrder(o, out var order, out _) ? order : o)],
            [.. Of("kind").Where(k => PageKinds.All.Any(p => p.Name == k))],
            Of("labels").Count > 0 ? [.. Of("used").Select(Number).OfType<int>().Distinct().Order()] : null,
            Catalog.PrinterScaleFile.CanName(printer) ? printer : "");
    }

    private static string QueryOf(PaperWish wish) => string.Join('&', new[] { ("order", wish.Orders), ("kind", wish.Kinds) }
        .SelectMany(f => f.Item2.Select(v => $"{f.Item1}={Uri.EscapeDataString(v)}"))
        .Concat(wish.Used is null ? [] : wish.Used.Select(s => FormattableString.Invariant($"used={s}")).Prepend("labels=said"))
        .Append($"printer={Uri.EscapeDataString(wish.Printer)}"));

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
