using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>An ideal helical yarn: strands lie on helices about a common axis, evenly over the section.</summary>
/// <remarks>Hearle, Grosberg and Backer, Structural Mechanics of Fibers, Yarns, and Fabrics, 1969.</remarks>
public static class Helix
{
    /// <summary>Angle of the outermost strands to the axis, radians: tan α = 2πR·turns / length.</summary>
    /// <param name="bundleDiameter">2R, of the untwisted bundle under working load.</param>
    public static double SurfaceAngle(Length bundleDiameter, int turns, Length finishedLength) =>
        Math.Atan(Math.PI * turns * (bundleDiameter / finishedLength));

    /// <summary>Length before twisting over length after: (1 + sec α) / 2.</summary>
    public static double Contraction(double surfaceAngle) => (1 + (1 / Math.Cos(surfaceAngle))) / 2;

    /// <summary>Length taken up by twisting a bundle of strands.</summary>
    /// <param name="bundleDiameter">2R, of the untwisted bundle under working load.</param>
    /// <param name="turns">Full turns over the finished length, 0 or more.</param>
    /// <returns>Laid-up length minus finished length, unrounded.</returns>
    public static Length TakeUp(Length bundleDiameter, int turns, Length finishedLength) =>
        finishedLength * (Contraction(SurfaceAngle(bundleDiameter, turns, finishedLength)) - 1);

    /// <summary>Take-up of one more turn at a given twist: the slope of <see cref="TakeUp"/>, (π·2R / 2)·sin α.</summary>
    public static Length PerTurn(Length bundleDiameter, int turns, Length finishedLength) =>
        bundleDiameter * (Math.PI / 2 * Math.Sin(SurfaceAngle(bundleDiameter, turns, finishedLength)));
}
