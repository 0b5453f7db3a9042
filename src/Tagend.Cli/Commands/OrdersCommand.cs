using System.CommandLine;
using Tagend.Options;
using Tagend.Streams;
using Tagend.Texts;
using Tagend.Workshop;
using Tagend.Workshop.Books;
using Tagend.Workshop.Checks;
using Tagend.Workshop.Json;

namespace Tagend.Commands;

/// <summary><c>tagend orders</c>: what is due, and how far each order has come.</summary>
internal static class OrdersCommand
{
    public static Command Create(string name)
    {
        var options = new OrdersOptions();
        var command = new Command(name, "Lists orders by due date, with the state of each; without those that are shipped or cancelled.");
        options.AddTo(command);
        command.SetAction(parsed => Run(options, parsed));
        return command;
    }

    private static int Run(OrdersOptions options, ParseResult parsed)
    {
        if (options.Shop.ReadCatalog(parsed) is not { } catalog)
        {
            return ExitCode.Problems;
        }

        var file = options.FilesOf(parsed) is { Length: > 0 } files ? OrderFiles.Read(files, catalog, MapOption.Of(null)) : null;
        Say.Problems(file?.Problems ?? []);
        var today = DateOption.Of(null);
        using var book = options.Shop.Open(parsed, catalog);
        var orders = options.Ordered(parsed, OrderList.Of(book, options.IsOpenOnly(parsed), file, catalog.Shop.Dates, today)).ToList();
        if (parsed.GetValue(options.Json))
        {
            JsonList.Write(Terminal.Output, orders);
        }
        else
        {
            var hasBenches = orders.SelectMany(o => o.Benches).Distinct().Skip(1).Any();
            orders.ForEach(order => Console.WriteLine(ListedOrderText.Of(order, today, hasBenches)));
            Console.WriteLine(Counted.Of(orders.Count, "order"));
        }

        return file?.Problems.Count > 0 ? ExitCode.Problems : ExitCode.Done;
    }
}

/// <summary>The options of <c>orders</c>.</summary>
internal sealed class OrdersOptions
{
    private const string AllStates = "all";

    private static readonly string[] States = [.. Enum.GetValues<OrderState>().Select(OrderList.Word), AllStates];

    private readonly Argument<string[]> _files = new Argument<string[]>("ORDERS.csv")
    {
        Description = "Order files; their orders count as new until they are printed.",
        Arity = ArgumentArity.ZeroOrMore,
    }.NamesSomething();

    private readonly Option<string?> _state = new Option<string?>("--state")
    {
        Description = "Only orders in this state. Default: all but shipped and cancelled ones.",
        HelpName = string.Join('|', States),
    }.TakesOneOf(States);

    private readonly Option<string?> _who = new("--who") { Description = "Only orders that this builder worked on, as named with built --who.", HelpName = "TEXT" };
    private readonly Option<string?> _bench = new("--bench") { Description = "Only orders that were printed or built at this bench.", HelpName = "TEXT" };
    private readonly Option<DateOnly?> _until = DateOption.Create("--due", "Only orders due on this date or earlier.");

    private readonly Option<string> _by = new Option<string>("--by")
    {
        Description = "What they are listed by.",
        HelpName = "due|state|bench",
        DefaultValueFactory = _ => "due",
    }.TakesOneOf("due", "state", "bench");

    public BookOptions Shop { get; } = new();

    public Option<bool> Json { get; } = new("--json") { Description = "A list, one object an order, for scripts." };

    public void AddTo(Command command)
    {
        command.Arguments.Add(_files);
        foreach (var option in new Option[] { _state, _who, _bench, _until, _by, Json })
        {
            command.Options.Add(option);
        }

        Shop.AddTo(command);
    }

    public string[] FilesOf(ParseResult parsed) => parsed.GetValue(_files) ?? [];

    /// <summary>Whether orders that are shipped or cancelled are not wanted.</summary>
    public bool IsOpenOnly(ParseResult parsed) =>
        parsed.GetValue(_state) is not { } state || (state != AllStates && state != OrderList.Word(OrderState.Shipped) && state != OrderList.Word(OrderState.Cancelled));

    /// <summary>Those that are wanted, in the order that is wanted.</summary>
    public IEnumerable<ListedOrder> Ordered(ParseResult parsed, IEnumerable<ListedOrder> orders)
    {
        var (state, who, bench, until) = (parsed.GetValue(_state), parsed.GetValue(_who), parsed.GetValue(_bench), parsed.GetValue(_until));
        var wanted = orders.Where(o =>
            (state is null or AllStates || OrderList.Word(o.State) == state)
            && (who is null || o.Builders.Contains(who, StringComparer.OrdinalIgnoreCase))
            && (bench is null || o.Benches.Contains(bench, StringComparer.OrdinalIgnoreCase))
            && (until is null || o.Due <= until));
        return parsed.GetValue(_by) switch
        {
            "state" => wanted.OrderBy(o => o.State),
            "bench" => wanted.OrderBy(o => o.Benches.LastOrDefault() ?? "", StringComparer.OrdinalIgnoreCase),
            _ => wanted,
        };
    }
}
