namespace Tagend.Catalog;

/// <summary>What the card shows at a step.</summary>
public enum CardStepKind
{
    LayUp,
    Tie,
    Separators,
    Twist,
    Stretch,
    Rest,
    Serve,
    StretchAgain,
    Measure,
    Inspect,

    /// <summary>The shop's own title and text, and nothing of the program's.</summary>
    Own,
}

/// <summary>A step of the work on a jig card, with a box to tick. From card.toml.</summary>
/// <param name="Title">In place of the step's own; empty for that.</param>
/// <param name="Text">What the shop says beside the step's numbers, in place of the program's own sentence; empty for that.</param>
public sealed record CardStep(CardStepKind Kind, string Title = "", string Text = "")
{
    /// <summary>In the order of the work: common practice.</summary>
    public static IReadOnlyList<CardStep> Usual { get; } =
        [.. Enum.GetValues<CardStepKind>().Where(k => k != CardStepKind.Own).Select(k => new CardStep(k))];
}
