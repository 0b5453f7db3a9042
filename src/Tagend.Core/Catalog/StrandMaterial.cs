using Tagend.Measures;

namespace Tagend.Catalog;

/// <summary>A strand material, by fibre and size. From materials.toml.</summary>
/// <param name="Name">As orders name it, in lower case.</param>
/// <param name="Title">As pages name it.</param>
/// <param name="Density">Of the fibre, g/cm³.</param>
/// <param name="Diameter">Of one strand.</param>
/// <param name="LinearDensity">Of one strand, tex (g/km).</param>
/// <param name="Strength">Of one strand, in straight pull.</param>
/// <param name="Modulus">Of the fibre, GPa.</param>
/// <param name="Settle">Share of its length that the material gains for good on the stretcher.</param>
/// <param name="StretchLoad">On the stretcher.</param>
/// <param name="StretchMinutes">On the stretcher.</param>
/// <param name="StretchLimit">Greatest share of a piece's strength it may be stretched with.</param>
/// <param name="Packing">Share of the bundle's section filled by strands; null where not measured.</param>
/// <param name="Spool">On a full spool; null where the shop does not say.</param>
public sealed record StrandMaterial(
    string Name,
    string Title,
    double Density,
    Length Diameter,
    double LinearDensity,
    Force Strength,
    double Modulus,
    double Settle,
    Force StretchLoad,
    int StretchMinutes,
    double StretchLimit,
    double? Packing,
    Length? Spool);

/// <summary>A serving thread. From threads.toml.</summary>
/// <param name="Name">As orders name it, in lower case.</param>
/// <param name="LinearDensity">Tex (g/km).</param>
/// <param name="Spool">On a full spool; null where the shop does not say.</param>
public sealed record ServingThread(string Name, string Title, Length Diameter, double LinearDensity, Length? Spool);
