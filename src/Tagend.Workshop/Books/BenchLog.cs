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
/// <param name="Error">What is wrong; null where it was logged.</param>
/// <param name="IsPieceKnown">Whether the piece was found, so that an error is in the values.</param>
public sealed record LogAnswer(LoggedPiece? Logged, string? Error, bool IsPieceKnown);

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
    public IEnumerable<BuiltQuestion> Questions(BuildSpec spec) =>
        [.. BuiltQuestion.Of(spec, unit), .. shelf?.Serves(spec) == true ? new[] { SpoolQuestion(spec, shelf) } : []];

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
    public LogAnswer Log(string piece, IReadOnlyDictionary<string, string> given)
    {
        var found = Find(piece);
        if (found.Spec is not { } spec)
        {
            return new LogAnswer(null, found.Error, IsPieceKnown: false);
        }

        var built = CardOf(spec);
        var questions = Questions(spec).ToList();
        if (given.ContainsKey(Spools) && !questions.Exists(q => q.Name == Spools))
        {
            return new LogAnswer(null, $"--{Spools}: no spool in the job book is of what {spec.Order}/{spec.Piece} is made of; tagend spools lists them", IsPieceKnown: true);
        }

        foreach (var question in questions)
        {
            if (given.TryGetValue(question.Name, out var text))
            {
                var answer = question.Read(built, text.Trim());
                if (answer.Built is null)
                {
                    return new LogAnswer(null, $"--{question.Name} {answer.Error}", IsPieceKnown: true);
                }

                built = answer.Built;
            }
            else if (question.AsCarded is null)
            {
                return new LogAnswer(null, $"--{question.Name} is needed: it is what the log is for", IsPieceKnown: true);
            }
        }

        return new LogAnswer(Log(spec, built), null, IsPieceKnown: true);
    }

    /// <summary>What must be known before a piece is built by this spec; null where it is the newest.</summary>
    public string? SupersededBy(BuildSpec spec) =>
        Superseded.Of(spec, book) is { } sentence ? $"{spec.Order}/{spec.Piece}, revision {spec.Revision}: {sentence}" : null;

    /// <summary>Enters a build: it is on the disk when this returns.</summary>
    public LoggedPiece Log(BuildSpec spec, AsBuilt built)
    {
        var lots = built.Lots.Concat(shelf?.LotsOf(built.Spools) ?? []).Distinct().ToValueList();
        var logged = book.Log(spec, built with { Lots = lots }, Guid.NewGuid());
        return new LoggedPiece(spec, logged) { Spools = shelf?.Now(logged.Built.Spools) ?? [] };
    }

    private static BuiltQuestion SpoolQuestion(BuildSpec spec, SpoolShelf shelf) => new(
        Spools,
        string.Join(", ", shelf.MountedFor(spec).Select(s => s.Spool.Number)),
        (built, text) => shelf.UsesOf(spec, text) is { Error: null } choice
            ? new BuiltAnswer(built with { Spools = choice.Uses }, null)
            : new BuiltAnswer(null, shelf.UsesOf(spec, text).Error));

    private FoundPiece Printed(PieceName name)
    {
        if (book.Newest(name.Order, name.Piece) is not { } job)
        {
            return Unknown($"{name.Order}/{name.Piece} is not in the job book; tagend jobs lists what is, or scan the card");
        }

        return TagReader.Read(job.Tag) is TagReading.Piece printed
            ? new FoundPiece(printed.Spec, null)
            : Unknown($"the tag text of {name.Order}/{name.Piece} in the job book cannot be read; scan the card");
    }

    private static FoundPiece Unknown(string error) => new(null, error);
}
