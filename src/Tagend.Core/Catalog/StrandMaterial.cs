using Tagend.Measures;

namespace Tagend.Catalog;

/// <summary>A strand material, by fibre and size. From materials.toml.</summary>
public sealed record StrandMaterial
{
    /// <summary>Packing φ where a material's was not measured: an assumption.</summary>
    public const double AssumedPacking = 0.80;

    /// <summary>The densest packing of round strands: the hexagonal limit π / (2√3).</summary>
    public const double HexagonalPacking = 0.9069;

    /// <summary>As orders name it, in lower case.</summary>
    public required string Name { get; init; }

    /// <summary>As pages name it.</summary>
    public required string Title { get; init; }

    /// <summary>Density of the fibre, g/cm³; null where the shop does not say.</summary>
    public required double? Density { get; init; }

    /// <summary>Diameter of one strand.</summary>
    public required Length Diameter { get; init; }

    /// <summary>Linear density of one strand, tex (g/km); null where the shop does not say, and nothing is weighed.</summary>
    public required double? LinearDensity { get; init; }

    /// <summary>Breaking force of one strand in straight pull.</summary>
    public required Force Strength { get; init; }

    /// <summary>Modulus of the fibre, GPa; null where the shop does not say, and no reading under load is told.</summary>
    public required double? Modulus { get; init; }

    /// <summary>Share of its length that the material gains for good on the stretcher.</summary>
    public required double Settle { get; init; }

    /// <summary>Load on the stretcher.</summary>
    public required Force StretchLoad { get; init; }

    /// <summary>Minutes on the stretcher.</summary>
    public required int StretchMinutes { get; init; }

    /// <summary>Greatest share of a piece's strength that it may be stretched with.</summary>
    public required double StretchLimit { get; init; }

    /// <summary>Share of the bundle's section filled by strands; null where not measured.</summary>
    public required double? Packing { get; init; }

    /// <summary>Turns per inch for pieces of it; null where plan or shop say.</summary>
    public required double? TurnsPerInch { get; init; }

    /// <summary>Take-up of one turn by the rule model for pieces of it; null where plan or shop say.</summary>
    public required Length? RuleTakeUpPerTurn { get; init; }

    /// <summary>Length on a full spool; null where the shop does not say.</summary>
    public required Length? Spool { get; init; }
}

/// <summary>A serving thread. From threads.toml.</summary>
/// <param name="Name">As orders name it, in lower case.</param>
/// <param name="LinearDensity">Tex (g/km); null where the shop does not say.</param>
/// <param name="Spool">On a full spool; null where the shop does not say.</param>
public sealed record ServingThread(string Name, string Title, Length Diameter, double? LinearDensity, Length? Spool);
