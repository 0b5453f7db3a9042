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
public sealed record LoggedPiece(BuildSpec Spec, LoggedBuild Build);

/// <summary>Finds the pieces that builds are logged for, and logs them.</summary>
/// <param name="book">The shop's job book.</param>
/// <param name="unit">The unit of numbers without one.</param>
public sealed class BenchLog(IJobBook book, LengthUnit unit)
{
    /// <summary>The piece a text names: a tag's text, or an order and piece that were printed.</summary>
    public FoundPiece Find(string text) => TagReader.Read(text) switch
    {
        TagReading.Piece piece => new FoundPiece(piece.Spec, null),
        TagReading.Bag bag => Unknown(
            $"this is the tag of a bag with {string.Join(", ", bag.Contents.Select(c => c.Piece))}: scan the card or the loop tag of one piece"),
        TagReading.Damaged damaged => Unknown(damaged.Message),
        TagReading.Later later => Unknown(later.Message),
        _ => PieceName.Read(text.Trim(), out var error) is { } name ? Printed(name) : Unknown(error),
    };

    /// <summary>Logs a build of a piece; what is not given is as the card has it.</summary>
    /// <param name="piece">A text that <see cref="Find"/> reads.</param>
    /// <param name="given">Answers by the names of their questions.</param>
    public LogAnswer Log(string piece, IReadOnlyDictionary<string, string> given)
    {
        var found = Find(piece);
        if (found.Spec is not { } spec)
        {
            return new LogAnswer(null, found.Error, IsPieceKnown: false);
        }

        var built = BuiltQuestion.CardOf(spec);
        foreach (var question in BuiltQuestion.Of(spec, unit))
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
    public LoggedPiece Log(BuildSpec spec, AsBuilt built) => new(spec, book.Log(spec, built, Guid.NewGuid()));

    private FoundPiece Printed(PieceName name)
    {
        if (book.Newest(name.Order, name.Piece) is not { } job)
        {
            return Unknown($"{name.Order}/{name.Piece} was not printed, as the job book has it; tagend jobs lists what was, or scan the card");
        }

        return TagReader.Read(job.Tag) is TagReading.Piece printed
            ? new FoundPiece(printed.Spec, null)
            : Unknown($"the tag text of {name.Order}/{name.Piece} in the job book cannot be read; scan the card");
    }

    private static FoundPiece Unknown(string error) => new(null, error);
}
