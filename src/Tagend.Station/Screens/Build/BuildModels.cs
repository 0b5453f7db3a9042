using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Steps;
using Tagend.Specs;
using Tagend.Workshop.Books;
using Tagend.Workshop.Printing;

namespace Tagend.Station.Screens.Build;

/// <summary>A piece that was begun.</summary>
/// <param name="Step">As it is counted: <c>step 4 of 14</c>.</param>
public sealed record BegunPiece(string Id, string Name, string Step, string Since);

/// <summary>The pieces that are begun, and a field to open another.</summary>
/// <param name="Asked">What was typed and names no piece.</param>
/// <param name="Error">Why it does not; null before anything was typed.</param>
public sealed record BuildListModel(IReadOnlyList<BegunPiece> Begun, string Asked, string? Error);

/// <summary>A piece at the bench, with all its steps, so that they are there when the station is not.</summary>
public sealed record BuildModel
{
    public required string Id { get; init; }

    public required BuildSpec Spec { get; init; }

    public required string Tag { get; init; }

    public required IReadOnlyList<BenchStep> Steps { get; init; }

    /// <summary>The step it is at, from 0; as many as there are steps for what was measured.</summary>
    public required int Step { get; init; }

    /// <summary>How often it was moved.</summary>
    public required int Moves { get; init; }

    /// <summary>What must be known before; the gravest first.</summary>
    public required IReadOnlyList<string> News { get; init; }

    /// <summary>The piece must not be built from these papers.</summary>
    public required bool IsHeld { get; init; }

    /// <summary>The drawing at two widths, the narrow one where it fits; none where the marks find no room.</summary>
    public required IReadOnlyList<StepDrawing> Drawings { get; init; }

    /// <summary>The hand of the twist.</summary>
    public required Page Twist { get; init; }

    /// <summary>What is asked of the build beside its length.</summary>
    public required IReadOnlyList<BuildField> Fields { get; init; }

    /// <summary>The card's words for the length.</summary>
    public required string LengthLabel { get; init; }

    public required LengthUnit Unit { get; init; }

    /// <summary>What a step is called in small: its title and its part.</summary>
    public string NameOf(int step) => step >= Steps.Count ? LengthLabel
        : Steps[step].Part.Length > 0 ? $"{Steps[step].Title}, {Steps[step].Part}" : Steps[step].Title;
}

/// <summary>A value of a build with what the card has for it.</summary>
/// <param name="Name">The question's.</param>
public sealed record BuildField(string Name, string Label, string AsCarded);

/// <summary>What there is to say of values that were typed.</summary>
/// <param name="Sentence">Empty where nothing was typed.</param>
/// <param name="IsWithin">Null where the values cannot be read.</param>
/// <param name="Advice">How many turns bring it to its length; empty where none are needed.</param>
/// <param name="Meant">What was meant, as it seems; null where nothing seems so.</param>
public sealed record VerdictModel(string Sentence, bool? IsWithin, string Advice, string? Meant);

/// <summary>A build that stands already.</summary>
public sealed record AgainModel(string Sentence, long Build);

/// <summary>A build that was saved.</summary>
/// <param name="Moved">Cards of the same material and strands that wait to be built, and would be set otherwise by what is known now.</param>
public sealed record SavedModel(LoggedPiece Logged, IReadOnlyList<OpenCard> Moved, LengthUnit Unit);
