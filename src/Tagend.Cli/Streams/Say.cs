using Tagend.Output;
using Tagend.Problems;
using Tagend.Workshop;
using Tagend.Workshop.Books;
using Tagend.Workshop.Printing;

namespace Tagend.Streams;

/// <summary>Words on the terminal that several commands have.</summary>
internal static class Say
{
    /// <summary>A sentence of the program itself, on standard error.</summary>
    public static void Error(string sentence) => Console.Error.WriteLine($"tagend: {sentence}");

    public static void Problems(IEnumerable<Problem> problems)
    {
        foreach (var problem in problems)
        {
            Console.Error.WriteLine(problem);
        }
    }

    public static string Of(BookEntry entry) =>
        $"{entry.Book}: {Counted.Of(entry.Added, "piece")} entered in the job book" + (entry.Known > 0 ? $", {entry.Known} in it already" : "");

    public static string Of(PrintedPaper paper) => $"{paper.Path}: {Counted.Of(paper.Pages, "page")}";

    /// <summary>Sends a paper to a queue and says so.</summary>
    /// <exception cref="TagendException">There is no queue, or it refused.</exception>
    public static void Sent(PrintedPaper paper, string printer)
    {
        var job = PrintQueue.Send(printer, paper.Path, paper.Title, paper.Paper);
        Console.WriteLine($"{paper.Path}: sent to {printer}, job {job}");
    }

    /// <summary>What a job book failed at, if it did.</summary>
    public static void Fault(RunBook book)
    {
        if (book.Fault is { } fault)
        {
            Error(fault.Reason);
            Error($"went on without the job book: {fault.Consequence}");
        }
    }
}
