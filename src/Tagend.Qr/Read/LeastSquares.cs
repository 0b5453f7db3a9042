namespace Tagend.Qr.Read;

/// <summary>Solves normal equations.</summary>
internal static class LeastSquares
{
    /// <summary>Gauss and Jordan's elimination in place; the last column becomes the solution.</summary>
    /// <param name="normal">Symmetric and positive, with the right side as a last column.</param>
    public static void Solve(double[,] normal)
    {
        var unknowns = normal.GetLength(0);
        for (var pivot = 0; pivot < unknowns; pivot++)
        {
            for (var r = 0; r < unknowns; r++)
            {
                if (r == pivot)
                {
                    continue;
                }

                var factor = normal[r, pivot] / normal[pivot, pivot];
                for (var c = pivot; c <= unknowns; c++)
                {
                    normal[r, c] -= factor * normal[pivot, c];
                }
            }
        }

        for (var r = 0; r < unknowns; r++)
        {
            normal[r, unknowns] /= normal[r, r];
        }
    }
}
