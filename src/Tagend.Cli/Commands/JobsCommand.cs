using System.CommandLine;
using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Options;
using Tagend.Orders;
using Tagend.Problems;
using Tagend.Streams;
using Tagend.Tags;
using Tagend.Workshop;
using Tagend.Workshop.Books;
using Tagend.Workshop.Json;

namespace Tagend.Commands;

/// <summary><c>tagend jobs</c>: finds what was printed, and what was built of it.</summary>
internal static class JobsCommand
{
    /// <summary>Jobs of a table; a longer list has several, so that it takes little memory.</summary>
    private const int ShownAtOnce = 500;

    public static Command Create(string name)
    {
        var options = new JobsOptions();
        var command = new Command(name, "Finds printed pieces in the job book by order, piece, customer, bow or date, with what was built of each.");
        options.AddTo(command);
        command.SetAction(parsed => Run(options, parsed));
        return command;
    }

    private static int Run(JobsOptions options, ParseResult parsed)
    {
        if (options.Shop.ReadCatalog(parsed) is not { } catalog)
        {
            return ExitCode.Problems;
        }

        using var book = options.Shop.Open(parsed, catalog);
        var (tally, search, unit) = (new JobTally(), options.SearchOf(parsed), catalog.Shop.Unit);
        var jobs = tally.Follow(book.Find(search));
        if (parsed.GetValue(options.Json))
        {
            JsonList.Write(Terminal.Output, jobs);
            return ExitCode.Done;
        }

        var file = parsed.GetValue(options.Csv);
        if (file is not null)
        {
            JobsFile.Write(file, jobs, unit);
        }
        else
        {
            foreach (var part in jobs.Chunk(ShownAtOnce))
            {
                Show(part, unit);
            }
        }

        Console.WriteLine((file is null ? "" : $"{file}: ") + $"{Counted.Of(tally.Pieces, "piece")}, {Counted.Of(tally.Builds, "build")}");
        if (search.Lot is not null)
        {
            ShowCustomers(tally.Customers);
        }

        return ExitCode.Done;
    }

    /// <summary>Whom to call about a lot.</summary>
    private static void ShowCustomers(IReadOnlyList<ListedCustomer> customers)
    {
        foreach (var (name, orders) in customers)
        {
            Console.WriteLine($"{(name.Length > 0 ? ShownText.Of(name.ReplaceLineEndings(" ")) : "without a name")}: {(orders.Count == 1 ? "order" : "orders")} {string.Join(", ", orders)}");
        }
    }

    private static void Show(PrintedJob[] jobs, LengthUnit unit)
    {
        var table = new TextTable(wraps: 6, "piece", "rev", "date", "state", "length", "posts", "");
        foreach (var job in jobs)
        {
            table.Add(RowOf(job, unit));
            job.Builds.ToList().ForEach(b => table.Add(RowOf(b, unit)));
        }

        table.Write();
    }

    private static string[] RowOf(PrintedJob job, LengthUnit unit) =>
    [
        $"{job.Order}/{job.Piece}", FormattableString.Invariant($"{job.Revision}"), DateWriter.Iso(job.Issued), StateWords.Of(job.State),
        LengthWriter.Mark(job.FinishedLength, unit), LengthWriter.Setting(TapeOf(job), unit),
        string.Join(", ", new[] { job.Customer, job.Bow }.Where(t => t.Length > 0)),
    ];

    /// <summary>The posts as the card has them: the mark of the tape that they were set by, which the tag knows.</summary>
    private static Length TapeOf(PrintedJob job) => TagReader.Read(job.Tag) is TagReading.Piece printed ? printed.Spec.Posts.Tape : job.Posts;

    private static string[] RowOf(LoggedBuild logged, LengthUnit unit)
    {
        var done = logged.Built;
        string[] texts =
        [
            FormattableString.Invariant($"{done.Turns:0.##} turns"), done.Who, done.Lots.Count > 0 ? $"lots {string.Join(", ", done.Lots)}" : "",
            logged.Replaces > 0 ? FormattableString.Invariant($"in place of build {logged.Replaces}") : "", logged.IsLeftOut ? "left out of the fit" : "",
        ];
        return
        [
            FormattableString.Invariant($"  build {logged.Number}"), "", DateWriter.Iso(DateOnly.FromDateTime(logged.LoggedAt.LocalDateTime)),
            logged.IsStruck ? "struck" : "", LengthWriter.Mark(done.Measured, unit), LengthWriter.Mark(done.Posts, unit),
            string.Join(", ", texts.Where(t => t.Length > 0)),
        ];
    }
}

/// <summary>The options of <c>jobs</c>.</summary>
internal sealed class JobsOptions
{
    private readonly Option<string?> _order = new("--order") { Description = "Only this order.", HelpName = "NUMBER" };
    private readonly Option<string?> _piece = new("--piece") { Description = "Only pieces of this name.", HelpName = "NAME" };
    private readonly Option<string?> _customer = new("--customer") { Description = "Only where the customer contains this text, in any case.", HelpName = "TEXT" };
    private readonly Option<string?> _bow = new("--bow") { Description = "Only where the bow contains this text, in any case.", HelpName = "TEXT" };
    private readonly Option<DateOnly?> _from = DateOption.Create("--from", "Only pieces issued on this date or later.");
    private readonly Option<DateOnly?> _to = DateOption.Create("--to", "Only pieces issued on this date or earlier.");
    private readonly Option<string?> _lot = new("--lot") { Description = "Only pieces built from this lot of material or thread.", HelpName = "LOT" };
    private readonly Option<bool> _built = new("--built") { Description = "Only pieces that were logged as built." };

    public BookOptions Shop { get; } = new();

    public Option<bool> Json { get; } = new("--json") { Description = "A JSON list with one object per piece, for scripts." };

    public Option<string?> Csv { get; } = new Option<string?>("--csv") { Description = "Write a CSV file instead, one row per build.", HelpName = "FILE" }.NamesSomething();

    public void AddTo(Command command)
    {
        foreach (var option in new Option[] { _order, _piece, _customer, _bow, _from, _to, _lot, _built, Json, Csv })
        {
            command.Options.Add(option);
        }

        Shop.AddTo(command);
    }

    public JobSearch SearchOf(ParseResult parsed) => new()
    {
        Order = parsed.GetValue(_order) is { } o ? NameReader.TryReadOrder(o, out var order, out _) ? order : o : null,
        Piece = parsed.GetValue(_piece) is { } p ? NameReader.TryReadName(p, out var piece, out _) ? piece : p : null,
        Customer = parsed.GetValue(_customer),
        Bow = parsed.GetValue(_bow),
        From = parsed.GetValue(_from),
        To = parsed.GetValue(_to),
        Lot = parsed.GetValue(_lot)?.Trim(),
        IsBuilt = parsed.GetValue(_built),
    };
}
