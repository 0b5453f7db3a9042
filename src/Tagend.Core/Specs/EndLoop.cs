using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>An end loop over a measuring pin: its legs run to where the serving closes them, not parallel as on the jig.</summary>
/// <remarks>
/// Geometry: the leg's axis is a tangent from the closing point, half a leg off the middle, to the circle half a leg
/// outside the pin, then an arc of it; open, it is a straight piece beside the middle and a quarter circle.
/// </remarks>
/// <param name="loopLength">From the outside of the pin to where the legs meet.</param>
/// <param name="pinDiameter">Of the measuring pin.</param>
/// <param name="bundleDiameter">Of all strands; a leg has half of them.</param>
/// <param name="threadDiameter">Of the thread that serves the loop, between pin and strand and between the legs; zero for a bare loop.</param>
public sealed class EndLoop(Length loopLength, Length pinDiameter, Length bundleDiameter, Length threadDiameter = default)
{
    private readonly double _halfLeg = (bundleDiameter.Inches / Math.Sqrt(2) / 2) + threadDiameter.Inches;
    private readonly double _toPinAxis = loopLength.Inches - (pinDiameter.Inches / 2);

    /// <summary>Diameter of the thread that serves it; zero for a bare loop.</summary>
    public Length Thread => threadDiameter;

    /// <summary>Half the thickness of one leg, its serving with it.</summary>
    public Length HalfLeg => Length.FromInches(_halfLeg);

    /// <summary>Of the leg's axis around the pin.</summary>
    public Length Radius => Length.FromInches(RadiusInches);

    /// <summary>From where the legs meet to the pin's axis.</summary>
    public Length ToPinAxis => Length.FromInches(_toPinAxis);

    /// <summary>Too short to close around the pin, such as a loop that is left open on purpose.</summary>
    public bool IsOpen => _toPinAxis <= RadiusInches;

    /// <summary>The straight part of a leg's axis.</summary>
    public Length Straight => Length.FromInches(StraightInches);

    /// <summary>The part of a leg's axis around the pin, radians.</summary>
    public double Arc => Math.PI - Math.Atan2(_halfLeg, _toPinAxis) - Math.Acos(RadiusInches / Slant);

    /// <summary>
    /// How much more of each leg the loop takes than the same end bare and open, legs parallel; of an open loop only what
    /// its serving lifts it off the pin.
    /// </summary>
    public Length Closing => Length.FromInches(
        (IsOpen ? RadiusInches * Math.PI / 2 : StraightInches + (RadiusInches * Arc) - _toPinAxis)
        - ((RadiusInches - threadDiameter.Inches) * Math.PI / 2));

    /// <summary>A leg's axis from where the legs meet, around the pin and back: what a served loop's thread covers.</summary>
    /// <remarks>Of an open loop nothing.</remarks>
    public Length Around => IsOpen ? Length.Zero : Length.FromInches((StraightInches + (RadiusInches * Arc)) * 2);

    private double RadiusInches => (pinDiameter.Inches / 2) + _halfLeg;

    private double Slant => Math.Sqrt((_toPinAxis * _toPinAxis) + (_halfLeg * _halfLeg));

    private double StraightInches => Math.Sqrt((Slant * Slant) - (RadiusInches * RadiusInches));
}
