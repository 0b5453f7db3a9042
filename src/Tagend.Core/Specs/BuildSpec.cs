using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>Everything that is to be built, in numbers: the one source of every page and of the tag.</summary>
/// <remarks>
/// Positions are on the finished piece, measured from end A, over measuring pins, unless their name says otherwise.
/// Nothing here is rounded, and nothing here names a customer.
/// </remarks>
public sealed record BuildSpec
{
    public required string Order { get; init; }

    public required string Piece { get; init; }

    /// <summary>The plan that gave the defaults.</summary>
    public required string Kind { get; init; }

    /// <summary>1 for the first issue of a piece.</summary>
    public required int Revision { get; init; }

    public required DateOnly Date { get; init; }

    /// <summary>The unit the pages are printed in.</summary>
    public required LengthUnit Unit { get; init; }

    /// <summary>Over measuring pins, outside to outside.</summary>
    public required Length FinishedLength { get; init; }

    /// <summary>The finished length may be this much longer or shorter.</summary>
    public required Length Tolerance { get; init; }

    public required Force? DrawWeight { get; init; }

    public required Bundle Bundle { get; init; }

    public required Twist Twist { get; init; }

    public required PostSetting Posts { get; init; }

    public required Layup Layup { get; init; }

    public required ValueList<Separator> Separators { get; init; }

    /// <summary>In order from end A.</summary>
    public required ValueList<Serving> Servings { get; init; }

    /// <summary>Nock point and speed nocks, in order from end A.</summary>
    public required ValueList<Mark> Marks { get; init; }

    public required Strength Strength { get; init; }

    /// <summary>The loop as laid on the jig before twisting, over measuring pins, outside to outside.</summary>
    public Length LaidUpLength => FinishedLength + Twist.TakeUp.Amount;

    /// <summary>A place on the finished piece as a distance from end B.</summary>
    public Length FromB(Length fromA) => FinishedLength - fromA;

    /// <summary>A place on the finished piece as a distance from end A on the untwisted loop, over measuring pins.</summary>
    public Length OnJig(Length fromA) => fromA * (LaidUpLength / FinishedLength);
}
