using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>The end loops as they are built.</summary>
/// <param name="A">From the outside of the measuring pin at end A to where the legs meet; zero where the loop is left open.</param>
/// <param name="B">The same at end B.</param>
/// <param name="Serving">The thread they are served with; null for bare loops.</param>
public sealed record EndLoops(Length A, Length B, LoopServing? Serving)
{
    /// <summary>The geometry of the loop at end A; of one leg's where the piece has legs, with half of the strands.</summary>
    public EndLoop AtA(Length pinDiameter, Bundle bundle, Yoke? yoke) =>
        new(A, pinDiameter, yoke is null ? bundle.Diameter : bundle.HalfDiameter, Serving?.ThreadDiameter ?? Length.Zero);

    /// <summary>The geometry of the loop at end B.</summary>
    public EndLoop AtB(Length pinDiameter, Bundle bundle) => new(B, pinDiameter, bundle.Diameter, Serving?.ThreadDiameter ?? Length.Zero);
}

/// <summary>A thread that serves end loops.</summary>
/// <param name="Color">Where no serving of the same thread at the loop's end has another; empty where the shop's stock decides.</param>
public sealed record LoopServing(string Thread, Length ThreadDiameter, string Color);

/// <summary>Where a piece splits into two legs, half of the strands each, with a loop of its own at the end of each.</summary>
/// <param name="Split">From end A, on the finished piece, to where the legs join.</param>
/// <param name="LegTurns">Turns put into each leg.</param>
public sealed record Yoke(Length Split, int LegTurns);
