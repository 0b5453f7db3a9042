using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>What a serving is for.</summary>
public enum ServingRole
{
    /// <summary>Closes and covers the end loop at A.</summary>
    EndA,

    /// <summary>Where the arrow is nocked.</summary>
    Center,

    /// <summary>Closes and covers the end loop at B.</summary>
    EndB,

    /// <summary>Over cam grooves, under a cable slide, around a yoke's split.</summary>
    Other,
}

/// <summary>A stretch wrapped with serving thread.</summary>
/// <param name="From">From end A, on the finished piece.</param>
/// <param name="To">From end A, on the finished piece; more than <paramref name="From"/>.</param>
/// <param name="Color">Empty where the shop's stock decides.</param>
public sealed record Serving(
    ServingRole Role, Length From, Length To, string Thread, Length ThreadDiameter, string Color)
{
    /// <summary>How long the stretch is.</summary>
    public Length Length => To - From;
}

/// <summary>What a mark is for.</summary>
public enum MarkKind
{
    /// <summary>Where the arrow sits.</summary>
    NockPoint,

    /// <summary>A weight on the string.</summary>
    SpeedNock,
}

/// <summary>A place that is marked on the finished piece.</summary>
/// <param name="Kind">What it is for.</param>
/// <param name="Position">From end A.</param>
public sealed record Mark(MarkKind Kind, Length Position);

/// <summary>Where the strands are split, half to each side, and something is put between them.</summary>
/// <param name="Name">peep, yoke split, …</param>
/// <param name="Position">From end A, on the finished piece.</param>
/// <param name="StrandsEachSide">Half of all strands.</param>
public sealed record Separator(string Name, Length Position, int StrandsEachSide);
