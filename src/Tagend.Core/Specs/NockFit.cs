using Tagend.Catalog;
using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>How an arrow nock sits on the center serving.</summary>
/// <param name="Groove">Width of the nock's throat.</param>
/// <param name="Diameter">Over the center serving.</param>
public sealed record NockFit(Length Groove, string Thread, Length Diameter)
{
    /// <summary>What is left beside the serving; below zero the nock is forced on.</summary>
    public Length Clearance => Groove - Diameter;

    /// <summary>The fit of a serving of one thread: its diameter is the bundle's and two threads'.</summary>
    public static NockFit Of(Length groove, string thread, Length threadDiameter, Length bundleDiameter) =>
        new(groove, thread, bundleDiameter + (threadDiameter * 2));

    /// <summary>The thread on hand whose clearance is nearest to the one wanted.</summary>
    public static ServingThread Best(
        Length groove, Length wantedClearance, Length bundleDiameter, IEnumerable<ServingThread> onHand) =>
        onHand.MinBy(t => Length.Abs(Of(groove, t.Name, t.Diameter, bundleDiameter).Clearance - wantedClearance))
        ?? throw new ArgumentException("no threads on hand", nameof(onHand));
}
