using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>What the piece should carry, against what it must.</summary>
/// <param name="Breaking">Strands × strand strength × termination efficiency.</param>
/// <param name="Floor">Four times the draw weight; null where no draw weight is ordered.</param>
public sealed record Strength(Force Breaking, Force? Floor);
