using Tagend.Measures;

namespace Tagend.Pages.Steps;

/// <summary>How a step's time is kept.</summary>
public enum StepClock
{
    /// <summary>It takes as long as it takes.</summary>
    None,

    /// <summary>From so many minutes to nothing.</summary>
    Down,

    /// <summary>From nothing on.</summary>
    Up,
}

/// <summary>A number that is read from two meters.</summary>
/// <param name="Name">What it is; empty where the step's title says it.</param>
/// <param name="Text">A number with its fraction and unit, spaces between.</param>
public sealed record BenchFigure(string Name, string Text);

/// <summary>Something that the hand needs beside the number.</summary>
/// <param name="Name">Empty for a sentence.</param>
public sealed record BenchFact(string Name, string Value);

/// <summary>One step of building a piece, as much as a hand does before it looks up again.</summary>
public sealed record BenchStep
{
    /// <summary>The card's title of it.</summary>
    public required string Title { get; init; }

    /// <summary>What of the piece it is about: a color, a serving; empty for all of it.</summary>
    public string Part { get; init; } = "";

    /// <summary>One or two; none where the step has no number.</summary>
    public IReadOnlyList<BenchFigure> Figures { get; init; } = [];

    public IReadOnlyList<BenchFact> Facts { get; init; } = [];

    /// <summary>What could hurt at this step; empty for nothing.</summary>
    public string Caution { get; init; } = "";

    public StepClock Clock { get; init; }

    /// <summary>Of a clock that goes down.</summary>
    public double Minutes { get; init; }

    /// <summary>Whether the hand of the twist is shown.</summary>
    public bool IsTwist { get; init; }

    /// <summary>Where on the finished piece it is, from end A; nothing for the whole piece.</summary>
    public IReadOnlyList<(Length From, Length To)> Where { get; init; } = [];
}
