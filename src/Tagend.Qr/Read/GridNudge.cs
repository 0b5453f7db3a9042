using Tagend.Qr.Symbol;

namespace Tagend.Qr.Read;

/// <summary>Moves a grid on a plane to where a blurred symbol's light agrees best with what its modules, as far as they are known, make of it.</summary>
/// <remarks>One step of Gauss and Newton's least squares over the corners' eight coordinates.</remarks>
internal static class GridNudge
{
    /// <summary>Modules around, against whose mean the light is seen.</summary>
    private const int Reach = 8;

    /// <summary>A module's side, of which a corner moves no more at once.</summary>
    private const float MostModules = 1;

    /// <summary>Of the sum over all modules: what is not told by the light stays as it is.</summary>
    private const double Hold = 0.002;

    /// <returns>Null where nothing is learnt.</returns>
    public static ModuleGrid? Of(GrayPicture picture, ModuleGrid grid, out long looks)
    {
        var (layout, size) = (SymbolLayout.Of(grid.Size), grid.Size);
        var light = ModuleLight.Read(picture, grid);
        looks = light.Length * 9L * 3;
        var seen = ModuleLight.AgainstMean(light, size, Reach);
        if (BlurModel.Undo(layout, seen, ModuleLight.AgainstMean(light, size, 1), out var explained) is null)
        {
            return null;
        }

        var (right, down) = (Slope(new(1, 0)), Slope(new(0, 1)));
        var moves = Enumerable.Range(0, Quadrilateral.Coordinates).Select(c => new ModuleGrid(size, grid.Corners.Moved(c, 1))).ToArray();
        var normal = new double[Quadrilateral.Coordinates, Quadrilateral.Coordinates + 1];
        Span<double> row = stackalloc double[Quadrilateral.Coordinates];
        for (var i = 0; i < seen.Length; i++)
        {
            var (u, v) = ((i % size) + 0.5f, (i / size) + 0.5f);
            var at = grid.OnPlane(u, v);
            for (var c = 0; c < row.Length; c++)
            {
                var moved = moves[c].OnPlane(u, v) - at;
                row[c] = (right[i] * moved.X) + (down[i] * moved.Y);
            }

            for (var a = 0; a < row.Length; a++)
            {
                for (var b = 0; b < row.Length; b++)
                {
                    normal[a, b] += row[a] * row[b];
                }

                normal[a, row.Length] += row[a] * (explained[i] - seen[i]);
            }
        }

        for (var a = 0; a < row.Length; a++)
        {
            normal[a, a] += Hold * seen.Length;
        }

        LeastSquares.Solve(normal);
        var corners = grid.Corners;
        var most = MostModules * grid.Module;
        for (var c = 0; c < row.Length; c++)
        {
            corners = corners.Moved(c, Math.Clamp((float)normal[c, row.Length], -most, most));
        }

        return new ModuleGrid(size, corners);

        // How what is seen changes a pixel on.
        float[] Slope(Point step)
        {
            var there = ModuleLight.AgainstMean(ModuleLight.Read(picture, new ModuleGrid(size, grid.Corners.Moved(step))), size, Reach);
            for (var i = 0; i < there.Length; i++)
            {
                there[i] -= seen[i];
            }

            return there;
        }
    }
}
