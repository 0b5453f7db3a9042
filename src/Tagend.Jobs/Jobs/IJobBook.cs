using Tagend.Problems;
using Tagend.Specs;

namespace Tagend.Jobs;

/// <summary>The shop's memory: every printed spec, and what was really built of it.</summary>
/// <remarks>
/// What a method has acknowledged by returning is safe from then on. Customers' names are in a book; the tags have none.
/// A book is opened for one run and used by one thread. Every method throws <see cref="TagendException"/>, whose message is
/// a sentence for the user, where the book cannot be used; nothing of a write that threw is in the book.
/// </remarks>
public interface IJobBook : IDisposable
{
    /// <summary>Orders to ask for at once, where many are gone through: a question takes as long as the specs of some pieces, and on a server longer.</summary>
    const int OrdersAtOnce = 64;

    /// <summary>The shop's spools.</summary>
    ISpools Spools { get; }

    /// <summary>Enters specs as printed, all of them or none.</summary>
    /// <remarks>
    /// A spec that is in the book already, letter for letter, stays as it is; what is printed beside it, such as the due date,
    /// becomes as it is now where something is given.
    /// </remarks>
    /// <returns>The number of specs that are new.</returns>
    int Record(IEnumerable<Build> builds);

    /// <summary>
    /// Logs what was built of a spec, and takes from its spools what it used. A spec that the book does not have is entered
    /// first.
    /// </summary>
    /// <param name="key">
    /// The name of this one write, chosen by the caller. The same key again enters nothing and returns what was entered, so
    /// a write whose answer was lost can be sent again.
    /// </param>
    LoggedBuild Log(BuildSpec spec, AsBuilt built, Guid key);

    /// <summary>
    /// Logs a build as <see cref="Log"/> does, but only where none of the piece stands, as <see cref="Stands"/> finds it: of
    /// several that are logged at the same instant, one is.
    /// </summary>
    /// <param name="key">The name of this one write, as of <see cref="Log"/>.</param>
    /// <returns>Null where a build stands, and nothing was logged.</returns>
    LoggedBuild? LogFirst(BuildSpec spec, AsBuilt built, Guid key);

    /// <summary>Finds the last build of a piece by these papers that stands: another one may be the same, scanned twice.</summary>
    /// <returns>Null where there is none.</returns>
    LoggedBuild? Stands(BuildSpec spec);

    /// <summary>Finds the build that a write has entered.</summary>
    /// <param name="key">The name of the write, as of <see cref="Log"/>.</param>
    /// <returns>Null where it has entered none.</returns>
    LoggedBuild? Logged(Guid key);

    /// <summary>
    /// Logs other values for a build; the first ones stay in the book, nothing is learned from them, and what they took from
    /// spools is on them again.
    /// </summary>
    /// <param name="number">Of a build that was not struck.</param>
    /// <param name="who">Who corrects it; may be empty.</param>
    /// <param name="reason">May be empty.</param>
    /// <param name="key">The name of this one write, as of <see cref="Log"/>.</param>
    /// <returns>The build that stands for it.</returns>
    /// <exception cref="TagendException">The number is of no build, or of one that was struck.</exception>
    LoggedBuild Correct(long number, AsBuilt built, string who, string reason, Guid key);

    /// <summary>
    /// Strikes a build that is none; it stays in the book, nothing is learned from it, and what it took from spools is on them
    /// again.
    /// </summary>
    /// <param name="number">Of a build that was not struck.</param>
    /// <param name="who">Who strikes it; may be empty.</param>
    /// <param name="reason">May be empty.</param>
    /// <param name="key">The name of this one write, as of <see cref="Log"/>.</param>
    /// <exception cref="TagendException">The number is of no build, or of one that was struck.</exception>
    void Strike(long number, string who, string reason, Guid key);

    /// <summary>Enters in the log what became of the pieces of an order, which have that state from then on.</summary>
    /// <remarks>What is cancelled is not shipped or made again, and what is shipped is not cancelled, before it is reopened.</remarks>
    /// <param name="order">The order's number, in capitals as in the book.</param>
    /// <param name="piece">The piece's name, in lower case as in the book; null for all of the order.</param>
    /// <param name="what">What becomes of pieces: neither corrected nor struck, which builds are.</param>
    /// <param name="who">May be empty.</param>
    /// <param name="reason">May be empty.</param>
    /// <param name="key">The name of this one write, as of <see cref="Log"/>.</param>
    /// <returns>All issues of those pieces as they are now, in the order of printing.</returns>
    /// <exception cref="TagendException">The book has no such order or piece.</exception>
    IReadOnlyList<PrintedJob> Enter(string order, string? piece, EventKind what, string who, string reason, Guid key);

    /// <summary>Reads the log of an order: what became of it beside being printed and built, in the order of logging.</summary>
    IReadOnlyList<BookEvent> Events(string order);

    /// <summary>Finds the job that a build is of; null where there is no such build.</summary>
    PrintedJob? WithBuild(long number);

    /// <summary>Says who logged the last build at this bench.</summary>
    /// <returns>Empty where nobody did lately.</returns>
    string LastBuilder();

    /// <summary>Says where this bench's part-used sheet of a label stock goes on.</summary>
    /// <returns>The first free label, from 1; null where no sheet of the stock was begun.</returns>
    int? NextLabel(string stock);

    /// <summary>Keeps where this bench's part-used sheet of a label stock goes on.</summary>
    /// <param name="next">The first free label, from 1; 1 where the next sheet is a whole one.</param>
    void KeepLabel(string stock, int next);

    /// <summary>Takes builds out of the fit, or back in, all of them or none.</summary>
    /// <exception cref="TagendException">A number is of no build.</exception>
    void LeaveOut(IReadOnlyCollection<long> numbers, bool isLeftOut);

    /// <summary>Takes a customer's name out of the book, and the notes beside it. The jobs and their builds stay.</summary>
    /// <param name="customer">The whole name, in any case.</param>
    /// <returns>The number of jobs that had it.</returns>
    int Forget(string customer);

    /// <summary>Copies the book, as it is at one moment, into an empty one of any kind, whole or not at all.</summary>
    /// <param name="target">Where the other book is; one is begun where there is none.</param>
    /// <returns>The number of rows that were copied and read again there.</returns>
    /// <exception cref="TagendException">The other book is not empty.</exception>
    int CopyTo(JobBookAddress target);

    /// <summary>Finds jobs, each with its builds, in the order of printing or the newest first; where dates are asked for, by the date of issue before that.</summary>
    /// <returns>
    /// The jobs as they are read, some hundred at a time, so that a long list takes little memory and no writer waits for its
    /// reader.
    /// </returns>
    IEnumerable<PrintedJob> Find(JobSearch search);

    /// <summary>Reads all that the book has of some orders at once: a book on a server takes as long for a hundred as for one.</summary>
    /// <param name="orders">Their numbers, in capitals as in the book; some hundred at most.</param>
    /// <returns>The jobs of all of them, each with its builds, in the order of printing.</returns>
    IReadOnlyList<PrintedJob> JobsOf(IReadOnlyCollection<string> orders);

    /// <summary>Reads all jobs with builds, for the fit.</summary>
    /// <returns>Every job that has a build, in the order of printing; a book that has lost one is damaged and says so.</returns>
    IReadOnlyList<PrintedJob> Built();

    /// <summary>Says in which state the builds are, without reading them.</summary>
    /// <returns>A text that is another one where a build was logged, corrected, struck, left out of the fit or taken back in.</returns>
    string StateOfBuilds();

    /// <summary>Finds the issue of a piece that was printed last.</summary>
    /// <param name="order">The order's number, in capitals as in the book.</param>
    /// <param name="piece">The piece's name, in lower case as in the book.</param>
    /// <returns>The job with its builds; null where the piece was never printed.</returns>
    PrintedJob? Newest(string order, string piece);
}
