using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>What winding one serving takes and makes.</summary>
/// <param name="Wraps">Close together: length / thread diameter.</param>
/// <param name="Thread">Wound length of thread, without tails.</param>
/// <param name="Diameter">Over the serving: bundle + 2 threads.</param>
public sealed record ServingWork(double Wraps, Length Thread, Length Diameter)
{
    /// <summary>What a serving takes on a bundle.</summary>
    /// <param name="serving">Its stretch and thread.</param>
    /// <param name="bundleDiameter">The diameter of what is wrapped.</param>
    /// <remarks>Length of a helix: each wrap is √((π(D + t))² + t²), its axis half a thread above the bundle.</remarks>
    public static ServingWork Of(Serving serving, Length bundleDiameter) => Of(serving.Length, serving.ThreadDiameter, bundleDiameter);

    /// <summary>What a wrapped stretch takes.</summary>
    /// <param name="length">How long the stretch is.</param>
    /// <param name="threadDiameter">Of the thread.</param>
    /// <param name="bundleDiameter">Of what is wrapped.</param>
    public static ServingWork Of(Length length, Length threadDiameter, Length bundleDiameter)
    {
        var wraps = length / threadDiameter;
        var around = Math.PI * (bundleDiameter + threadDiameter).Inches;
        var wrap = Math.Sqrt((around * around) + Math.Pow(threadDiameter.Inches, 2));
        return new ServingWork(wraps, Length.FromInches(wraps * wrap), bundleDiameter + (threadDiameter * 2));
    }
}
