using System.Diagnostics;
using System.Globalization;
using Tagend.Addresses;
using Tagend.Problems;

namespace Tagend.Books;

/// <summary>A program that enters pieces and builds in a book, each with the book opened anew, and notes what was acknowledged.</summary>
public sealed class Writer(string address, string journal, string name, int first, int count)
{
    private const string Verb = "write";

    /// <summary>Of the builds that it enters, each with a number from <c>first</c> on.</summary>
    public string Name => name;

    /// <summary>The numbers that the book has acknowledged.</summary>
    public IReadOnlyList<int> Acknowledged =>
        File.Exists(journal) ? [.. File.ReadLines(journal).Where(l => l.EndsWith('.')).Select(l => int.Parse(l[..^1], CultureInfo.InvariantCulture))] : [];

    /// <summary>Whether it has begun, and something was acknowledged.</summary>
    public bool IsWriting => new FileInfo(journal) is { Exists: true, Length: > 0 };

    /// <summary>As the command line says it; null where it says something else.</summary>
    public static Writer? Of(string[] args) => args is [Verb, var address, var journal, var name, var first, var count]
        ? new Writer(address, journal, name, int.Parse(first, CultureInfo.InvariantCulture), int.Parse(count, CultureInfo.InvariantCulture))
        : null;

    /// <summary>How many writings the book has refused with a sentence.</summary>
    public int Refused => File.Exists(journal) ? File.ReadLines(journal).Count(l => l.EndsWith('!')) : 0;

    public static string OrderOf(string name, int number) => FormattableString.Invariant($"{name}-{number}");

    /// <summary>Runs in a program of its own.</summary>
    /// <param name="root">The folder that holds Tagend.slnx.</param>
    public Process Start(string root) => Process.Start(new ProcessStartInfo(
        "dotnet",
        [
            typeof(Writer).Assembly.Location, Verb, address, journal, name, first.ToString(CultureInfo.InvariantCulture), count.ToString(CultureInfo.InvariantCulture),
        ])
    { WorkingDirectory = root })!;

    /// <summary>Writes from where the journal ends.</summary>
    /// <param name="root">The folder that holds Tagend.slnx.</param>
    public void Run(string root)
    {
        var pieces = new Pieces(root);
        using var acknowledged = new StreamWriter(new FileStream(journal, FileMode.Append)) { AutoFlush = true };
        for (var number = first; number < first + count; number++)
        {
            try
            {
                using var book = JobBookAddressReader.Read(address).OpenOrBegin(TimeProvider.System);
                var piece = pieces.Of(OrderOf(name, number));
                book.Record([piece]);
                book.Log(piece.Spec, pieces.Built(["H88-4"]), Guid.NewGuid());
                acknowledged.WriteLine(FormattableString.Invariant($"{number}."));
            }
            catch (TagendException e)
            {
                // Not acknowledged: it may be there or not, and the next one is tried, as a bench would.
                acknowledged.WriteLine($"{e.Message}!");
                Thread.Sleep(100);
            }
        }
    }
}
