using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>How a piece is stretched after twisting: load, time, and what it should measure meanwhile.</summary>
/// <param name="Reading">Over measuring pins, under <paramref name="Load"/>; null where the material's modulus, tex or density is not given.</param>
public sealed record Stretch(Force Load, int Minutes, Length? Reading)
{
    /// <summary>The finished length is measured under 100 lbf: AMO Standards FP-3, 2000.</summary>
    public static readonly Force MeasuringLoad = Force.FromPounds(100);

    /// <summary>Length under a load other than the measuring load.</summary>
    /// <param name="modulus">Of the fibre, GPa.</param>
    /// <param name="linearDensity">Of one strand, tex.</param>
    /// <param name="density">Of the fibre, g/cm³.</param>
    /// <remarks>
    /// Hooke's law on the fibre's section, linear density over density, strands taken as straight:
    /// ΔL = (F − 100 lbf)·L / (E·A). A twisted string gives more than this ideal one.
    /// </remarks>
    /// <returns>Null where one of the three is not given.</returns>
    public static Length? ReadingUnder(
        Force load, Length finishedLength, int strands, double? modulus, double? linearDensity, double? density)
    {
        if (modulus is null || linearDensity is null || density is null)
        {
            return null;
        }

        var squareMillimeters = strands * FibreSection(linearDensity.Value, density.Value);
        var newtonsPerStrain = modulus.Value * 1000 * squareMillimeters;
        return finishedLength * (1 + ((load.Newtons - MeasuringLoad.Newtons) / newtonsPerStrain));
    }

    /// <summary>Section of the fibre in one strand, mm²: tex is g/km, so tex / (g/cm³) / 1000.</summary>
    public static double FibreSection(double linearDensity, double density) => linearDensity / density / 1000;
}
