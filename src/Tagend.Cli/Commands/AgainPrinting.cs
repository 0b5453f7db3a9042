using Tagend.Specs;
using Tagend.Streams;
using Tagend.Workshop.Books;
using Tagend.Workshop.Printing;

namespace Tagend.Commands;

/// <summary>Prints and orders tags again, and says what came of it.</summary>
/// <param name="run">Null where the templates have mistakes: nothing is made then.</param>
/// <param name="ownsOutput">Orders go to standard output, which nothing else may be written to then.</param>
internal sealed class AgainPrinting(AgainRun? run, RunBook book, bool ownsOutput)
{
    private bool _isFaultSaid;

    public bool OwnsOutput => ownsOutput;

    /// <param name="specs">Of one tag; none where its code carries none.</param>
    /// <returns>Whether something was printed.</returns>
    public bool Add(IReadOnlyList<BuildSpec> specs)
    {
        if (run is null || specs.Count == 0)
        {
            return false;
        }

        var made = run.Add(specs);
        if (book.Fault is not null && !_isFaultSaid)
        {
            Say.Fault(book);
            _isFaultSaid = true;
        }

        Say.Problems(made.Problems);
        var output = ownsOutput ? Console.Error : Console.Out;
        foreach (var paper in made.Papers)
        {
            output.WriteLine(Say.Of(paper));
        }

        if (made.Entry is { } entry)
        {
            output.WriteLine(Say.Of(entry));
        }

        return made.Papers.Count > 0;
    }

    /// <summary>Writes the order file of all tags.</summary>
    public int End()
    {
        if (run?.Orders() is { } orders)
        {
            Terminal.Output.Write(orders);
        }

        return run is null || run.HasRefusals ? ExitCode.Problems : book.Fault is not null ? ExitCode.World : ExitCode.Done;
    }
}
