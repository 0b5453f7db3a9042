using Tagend.Specs;

namespace Tagend.Workshop.Json;

/// <summary>Strands of a color.</summary>
internal sealed record StrandsContract(string Color, int Strands)
{
    /// <summary>Colors and strands of half a layup.</summary>
    internal static IReadOnlyList<StrandsContract> Of(Layup half) => [.. half.Colors.Select(c => new StrandsContract(c.Color, c.Strands))];
}

/// <summary>A separator, where it stands on the jig, and what passes on either side of it.</summary>
internal sealed record SeparatorContract(
    string Name,
    LengthContract Finished,
    LengthContract OnJig,
    LengthContract FromPostA,
    int StrandsEachSide,
    IReadOnlyList<IReadOnlyList<StrandsContract>> Sides)
{
    internal static SeparatorContract Of(Separator separator, BuildSpec spec) => new(
        separator.Name,
        LengthContract.Of(separator.Position),
        LengthContract.Of(spec.OnJig(separator.Position)),
        LengthContract.Of(spec.FromPostA(separator.Position)),
        separator.StrandsEachSide,
        [StrandsContract.Of(spec.Layup.Halves().First), StrandsContract.Of(spec.Layup.Halves().Second)]);
}

/// <summary>A serving, measured from both ends, and what it takes.</summary>
internal sealed record ServingContract
{
    public required string Name { get; init; }

    public required LengthContract FromA { get; init; }

    public required LengthContract ToA { get; init; }

    public required LengthContract FromB { get; init; }

    public required LengthContract ToB { get; init; }

    public required LengthContract Length { get; init; }

    public required string Thread { get; init; }

    public required string Color { get; init; }

    public required double Wraps { get; init; }

    public required LengthContract ThreadLength { get; init; }

    public required LengthContract Diameter { get; init; }

    internal static ServingContract Of(Serving serving, BuildSpec spec)
    {
        var work = spec.WorkOf(serving);
        return new ServingContract
        {
            Name = Words.Of(serving.Role),
            FromA = LengthContract.Of(serving.From),
            ToA = LengthContract.Of(serving.To),
            FromB = LengthContract.Of(spec.FromB(serving.From)),
            ToB = LengthContract.Of(spec.FromB(serving.To)),
            Length = LengthContract.Of(serving.Length),
            Thread = serving.Thread,
            Color = serving.Color,
            Wraps = work.Wraps,
            ThreadLength = LengthContract.Of(work.Thread),
            Diameter = LengthContract.Of(work.Diameter),
        };
    }
}

/// <summary>A nock point or a speed nock.</summary>
internal sealed record MarkContract(string Name, LengthContract FromA, LengthContract FromB)
{
    internal static MarkContract Of(Mark mark, BuildSpec spec) =>
        new(Words.Of(mark.Kind), LengthContract.Of(mark.Position), LengthContract.Of(spec.FromB(mark.Position)));
}

/// <summary>The center serving in the groove of the nock; a clearance below zero is too tight.</summary>
internal sealed record NockFitContract(LengthContract Groove, string Thread, LengthContract Diameter, LengthContract Clearance)
{
    internal static NockFitContract? Of(NockFit? fit) => fit is null
        ? null
        : new NockFitContract(LengthContract.Of(fit.Groove), fit.Thread, LengthContract.Of(fit.Diameter), LengthContract.Of(fit.Clearance));
}
