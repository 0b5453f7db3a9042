using Tagend.Measures;
using Tagend.Orders;

namespace Tagend.Specs;

/// <summary>A piece to build: its numbers, and what is printed for people beside them.</summary>
public sealed record Build(BuildSpec Spec, OrderSlip Slip)
{
    /// <summary>What was measured of it; null where it is not built yet, or its papers do not tell.</summary>
    public Measurement? Measured { get; init; }

    /// <summary>The newest revision of the piece, where this one is older and its papers are to say so; null for the newest.</summary>
    public int? SupersededBy { get; init; }
}

/// <summary>The pieces of one order.</summary>
public sealed record BuildSet(string Order, ValueList<Build> Builds);
