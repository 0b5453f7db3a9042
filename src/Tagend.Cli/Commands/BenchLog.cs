using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Specs;
using Tagend.Tags;

namespace Tagend.Commands;

/// <summary>Finds the pieces that builds are logged for, and logs them.</summary>
/// <param name="unit">Of what is said.</param>
internal sealed class BenchLog(IJobBook book, LengthUnit unit)
{
    /// <summary>The piece a text names: a tag's text, or an order and piece that were printed.</summary>
    /// <param name="error">What is wrong with the text, where the result is null.</param>
    public BuildSpec? Find(string text, out string error)
    {
        error = "";
        switch (TagReader.Read(text))
        {
            case TagReading.Piece piece:
                return piece.Spec;
            case TagReading.Bag bag:
                error = $"this is the tag of a bag with {string.Join(", ", bag.Contents.Select(c => c.Piece))}: scan the card or the loop tag of one piece";
                return null;
            case TagReading.Damaged damaged:
                error = damaged.Message;
                return null;
            case TagReading.Later later:
                error = later.Message;
                return null;
        }

        var said = "";
        if (PieceName.Read(text.Trim(), m => said = m) is not { } name)
        {
            error = said;
            return null;
        }

        if (book.Newest(name.Order, name.Piece) is not { } job)
        {
            error = $"{name.Order}/{name.Piece} was not printed, as the job book has it; tagend jobs lists what was, or scan the card";
            return null;
        }

        if (TagReader.Read(job.Tag) is TagReading.Piece printed)
        {
            return printed.Spec;
        }

        error = $"the tag text of {name.Order}/{name.Piece} in the job book cannot be read; scan the card";
        return null;
    }

    /// <summary>Enters a build and says so, once it is on the disk.</summary>
    public void Log(BuildSpec spec, AsBuilt built)
    {
        var logged = book.Log(spec, built, Guid.NewGuid());
        var off = built.Measured - spec.FinishedLength;
        var within = Length.Abs(off) <= spec.Tolerance ? "within" : "outside";
        var by = off == Length.Zero ? "as ordered"
            : $"{LengthWriter.Exact(Length.Abs(off), unit)} {(off > Length.Zero ? "longer" : "shorter")} than ordered";
        Console.WriteLine(
            $"build {logged.Number} logged: {spec.Order}/{spec.Piece}, revision {spec.Revision}: {LengthWriter.Mark(built.Measured, unit)}, {by} "
            + $"({within} ± {LengthWriter.Mark(spec.Tolerance, unit)}); posts {LengthWriter.Setting(built.Posts, unit)}, "
            + FormattableString.Invariant($"{built.Turns:0.##} turns, {built.Load.Pounds:0.#} lbf, {built.Minutes:0.##} min")
            + (built.Who.Length == 0 ? "" : $", {built.Who}"));
    }
}
