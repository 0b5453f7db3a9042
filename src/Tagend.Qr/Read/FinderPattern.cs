namespace Tagend.Qr.Read;

/// <summary>A finder pattern that was seen.</summary>
/// <param name="Middle">In pixels.</param>
/// <param name="Module">Pixels a module, the mean of across and down.</param>
/// <param name="Count">Rows that crossed it.</param>
/// <param name="Rings">The share of directions that shows its rings.</param>
internal sealed record FinderPattern(Point Middle, float Module, int Count, float Rings = 0)
{
    public FinderPattern Scaled(float factor) => this with { Middle = Middle * factor, Module = Module * factor };

    public float DistanceTo(FinderPattern other) => (Middle - other.Middle).Length;

    /// <summary>The same pattern seen again.</summary>
    public bool IsAt(FinderPattern other) => DistanceTo(other) < 2 * Math.Max(Module, other.Module) && Module < 1.7f * other.Module && other.Module < 1.7f * Module;

    public FinderPattern With(FinderPattern again)
    {
        var all = Count + again.Count;
        float Mean(float a, float b) => ((a * Count) + (b * again.Count)) / all;
        return new FinderPattern(new(Mean(Middle.X, again.Middle.X), Mean(Middle.Y, again.Middle.Y)), Mean(Module, again.Module), all);
    }
}
