namespace Tagend.Qr.Read;

/// <summary>The smoothest bend through places whose pulls are known: a thin plate held there.</summary>
/// <remarks>Thin-plate splines: Bookstein, Principal Warps, IEEE Transactions on Pattern Analysis and Machine Intelligence 11, 1989.</remarks>
internal sealed class ThinPlate
{
    /// <summary>The plane that the plate bends from: a constant and two slopes.</summary>
    private const int Plane = 3;

    /// <summary>Lets the plate miss a place a little, for each was found to a fraction of a module.</summary>
    private const double Slack = 2;

    private readonly IReadOnlyList<(Point Place, Point Pull)> _known;
    private readonly double[,] _system;

    /// <param name="known">Three or more, not in a line.</param>
    public ThinPlate(IReadOnlyList<(Point Place, Point Pull)> known)
    {
        _known = known;
        var (n, all) = (known.Count, known.Count + Plane);
        _system = new double[all, all + 2];
        for (var i = 0; i < n; i++)
        {
            var (place, pull) = known[i];
            for (var j = 0; j < n; j++)
            {
                _system[i, j] = i == j ? Slack : Bend(place, known[j].Place);
            }

            (_system[i, n], _system[i, n + 1], _system[i, n + 2]) = (1, place.X, place.Y);
            (_system[n, i], _system[n + 1, i], _system[n + 2, i]) = (1, place.X, place.Y);
            (_system[i, all], _system[i, all + 1]) = (pull.X, pull.Y);
        }

        Solve();
    }

    public Point PullAt(Point at)
    {
        var (n, right) = (_known.Count, _known.Count + Plane);
        var x = _system[n, right] + (_system[n + 1, right] * at.X) + (_system[n + 2, right] * at.Y);
        var y = _system[n, right + 1] + (_system[n + 1, right + 1] * at.X) + (_system[n + 2, right + 1] * at.Y);
        for (var i = 0; i < n; i++)
        {
            var bend = Bend(at, _known[i].Place);
            x += _system[i, right] * bend;
            y += _system[i, right + 1] * bend;
        }

        return new Point((float)x, (float)y);
    }

    private static double Bend(Point a, Point b)
    {
        var (dx, dy) = (a.X - b.X, a.Y - b.Y);
        double square = (dx * dx) + (dy * dy);
        return square < 1e-9 ? 0 : square * Math.Log(square);
    }

    /// <summary>Gauss's elimination, by the largest pivot; the right sides become the solution.</summary>
    private void Solve()
    {
        var (rows, columns) = (_system.GetLength(0), _system.GetLength(1));
        for (var pivot = 0; pivot < rows; pivot++)
        {
            var largest = pivot;
            for (var r = pivot + 1; r < rows; r++)
            {
                largest = Math.Abs(_system[r, pivot]) > Math.Abs(_system[largest, pivot]) ? r : largest;
            }

            for (var c = pivot; c < columns; c++)
            {
                (_system[pivot, c], _system[largest, c]) = (_system[largest, c], _system[pivot, c]);
            }

            for (var r = 0; r < rows; r++)
            {
                var factor = r == pivot ? 0 : _system[r, pivot] / _system[pivot, pivot];
                for (var c = pivot; factor != 0 && c < columns; c++)
                {
                    _system[r, c] -= factor * _system[pivot, c];
                }
            }
        }

        for (var r = 0; r < rows; r++)
        {
            for (var c = rows; c < columns; c++)
            {
                _system[r, c] /= _system[r, r];
            }
        }
    }
}
