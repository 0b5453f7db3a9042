using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>An end loop over a measuring pin: its legs run to where the serving closes them, not parallel as on the jig.</summary>
public static class EndLoop
{
    /// <summary>How much more of each leg a closed end loop takes than the same end left open, legs parallel.</summary>
    /// <param name="loopLength">From the outside of the pin to where the legs meet.</param>
    /// <param name="pinDiameter">Of the measuring pin.</param>
    /// <param name="bundleDiameter">Of all strands; a leg has half of them.</param>
    /// <returns>Zero where the loop is too short to close around the pin.</returns>
    /// <remarks>
    /// Geometry: the leg's axis is a tangent from the closing point, half a leg off the middle, to the circle half a leg
    /// outside the pin, then an arc of it; open, it is a straight piece beside the middle and a quarter circle.
    /// </remarks>
    public static Length Closing(Length loopLength, Length pinDiameter, Length bundleDiameter)
    {
        var halfLeg = bundleDiameter.Inches / Math.Sqrt(2) / 2;
        var radius = (pinDiameter.Inches / 2) + halfLeg;
        var toPinAxis = loopLength.Inches - (pinDiameter.Inches / 2);
        if (toPinAxis <= radius)
        {
            return Length.Zero;
        }

        var slant = Math.Sqrt((toPinAxis * toPinAxis) + (halfLeg * halfLeg));
        var tangent = Math.Sqrt((slant * slant) - (radius * radius));
        var arc = Math.PI - Math.Atan2(halfLeg, toPinAxis) - Math.Acos(radius / slant);
        return Length.FromInches(tangent + (radius * arc) - toPinAxis - (radius * Math.PI / 2));
    }
}
