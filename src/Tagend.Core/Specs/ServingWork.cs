using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>What winding one serving takes and makes.</summary>
/// <param name="Wraps">Close together: length / thread diameter.</param>
/// <param name="Thread">Wound length of thread, without tails.</param>
/// <param name="Diameter">Over the serving: bundle + 2 threads.</param>
public sealed record ServingWork(double Wraps, Length Thread, Length Diameter)
{
    /// <remarks>Length of a helix: each wrap is √((π(D + t))² + t²), its axis half a thread above the bundle.</remarks>
    public static ServingWork Of(Serving serving, Length bundleDiameter)
    {
        var wraps = serving.Length / serving.ThreadDiameter;
        var around = Math.PI * (bundleDiameter + serving.ThreadDiameter).Inches;
        var wrap = Math.Sqrt((around * around) + Math.Pow(serving.ThreadDiameter.Inches, 2));
        return new ServingWork(
            wraps, Length.FromInches(wraps * wrap), bundleDiameter + (serving.ThreadDiameter * 2));
    }
}
