using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Specs;
using Tagend.Tags;
using Tagend.Workshop.Readings;

namespace Tagend.Workshop.Books;

/// <summary>The piece that a text names, or what is wrong with the text.</summary>
/// <param name="Spec">Null where the text names no piece that is known.</param>
/// <param name="Error">What is wrong and what to do; null where there is a spec.</param>
public sealed record FoundPiece(BuildSpec? Spec, string? Error);

/// <summary>What became of a build that was given in full.</summary>
/// <param name="Logged">Null where it was not logged.</param>
/// <param name="Before">A build of the piece that stands already, so that this may be the same one scanned twice; nothing is logged then.</param>
/// <param name="Error">What is wrong; null where it was logged, or there is one before.</param>
/// <param name="IsPieceKnown">The piece was found, so that an error is in the values, and begins with the name of a question.</param>
public sealed record LogAnswer(LoggedPiece? Logged, LoggedPiece? Before, string? Error, bool IsPieceKnown);

/// <summary>Values of a build that were read.</summary>
/// <param name="Built">Null where one of them cannot be read.</param>
/// <param name="Question">The name of the one that cannot; empty where all can.</param>
/// <param name="Error">What was found and what was expected; empty where all can be read.</param>
/// <param name="Meant">What was meant, as it seems; null where nothing seems so.</param>
public sealed record BuildReading(AsBuilt? Built, string Question, string Error, string? Meant);

/// <summary>A build in the log, with the spec it was built to.</summary>
public sealed record LoggedPiece(BuildSpec Spec, LoggedBuild Build)
{
    /// <summary>The spools it was made from, as they are now.</summary>
    public IReadOnlyList<KeptSpool> Spools { get; init; } = [];
}

/// <summary>Finds the pieces that builds are logged for, and logs them.</summary>
/// <param name="book">The shop's job book.</param>
/// <param name="unit">The unit of numbers without one.</param>
/// <param name="shelf">The shop's spools, which builds are taken from; null where they are left alone.</param>
public sealed class BenchLog(IJobBook book, LengthUnit unit, SpoolShelf? shelf = null)
{
    private const string Spools = "spools";

    /// <summary>The piece a text names: a tag's text, or an order and piece that were printed.</summary>
    public FoundPiece Find(string text) => TagReader.Read(text) switch
    {
        TagReading.Piece piece => new FoundPiece(piece.Spec, null),
        TagReading.Bag bag => Unknown(
            $"this is the tag of a bag that holds {string.Join(", ", bag.Contents.Select(c => c.Piece))}: scan the card or the loop tag of one piece"),
        TagReading.Spool spool => Unknown($"this is the tag of spool {spool.Received.Number}: scan the card or the loop tag of a piece"),
        TagReading.Damaged damaged => Unknown(damaged.Message),
        TagReading.Later later => Unknown(later.Message),
        _ => PieceName.Read(text.Trim(), out var error) is { } name ? Printed(name) : Unknown(error),
    };

    /// <summary>The values that the card asks for, made from the spools at this bench; only the length must be answered.</summary>
    public AsBuilt CardOf(BuildSpec spec) => WithMounted(spec, BuiltQuestion.CardOf(spec));

    /// <summary>The same values, made from the spools that are at this bench now.</summary>
    public AsBuilt WithMounted(BuildSpec spec, AsBuilt built) =>
        shelf is null ? built : built with { Spools = shelf.UsesOf(spec, shelf.MountedFor(spec)).Uses };

    /// <summary>What is asked of a build; spools only where the shop has some that it may be made from.</summary>
    /// <param name="spec">Of the piece.</param>
    /// <param name="who">Who it is where nobody is named; may be empty.</param>
    public IEnumerable<BuiltQuestion> Questions(BuildSpec spec, string who = "") =>
        [.. BuiltQuestion.Of(spec, unit, who), .. shelf?.Serves(spec) == true ? new[] { SpoolQuestion(spec, shelf) } : []];

    /// <summary>A question as it stands now: which spools are at the bench may have changed since it was put.</summary>
    public BuiltQuestion Again(BuiltQuestion question, BuildSpec spec) => question.Name == Spools && shelf is not null ? SpoolQuestion(spec, shelf) : question;

    /// <summary>Takes a spool to the bench.</summary>
    /// <param name="text">Its tag's text.</param>
    /// <returns>What there is to say of it.</returns>
    /// <exception cref="Problems.TagendException">The book cannot be used.</exception>
    public string Mount(string text)
    {
        if (shelf is null)
        {
            return "this is the tag of a spool: scan a card";
        }

        var found = shelf.Find(text);
        return found.Spool is { } spool ? SpoolWording.Mounted(shelf.Mount(spool), unit) : found.Error!;
    }

    /// <summary>Logs a build of a piece; what is not given is as the card has it, and made from the spools at the bench.</summary>
    /// <param name="piece">A text that <see cref="Find"/> reads.</param>
    /// <param name="given">Answers by the names of their questions.</param>
    /// <param name="isAnother">It is another one, where a build of the piece stands already.</param>
    /// <param name="key">The name of this write, which enters nothing where it did before; null for one that is not sent again.</param>
    public LogAnswer Log(string piece, IReadOnlyDictionary<string, string> given, bool isAnother, Guid? key = null)
    {
        var found = Find(piece);
        if (found.Spec is not { } spec)
        {
            return new LogAnswer(null, null, found.Error, IsPieceKnown: false);
        }

        if (key is { } name && book.Logged(name) is { } known)
        {
            return new LogAnswer(Now(spec, known), null, null, IsPieceKnown: true);
        }

        var reading = Read(spec, given);
        return reading.Built is not { } built ? Refused(reading)
            : isAnother ? new LogAnswer(Log(spec, built, key), null, null, IsPieceKnown: true)
            : LogFirst(spec, built, key) is { } logged ? new LogAnswer(logged, null, null, IsPieceKnown: true)
            : new LogAnswer(null, Before(spec), null, IsPieceKnown: true);
    }

    /// <summary>Reads the values of a build without logging them; what is not given is as the card has it, and made from the spools at the bench.</summary>
    /// <param name="given">Answers by the names of their questions.</param>
    public BuildReading Read(BuildSpec spec, IReadOnlyDictionary<string, string> given)
    {
        var reading = Answered(spec, CardOf(spec), given);
        return reading.Built is not null && BuiltQuestion.Of(spec, unit).FirstOrDefault(q => q.AsCarded is null && !given.ContainsKey(q.Name)) is { } missing
            ? new BuildReading(null, missing.Name, "is needed: it is what the log is for", null)
            : reading;
    }

    /// <summary>Puts other values in the place of a build's; what is not given is as it was logged.</summary>
    /// <param name="number">Of the build.</param>
    /// <param name="given">Answers by the names of their questions, but for who built it: that stays.</param>
    /// <param name="who">Who corrects it; may be empty.</param>
    /// <param name="reason">May be empty.</param>
    /// <param name="key">The name of this write, as of the other.</param>
    public LogAnswer Correct(long number, IReadOnlyDictionary<string, string> given, string who, string reason, Guid? key = null)
    {
        if (book.WithBuild(number) is not { } job || TagReader.Read(job.Tag) is not TagReading.Piece { Spec: var spec })
        {
            return new LogAnswer(null, null, $"there is no build {number} in the job book: check the number", IsPieceKnown: false);
        }

        var reading = Answered(spec, job.Builds.First(b => b.Number == number).Built, given);
        return reading.Built is { } built
            ? new LogAnswer(new LoggedPiece(spec, book.Correct(number, WithLots(built), who, reason, key ?? Guid.NewGuid())), null, null, IsPieceKnown: true)
            : Refused(reading);
    }

    /// <summary>Strikes a build that is none.</summary>
    /// <param name="number">Of the build.</param>
    /// <param name="who">Who strikes it; may be empty.</param>
    /// <param name="reason">May be empty.</param>
    /// <exception cref="Problems.TagendException">The number is of no build, or of one that counts no more.</exception>
    public void Strike(long number, string who, string reason) => book.Strike(number, who, reason, Guid.NewGuid());

    /// <summary>What must be known before a piece is built by this spec, each a sentence with its name; none where nothing must.</summary>
    public IReadOnlyList<string> NewsOf(BuildSpec spec) =>
        PieceNews.Of(PieceIssue.Of(spec), book);

    /// <summary>Who logged the last build at this bench; empty where nobody did lately.</summary>
    public string LastBuilder() => book.LastBuilder();

    /// <summary>The last build of a piece by these papers that stands: another one may be the same, scanned twice. Null where there is none.</summary>
    public LoggedPiece? Before(BuildSpec spec) => book.Stands(spec) is { } build ? new LoggedPiece(spec, build) : null;

    /// <summary>Enters a build: it is on the disk when this returns.</summary>
    /// <param name="key">The name of this write; null for one that is not sent again.</param>
    public LoggedPiece Log(BuildSpec spec, AsBuilt built, Guid? key = null) => Now(spec, book.Log(spec, WithLots(built), key ?? Guid.NewGuid()));

    /// <summary>Enters a build where none of the piece stands, which is asked and entered in one step.</summary>
    /// <param name="key">The name of this write; null for one that is not sent again.</param>
    /// <returns>Null where one stands: nothing was logged.</returns>
    public LoggedPiece? LogFirst(BuildSpec spec, AsBuilt built, Guid? key = null) =>
        book.LogFirst(spec, WithLots(built), key ?? Guid.NewGuid()) is { } logged ? Now(spec, logged) : null;

    private LoggedPiece Now(BuildSpec spec, LoggedBuild logged) => new(spec, logged) { Spools = shelf?.Now(logged.Built.Spools) ?? [] };

    private static LogAnswer Refused(BuildReading reading) => new(null, null, $"{reading.Question} {reading.Error}", IsPieceKnown: true);

    private static BuiltQuestion SpoolQuestion(BuildSpec spec, SpoolShelf shelf) => new(
        Spools,
        string.Join(", ", shelf.MountedFor(spec).Select(s => s.Spool.Number)),
        (built, text) => shelf.UsesOf(spec, text) is { Error: null } choice
            ? new BuiltAnswer(built with { Spools = choice.Uses }, null)
            : new BuiltAnswer(null, shelf.UsesOf(spec, text).Error));

    /// <summary>With the lots of its spools.</summary>
    private AsBuilt WithLots(AsBuilt built) => built with { Lots = built.Lots.Concat(shelf?.LotsOf(built.Spools) ?? []).Distinct().ToValueList() };

    /// <summary>The values with those that are given.</summary>
    private BuildReading Answered(BuildSpec spec, AsBuilt built, IReadOnlyDictionary<string, string> given)
    {
        var questions = Questions(spec).ToList();
        if (given.ContainsKey(Spools) && !questions.Exists(q => q.Name == Spools))
        {
            return new BuildReading(
                null, Spools, $"no spool in the job book is of what {spec.Order}/{spec.Piece} is made of: leave it out, or receive one first", null);
        }

        foreach (var question in questions.Where(q => given.ContainsKey(q.Name)))
        {
            var answer = question.Read(built, given[question.Name].Trim());
            if (answer.Built is null)
            {
                return new BuildReading(null, question.Name, answer.Error!, answer.Meant);
            }

            built = answer.Built;
        }

        return new BuildReading(built, "", "", null);
    }

    private FoundPiece Printed(PieceName name)
    {
        if (book.Newest(name.Order, name.Piece) is not { } job)
        {
            return Unknown($"{name.Order}/{name.Piece} is not in the job book: check the name, or scan the card");
        }

        return TagReader.Read(job.Tag) is TagReading.Piece printed
            ? new FoundPiece(printed.Spec, null)
            : Unknown($"the tag text of {name.Order}/{name.Piece} in the job book cannot be read; scan the card");
    }

    private static FoundPiece Unknown(string error) => new(null, error);
}
