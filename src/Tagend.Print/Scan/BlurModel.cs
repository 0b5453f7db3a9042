namespace Tagend.Scan;

/// <summary>
/// Undoes a blur wider than a module: learns from modules that are known how each module's neighbors leak into its light,
/// then looks for the dark and light modules that explain best what was seen.
/// </summary>
internal sealed class BlurModel
{
    /// <summary>Neighbors that leak in, to each side.</summary>
    private const int Reach = 2;

    private const int Side = (2 * Reach) + 1;

    /// <summary>A blur is taken to be the same on opposite sides, so half of the neighbors and the module itself are learnt.</summary>
    private const int Unknowns = (Side * Side / 2) + 1;

    private const int Sweeps = 6;

    private readonly int _size;
    private readonly float[] _seen;
    private readonly sbyte[] _known;
    private readonly float[] _kernel = new float[Side * Side];

    private BlurModel(int size, float[] seen, sbyte[] known) => (_size, _seen, _known) = (size, seen, known);

    /// <param name="seen">Darkness, from -1 to 1 or so.</param>
    public static float[]? Undo(SymbolLayout layout, float[] seen)
    {
        var model = new BlurModel(layout.Size, seen, layout.Known);
        var guess = new float[seen.Length];
        for (var i = 0; i < guess.Length; i++)
        {
            guess[i] = layout.Known[i] != 0 ? layout.Known[i] : seen[i] > 0 ? 1 : -1;
        }

        if (!model.Learn(guess, knownOnly: true))
        {
            return null;
        }

        model.Explain(guess);
        model.Learn(guess, knownOnly: false);
        return model.Explain(guess);
    }

    private float At(float[] darkness, int x, int y) =>
        x < 0 || y < 0 || x >= _size || y >= _size ? -1 : darkness[(y * _size) + x];

    private bool IsKnown(int x, int y) => x < 0 || y < 0 || x >= _size || y >= _size || _known[(y * _size) + x] != 0;

    /// <summary>Least squares for the kernel, held back a little towards none.</summary>
    private bool Learn(float[] guess, bool knownOnly)
    {
        var normal = new double[Unknowns, Unknowns + 1];
        var row = new double[Unknowns];
        var equations = 0;
        for (var y = 0; y < _size; y++)
        {
            for (var x = 0; x < _size; x++)
            {
                if (knownOnly && !AllKnown(x, y))
                {
                    continue;
                }

                equations++;
                for (var k = 0; k < Unknowns; k++)
                {
                    var (dx, dy) = ((k % Side) - Reach, (k / Side) - Reach);
                    row[k] = k == Unknowns - 1 ? At(guess, x, y) : At(guess, x + dx, y + dy) + At(guess, x - dx, y - dy);
                }

                for (var a = 0; a < Unknowns; a++)
                {
                    for (var b = 0; b < Unknowns; b++)
                    {
                        normal[a, b] += row[a] * row[b];
                    }

                    normal[a, Unknowns] += row[a] * _seen[(y * _size) + x];
                }
            }
        }

        for (var a = 0; a < Unknowns; a++)
        {
            normal[a, a] += (0.02 * equations) + 1e-3;
        }

        Solve(normal);
        for (var k = 0; k < Unknowns; k++)
        {
            _kernel[k] = _kernel[(Side * Side) - 1 - k] = (float)normal[k, Unknowns];
        }

        return equations > 2 * Unknowns && _kernel[Unknowns - 1] > 0.05f;
    }

    private bool AllKnown(int x, int y)
    {
        for (var d = 0; d < Side * Side; d++)
        {
            if (!IsKnown(x + (d % Side) - Reach, y + (d / Side) - Reach))
            {
                return false;
            }
        }

        return true;
    }

    private static void Solve(double[,] normal)
    {
        for (var pivot = 0; pivot < Unknowns; pivot++)
        {
            for (var r = 0; r < Unknowns; r++)
            {
                if (r == pivot)
                {
                    continue;
                }

                var factor = normal[r, pivot] / normal[pivot, pivot];
                for (var c = pivot; c <= Unknowns; c++)
                {
                    normal[r, c] -= factor * normal[pivot, c];
                }
            }
        }

        for (var r = 0; r < Unknowns; r++)
        {
            normal[r, Unknowns] /= normal[r, r];
        }
    }

    /// <summary>Turns over each module that explains the light better the other way round, until none does.</summary>
    /// <returns>Darkness: which way each module is, times how much worse the other way would be.</returns>
    private float[] Explain(float[] guess)
    {
        var rest = new float[_seen.Length];
        var energy = _kernel.Sum(k => k * k);
        for (var i = 0; i < rest.Length; i++)
        {
            var (x, y, sum) = (i % _size, i / _size, 0f);
            for (var d = 0; d < _kernel.Length; d++)
            {
                sum += _kernel[d] * At(guess, x + (d % Side) - Reach, y + (d / Side) - Reach);
            }

            rest[i] = _seen[i] - sum;
        }

        var sure = new float[_seen.Length];
        for (var sweep = 0; sweep < Sweeps; sweep++)
        {
            var turned = false;
            for (var i = 0; i < guess.Length; i++)
            {
                // Turning module b over changes each rest by 2·b·k: the squares grow by 4·b·Σ k·rest + 4·Σ k².
                var (x, y, pull) = (i % _size, i / _size, 0f);
                for (var d = 0; d < _kernel.Length; d++)
                {
                    var (nx, ny) = (x + (d % Side) - Reach, y + (d / Side) - Reach);
                    if (nx >= 0 && ny >= 0 && nx < _size && ny < _size)
                    {
                        pull += _kernel[d] * rest[(ny * _size) + nx];
                    }
                }

                var worse = (guess[i] * pull) + energy;
                sure[i] = guess[i] * Math.Abs(worse);
                if (worse < 0 && _known[i] == 0)
                {
                    Turn(guess, rest, i);
                    sure[i] = -sure[i];
                    turned = true;
                }
            }

            if (!turned)
            {
                break;
            }
        }

        return sure;
    }

    private void Turn(float[] guess, float[] rest, int i)
    {
        var (x, y) = (i % _size, i / _size);
        for (var d = 0; d < _kernel.Length; d++)
        {
            var (nx, ny) = (x + (d % Side) - Reach, y + (d / Side) - Reach);
            if (nx >= 0 && ny >= 0 && nx < _size && ny < _size)
            {
                rest[(ny * _size) + nx] += 2 * guess[i] * _kernel[d];
            }
        }

        guess[i] = -guess[i];
    }
}
