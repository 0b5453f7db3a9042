namespace Tagend.Qr.Read;

/// <summary>The middle of a finder pattern, in pixels.</summary>
/// <param name="Module">Pixels a module, the mean of across and down.</param>
/// <param name="Count">Rows that crossed it.</param>
internal sealed record Finder(float X, float Y, float Module, int Count)
{
    public Finder Scaled(float factor) => new(X * factor, Y * factor, Module * factor, Count);

    public float DistanceTo(Finder other) => MathF.Sqrt(((X - other.X) * (X - other.X)) + ((Y - other.Y) * (Y - other.Y)));

    /// <summary>The same pattern seen again.</summary>
    public bool IsAt(Finder other) => DistanceTo(other) < 2 * Math.Max(Module, other.Module) && Module < 1.7f * other.Module && other.Module < 1.7f * Module;

    public Finder With(Finder again)
    {
        var all = Count + again.Count;
        float Mean(float a, float b) => ((a * Count) + (b * again.Count)) / all;
        return new Finder(Mean(X, again.X), Mean(Y, again.Y), Mean(Module, again.Module), all);
    }
}
