using Tagend.Measures;
using Tagend.Output;

namespace Tagend.Pages.Card;

/// <summary>Where places of a piece are drawn across a page: to a whole scale 1 : n, centered. In points.</summary>
internal sealed record PieceScale(Length FinishedLength, float Width, int Denominator)
{
    public float Left => (Width - Drawn) / 2;

    public float Right => Left + Drawn;

    private float Drawn => Points.Of(FinishedLength) / Denominator;

    /// <summary>The largest whole scale at which the piece leaves a margin on either side.</summary>
    public static PieceScale ToFit(Length finishedLength, float width, float margin) =>
        new(finishedLength, width, (int)Math.Ceiling(Points.Of(finishedLength) / (width - (2 * margin))));

    /// <param name="place">From end A.</param>
    public float At(Length place) => Points.OnStep(Left + (Points.Of(place) / Denominator));
}
