using System.CommandLine;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Workshop;
using Tagend.Workshop.Books;
using Tagend.Workshop.Checks;

namespace Tagend.Commands;

/// <summary><c>tagend orders</c>: what is due, and how far each order has come.</summary>
internal static class OrdersCommand
{
    private static readonly (string Word, OrderState State)[] States =
        [("new", OrderState.New), ("printed", OrderState.Printed), ("part-built", OrderState.PartBuilt), ("built", OrderState.Built)];

    public static Command Create()
    {
        var files = new Argument<string[]>("ORDERS.csv")
        {
            Description = "Order files; their orders count as new until they are printed.",
            Arity = ArgumentArity.ZeroOrMore,
        };
        var state = new Option<string?>("--state") { Description = "Only orders in this state.", HelpName = string.Join('|', States.Select(s => s.Word)) }
            .AcceptOnlyFromAmong([.. States.Select(s => s.Word)]);
        var who = new Option<string?>("--who") { Description = "Only orders that this builder worked on, as named with built --who.", HelpName = "TEXT" };
        var until = DateOption.Create("--due", "Only orders due on this date or earlier.");
        var shop = new BookOptions();
        var command = new Command("orders", "Lists orders by due date, with the state of each.") { files, state, who, until };
        shop.AddTo(command);
        command.SetAction(parsed => Run(
            shop, parsed, parsed.GetValue(files) ?? [], Chosen(parsed.GetValue(state), parsed.GetValue(who), parsed.GetValue(until))));
        return command;
    }

    private static Func<ListedOrder, bool> Chosen(string? state, string? who, DateOnly? until) => order =>
        (state is null || States.First(s => s.Word == state).State == order.State)
        && (who is null || order.Builders.Contains(who, StringComparer.OrdinalIgnoreCase))
        && (until is null || order.Due <= until);

    private static int Run(BookOptions options, ParseResult parsed, string[] files, Func<ListedOrder, bool> isChosen)
    {
        if (options.ReadCatalog(parsed) is not { } catalog)
        {
            return ExitCode.Problems;
        }

        var file = files.Length > 0 ? Read(files, catalog) : null;
        var today = DateOption.Of(null);
        using var book = options.Open(parsed, catalog);
        var orders = OrderList.Of(book.Find(new Tagend.Jobs.JobSearch()), file, catalog.Shop.Dates, today).Where(isChosen).ToList();
        foreach (var order in orders)
        {
            Console.WriteLine(Line(order, today));
        }

        Console.WriteLine(Counted.Of(orders.Count, "order"));
        return file?.Problems.Count > 0 ? ExitCode.Problems : ExitCode.Done;
    }

    private static OrderFile Read(string[] files, ShopCatalog catalog)
    {
        var file = OrderFiles.Read(files, catalog);
        Say.Problems(file.Problems);
        return file;
    }

    /// <summary>One line, for it is read on narrow terminals and by other programs: due first, then who, then what is left.</summary>
    private static string Line(ListedOrder order, DateOnly today)
    {
        var due = order.Due is { } day ? $"due {DateWriter.Iso(day)}" : order.DueText.Length > 0 ? $"due \"{order.DueText}\"" : "no date";
        var late = order.Due < today && order.State != OrderState.Built ? ", late" : "";
        var state = States.First(s => s.State == order.State).Word;
        var left = order.State switch
        {
            OrderState.PartBuilt => $", still to build: {string.Join(", ", order.Unbuilt)}",
            OrderState.Built => order.Builders.Count > 0 ? $" by {string.Join(", ", order.Builders)}" : "",
            _ => $": {string.Join(", ", order.Pieces)}",
        };
        var whose = string.Concat(new[] { order.Customer, order.Bow }.Where(t => t.Length > 0).Select(t => $", {t}"));
        return $"{order.Order}  {due}{late}  {state}{left}{whose}".ReplaceLineEndings(" ");
    }
}
