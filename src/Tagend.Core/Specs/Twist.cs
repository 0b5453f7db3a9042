using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>Where a take-up number comes from.</summary>
public enum TakeUpModel
{
    /// <summary>A length for each turn, whatever the bundle: common practice.</summary>
    Rule,

    /// <summary>An ideal helical yarn: Hearle, Grosberg and Backer, 1969.</summary>
    Helix,
}

/// <summary>How much shorter twisting makes a piece, by each model, and which one is used.</summary>
public sealed record TakeUp(TakeUpModel Used, Length Rule, Length Helix)
{
    public Length Amount => Used switch
    {
        TakeUpModel.Rule => Rule,
        TakeUpModel.Helix => Helix,
        _ => throw new InvalidOperationException($"no take-up for {Used}"),
    };
}

/// <summary>Whole turns put into the finished piece.</summary>
public sealed record Twist(int Turns, TakeUp TakeUp);
