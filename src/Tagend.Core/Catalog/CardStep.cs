namespace Tagend.Catalog;

/// <summary>What the card shows at a step.</summary>
public enum CardStepKind
{
    /// <summary>Strands and loops by color, with the posts where each starts and ends.</summary>
    LayUp,

    /// <summary>What is tied at each post, and the length of the tails.</summary>
    Tie,

    /// <summary>Where separators are put in, on the jig, and the strands on each side.</summary>
    Separators,

    /// <summary>Turns and their direction.</summary>
    Twist,

    /// <summary>Load and minutes on the stretcher.</summary>
    Stretch,

    /// <summary>That the piece rests without load before it goes on.</summary>
    Rest,

    /// <summary>The servings with their places, threads and direction.</summary>
    Serve,

    /// <summary>Load and minutes once more, with the servings on.</summary>
    StretchAgain,

    /// <summary>The finished length with its tolerance, and over which pins and under which load.</summary>
    Measure,

    /// <summary>What is looked at before the piece leaves the bench.</summary>
    Inspect,

    /// <summary>The shop's own title and text, and nothing of the program's.</summary>
    Own,
}

/// <summary>A step of the work on a jig card, with a box to tick. From card.toml.</summary>
/// <param name="Kind">What it shows.</param>
/// <param name="Title">The shop's title in place of the step's own; empty for the step's own.</param>
/// <param name="Text">The shop's sentence beside the step's numbers, in place of the program's; empty for the program's.</param>
public sealed record CardStep(CardStepKind Kind, string Title = "", string Text = "")
{
    /// <summary>The steps of a shop without card.toml, in the order of the work: common practice.</summary>
    public static IReadOnlyList<CardStep> Usual { get; } =
        [.. Enum.GetValues<CardStepKind>().Where(k => k != CardStepKind.Own).Select(k => new CardStep(k))];
}
