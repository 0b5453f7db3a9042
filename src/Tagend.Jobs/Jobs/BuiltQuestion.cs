using System.Globalization;
using Tagend.Measures;
using Tagend.Problems;
using Tagend.Specs;

namespace Tagend.Jobs;

/// <summary>What came of an answer that was read.</summary>
/// <param name="Built">The values with the answer among them; null where it cannot be read.</param>
/// <param name="Error">What was found and what was expected; null where it was read.</param>
public sealed record BuiltAnswer(AsBuilt? Built, string? Error)
{
    /// <summary>What was meant, as it seems, where it cannot be read; null where nothing seems so.</summary>
    public string? Meant { get; init; }
}

/// <summary>One value of a build, asked for and read from text.</summary>
/// <param name="Name">The value's name, which is its option of the log command too: <c>posts</c>, <c>turns</c>, <c>length</c>, <c>load</c>, <c>minutes</c>, <c>who</c>, <c>lots</c>.</param>
/// <param name="AsCarded">The card's value as text, which stands where nothing is answered; null where an answer is needed.</param>
/// <param name="Read">Reads an answer and puts it among the values so far.</param>
public sealed record BuiltQuestion(string Name, string? AsCarded, Func<AsBuilt, string, BuiltAnswer> Read)
{
    /// <summary>A length farther off the card than this share is a slip of the hand.</summary>
    private const double MostOff = 0.1;

    private const int LongestName = 40;
    private const int MostLots = 20;

    /// <summary>The values that the card asks for; only the length must be answered.</summary>
    public static AsBuilt CardOf(BuildSpec spec) => new()
    {
        Posts = spec.Posts.Tape,
        Turns = spec.Twist.Turns,
        Measured = spec.FinishedLength,
        Load = spec.Stretch.Load,
        Minutes = spec.Stretch.Minutes,
        Who = "",
    };

    /// <summary>The questions about a build of this spec, in the order in which they are asked.</summary>
    /// <param name="unit">The unit of a number without one.</param>
    /// <param name="who">Who it is where nobody is named; may be empty.</param>
    public static IReadOnlyList<BuiltQuestion> Of(BuildSpec spec, LengthUnit unit, string who = "") =>
    [
        new("posts", LengthWriter.Setting(spec.Posts.Tape, unit), (b, text) =>
            Near(text, unit, spec.Posts.Tape, length => b with { Posts = length })),
        new("turns", Plain(spec.Twist.Turns), (b, text) =>
            Number(text, 999, "turns such as 45 or 45.5", turns => b with { Turns = turns })),
        new("length", null, (b, text) => Near(text, unit, spec.FinishedLength, length => b with { Measured = length })),
        new("load", FormattableString.Invariant($"{spec.Stretch.Load.Pounds:0.#} lbf"), (b, text) =>
            ForceReader.TryRead(text, out var load)
                ? new BuiltAnswer(b with { Load = load }, null)
                : Wrong(text, "a load such as 300 or 1330 N")),
        new("minutes", Plain(spec.Stretch.Minutes), (b, text) => Number(text, 99_999, "minutes such as 20", m => b with { Minutes = m })),
        new("who", who, (b, text) => NameFault(text) is { } fault
            ? new BuiltAnswer(null, $"\"{text}\": {fault}")
            : new BuiltAnswer(b with { Who = text }, null)),
        new("lots", "", Lots),
    ];

    /// <summary>What is wrong with the name of who did something; null where nothing is, as with an empty one.</summary>
    public static string? NameFault(string who) => who.Length <= LongestName && ShownText.IsShown(who) ? null
        : FormattableString.Invariant($"expected a name or initials of at most {LongestName} visible characters");

    /// <summary>What is wrong with the number of one lot; null where nothing is.</summary>
    public static string? LotFault(string lot) => lot.Length is > 0 and <= LongestName && ShownText.IsShown(lot) && !lot.Contains(',', StringComparison.Ordinal) ? null
        : FormattableString.Invariant($"expected the lot as it stands on the spool, of {LongestName} visible characters at most and no comma");

    private static BuiltAnswer Lots(AsBuilt built, string text)
    {
        var lots = text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .Select(l => l.ToUpperInvariant()).Distinct().ToValueList();
        return lots.Count <= MostLots && lots.All(l => l.Length <= LongestName && ShownText.IsShown(l))
            ? new BuiltAnswer(built with { Lots = lots }, null)
            : Wrong(text, FormattableString.Invariant($"lots, comma-separated, at most {MostLots} of at most {LongestName} visible characters each"));
    }

    private static BuiltAnswer Near(string text, LengthUnit unit, Length carded, Func<Length, AsBuilt> with)
    {
        var isLength = LengthReader.TryRead(text, unit, out var length);
        if (isLength && IsNear(length, carded))
        {
            return new BuiltAnswer(with(length), null);
        }

        if (Parted(text, unit, carded) is { } meant)
        {
            return Wrong(text, $"a space between the number and its fraction: is it {meant}?") with { Meant = meant };
        }

        return Wrong(text, isLength
            ? $"about {LengthWriter.Exact(carded, unit)}, as on the card: check the digits and the unit"
            : "a length such as 60 1/4, 60.25 in or 1530 mm");
    }

    private static bool IsNear(Length length, Length carded) => Length.Abs(length - carded) <= carded * MostOff;

    /// <summary>A number and its fraction that were written as one: 605/16 for 60 5/16. Null where no way to part them, or more than one, comes near the card.</summary>
    private static string? Parted(string text, LengthUnit unit, Length carded)
    {
        var near = Enumerable.Range(1, Math.Max(0, text.IndexOf('/', StringComparison.Ordinal) - 1))
            .Select(i => $"{text[..i]} {text[i..]}")
            .Where(t => LengthReader.TryRead(t, unit, out var length) && IsNear(length, carded))
            .ToList();
        return near is [var only] ? only : null;
    }

    private static BuiltAnswer Number(string text, double most, string expected, Func<double, AsBuilt> with) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) && number >= 0 && number <= most
            ? new BuiltAnswer(with(number), null)
            : Wrong(text, expected);

    private static BuiltAnswer Wrong(string text, string expected) => new(null, $"\"{text}\": expected {expected}");

    private static string Plain(double number) => number.ToString("0.##", CultureInfo.InvariantCulture);
}
