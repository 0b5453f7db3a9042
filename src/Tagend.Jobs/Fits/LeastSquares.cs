namespace Tagend.Fits;

/// <summary>What least squares finds.</summary>
/// <param name="Found">The unknowns, in the order of the columns.</param>
/// <param name="Variances">Variances and covariances of the unknowns.</param>
/// <param name="Scatter">Standard deviation of one y about the fit.</param>
/// <param name="Leverages">Share of each y that is its own fitted value.</param>
internal sealed record LeastSquaresFit(double[] Found, double[,] Variances, double Scatter, IReadOnlyList<double> Leverages);

/// <summary>Ordinary least squares of a few unknowns by the normal equations.</summary>
internal static class LeastSquares
{
    /// <summary>y = Σ unknown × column.</summary>
    /// <param name="rows">A row of columns for each y; more rows than columns, and no column a sum of others.</param>
    public static LeastSquaresFit Solve(IReadOnlyList<double[]> rows, IReadOnlyList<double> y)
    {
        var unknowns = rows[0].Length;
        var inverse = Inverse(Products(rows, unknowns));
        var found = new double[unknowns];
        for (var i = 0; i < unknowns; i++)
        {
            for (var j = 0; j < unknowns; j++)
            {
                found[i] += inverse[i, j] * rows.Select((row, n) => row[j] * y[n]).Sum();
            }
        }

        var variance = rows.Select((row, n) => Math.Pow(y[n] - row.Zip(found, (a, b) => a * b).Sum(), 2)).Sum() / (rows.Count - unknowns);
        var variances = (double[,])inverse.Clone();
        for (var i = 0; i < variances.Length; i++)
        {
            variances[i / unknowns, i % unknowns] *= variance;
        }

        return new LeastSquaresFit(found, variances, Math.Sqrt(variance), [.. rows.Select(row => Form(inverse, row, row))]);
    }

    /// <summary>aᵀ·M·b: of variances, the covariance of two sums of the unknowns, each unknown times its part of a or of b.</summary>
    public static double Form(double[,] matrix, double[] a, double[] b)
    {
        var sum = 0.0;
        for (var i = 0; i < a.Length; i++)
        {
            for (var j = 0; j < b.Length; j++)
            {
                sum += a[i] * matrix[i, j] * b[j];
            }
        }

        return sum;
    }

    private static double[,] Products(IReadOnlyList<double[]> rows, int size)
    {
        var products = new double[size, size];
        for (var i = 0; i < size; i++)
        {
            for (var j = 0; j < size; j++)
            {
                products[i, j] = rows.Sum(row => row[i] * row[j]);
            }
        }

        return products;
    }

    /// <summary>By Gauss and Jordan; the products of columns need no other order of rows.</summary>
    private static double[,] Inverse(double[,] matrix)
    {
        var size = matrix.GetLength(0);
        var inverse = new double[size, size];
        for (var i = 0; i < size; i++)
        {
            inverse[i, i] = 1;
        }

        for (var pivot = 0; pivot < size; pivot++)
        {
            var divisor = matrix[pivot, pivot];
            for (var column = 0; column < size; column++)
            {
                matrix[pivot, column] /= divisor;
                inverse[pivot, column] /= divisor;
            }

            for (var row = 0; row < size; row++)
            {
                var factor = row == pivot ? 0 : matrix[row, pivot];
                for (var column = 0; column < size; column++)
                {
                    matrix[row, column] -= factor * matrix[pivot, column];
                    inverse[row, column] -= factor * inverse[pivot, column];
                }
            }
        }

        return inverse;
    }
}
