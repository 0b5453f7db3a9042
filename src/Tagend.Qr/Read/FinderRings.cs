namespace Tagend.Qr.Read;

/// <summary>Looks around the middle of a finder pattern: in every direction its rings end at 1.5, 2.5 and 3.5 parts.</summary>
/// <remarks>
/// Squares within one another keep these ratios in each direction, turned or slanted however they are; texture that has
/// them across and down by chance seldom has them all around.
/// </remarks>
internal static class FinderRings
{
    private const int Directions = 16;

    /// <summary>The corners of a slanted pattern are so many of its modules away, at the most.</summary>
    private const float Farthest = 12;

    /// <summary>Of all directions, the share that shows the rings.</summary>
    public static float Share(BinaryImage picture, FinderPattern finder)
    {
        var alike = 0;
        var step = finder.Module < 3 ? 0.5f : 1f;
        for (var n = 0; n < Directions; n++)
        {
            var (sin, cos) = MathF.SinCos(n * 2 * MathF.PI / Directions);
            alike += IsAlike(picture, finder.Middle, new Point(cos * step, sin * step), step, Farthest * finder.Module) ? 1 : 0;
        }

        return (float)alike / Directions;
    }

    private static bool IsAlike(BinaryImage picture, Point middle, Point step, float length, float farthest)
    {
        Span<float> ends = stackalloc float[3];
        var (ring, dark) = (0, true);
        for (var n = 1; n * length < farthest && ring < ends.Length; n++)
        {
            var at = middle + (step * n);
            var (x, y) = ((int)MathF.Floor(at.X), (int)MathF.Floor(at.Y));
            if (picture.IsDark(x, y) != dark)
            {
                ends[ring++] = (n - 0.5f) * length;
                dark = !dark;
            }
        }

        if (ring < ends.Length)
        {
            return false;
        }

        // Light bleeds over dark edges or the other way around, by as much at each: differences of ends of the same kind are clean.
        var module = (ends[2] - ends[0]) / 2;
        var slack = (0.5f * module) + 0.7f;
        return Math.Abs(ends[0] - (1.5f * module)) < slack && Math.Abs(ends[1] - (2.5f * module)) < slack && Math.Abs(ends[2] - (3.5f * module)) < slack;
    }
}
