using System.Numerics;
using Tagend.Qr.Symbol;

namespace Tagend.Qr.Read;

/// <summary>
/// Undoes a blur wider than a module: learns from modules that are known how each module's neighbors leak into its light,
/// then looks for the darkness of all modules, between light and dark, that explains best what was seen.
/// </summary>
/// <remarks>Least squares within bounds, by projected gradients (Landweber's iteration): the bounds are what makes it stable.</remarks>
internal sealed class BlurModel
{
    /// <summary>Neighbors that leak in, to each side.</summary>
    private const int Reach = 2;

    private const int Side = (2 * Reach) + 1;
    private const int Border = 2 * Reach;

    /// <summary>Half of the neighbors and the module itself are learnt: a blur is taken to be the same on opposite sides.</summary>
    private const int Pairs = (Side * Side / 2) + 1;

    /// <summary>And the light that is there without any.</summary>
    private const int Unknowns = Pairs + 1;

    private const int Steps = 40;

    /// <summary>Of learning from all modules, after those that are known.</summary>
    private const int Rounds = 3;

    private readonly int _size;
    private readonly int _stride;
    private readonly float[] _seen;
    private readonly sbyte[] _known;
    private readonly float[] _kernel = new float[Side * Side];
    private float _offset;

    private BlurModel(int size, float[] seen, sbyte[] known)
    {
        (_size, _seen, _known) = (size, seen, known);
        _stride = size + (2 * Border);
    }

    /// <param name="seen">Darkness, in any unit, even over the symbol.</param>
    /// <param name="guess">Above 0 where a module seems dark.</param>
    /// <returns>Darkness, -1 to 1; null where nothing can be learnt.</returns>
    public static float[]? Undo(SymbolLayout layout, float[] seen, float[] guess) => Undo(layout, seen, guess, out _);

    /// <param name="layout">Of the symbol.</param>
    /// <param name="seen">Darkness, in any unit, even over the symbol.</param>
    /// <param name="guess">Above 0 where a module seems dark.</param>
    /// <param name="explained">What is seen if the model is right, in the same unit.</param>
    /// <returns>Darkness, -1 to 1; null where nothing can be learnt.</returns>
    public static float[]? Undo(SymbolLayout layout, float[] seen, float[] guess, out float[] explained)
    {
        explained = [];
        var model = new BlurModel(layout.Size, seen, layout.FunctionPatterns);
        var darkness = model.Framed(i => layout.FunctionPatterns[i] != 0 ? layout.FunctionPatterns[i] : guess[i] > 0 ? 0.7f : -0.7f);
        if (!model.Learn(darkness, knownOnly: true))
        {
            return null;
        }

        model.Explain(darkness);
        for (var round = 0; round < Rounds && model.Learn(darkness, knownOnly: false); round++)
        {
            model.Explain(darkness);
        }

        var (result, leaked) = (new float[seen.Length], new float[darkness.Length]);
        model.Leak(darkness, leaked);
        explained = new float[seen.Length];
        for (var i = 0; i < result.Length; i++)
        {
            (result[i], explained[i]) = (darkness[model.Place(i)], leaked[model.Place(i)] + model._offset);
        }

        return result;
    }

    /// <summary>In the array with a frame of light modules around.</summary>
    private int Place(int module) => (((module / _size) + Border) * _stride) + (module % _size) + Border;

    private float[] Framed(Func<int, float> value)
    {
        var framed = new float[_stride * _stride];
        Array.Fill(framed, -1f);
        for (var i = 0; i < _seen.Length; i++)
        {
            framed[Place(i)] = value(i);
        }

        return framed;
    }

    /// <summary>Least squares for the kernel, held back a little towards none.</summary>
    private bool Learn(float[] darkness, bool knownOnly)
    {
        var normal = new double[Unknowns, Unknowns + 1];
        var row = new double[Unknowns];
        var equations = 0;
        for (var i = 0; i < _seen.Length; i++)
        {
            if (knownOnly && !AllKnown(i % _size, i / _size))
            {
                continue;
            }

            equations++;
            var place = Place(i);
            for (var k = 0; k < Pairs; k++)
            {
                var step = ((k / Side) - Reach) * _stride + (k % Side) - Reach;
                row[k] = step == 0 ? darkness[place] : darkness[place + step] + darkness[place - step];
            }

            row[Pairs] = 1;
            for (var a = 0; a < Unknowns; a++)
            {
                for (var b = 0; b < Unknowns; b++)
                {
                    normal[a, b] += row[a] * row[b];
                }

                normal[a, Unknowns] += row[a] * _seen[i];
            }
        }

        for (var a = 0; a < Pairs; a++)
        {
            normal[a, a] += 0.01 * equations;
        }

        if (equations < 2 * Unknowns)
        {
            return false;
        }

        LeastSquares.Solve(normal);
        for (var k = 0; k < Pairs; k++)
        {
            _kernel[k] = _kernel[(Side * Side) - 1 - k] = (float)normal[k, Unknowns];
        }

        _offset = (float)normal[Pairs, Unknowns];
        return _kernel[Pairs - 1] > 0;
    }

    private bool AllKnown(int x, int y)
    {
        for (var d = 0; d < Side * Side; d++)
        {
            var (nx, ny) = (x + (d % Side) - Reach, y + (d / Side) - Reach);
            if (nx >= 0 && ny >= 0 && nx < _size && ny < _size && _known[(ny * _size) + nx] == 0)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>With momentum: Beck and Teboulle, A Fast Iterative Shrinkage-Thresholding Algorithm, 2009.</summary>
    private void Explain(float[] darkness)
    {
        var (rest, leaked, ahead, momentum) = (new float[darkness.Length], new float[darkness.Length], (float[])darkness.Clone(), 1f);
        var total = _kernel.Sum(Math.Abs);
        // At most 1 over the largest eigenvalue, which is at most the kernel's sum squared.
        var rate = 1 / (total * total);
        for (var step = 0; step < Steps; step++)
        {
            Leak(ahead, leaked);
            for (var i = 0; i < _seen.Length; i++)
            {
                var place = Place(i);
                rest[place] = _seen[i] - _offset - leaked[place];
            }

            Leak(rest, leaked);
            var next = (1 + MathF.Sqrt(1 + (4 * momentum * momentum))) / 2;
            for (var i = 0; i < _seen.Length; i++)
            {
                if (_known[i] == 0)
                {
                    var place = Place(i);
                    var moved = Math.Clamp(ahead[place] + (rate * leaked[place]), -1, 1);
                    ahead[place] = moved + ((momentum - 1) / next * (moved - darkness[place]));
                    darkness[place] = moved;
                }
            }

            momentum = next;
        }
    }

    /// <summary>The kernel over all modules, not over their frame.</summary>
    private void Leak(float[] from, float[] to)
    {
        var last = (Border + _size - 1) * _stride + Border + _size;
        var first = (Border * _stride) + Border;
        Span<int> steps = stackalloc int[Side * Side];
        for (var k = 0; k < steps.Length; k++)
        {
            steps[k] = (((k / Side) - Reach) * _stride) + (k % Side) - Reach;
        }

        var place = first;
        for (; place + Vector<float>.Count <= last; place += Vector<float>.Count)
        {
            var sum = Vector<float>.Zero;
            for (var k = 0; k < steps.Length; k++)
            {
                sum += new Vector<float>(from, place + steps[k]) * _kernel[k];
            }

            sum.CopyTo(to, place);
        }

        for (; place < last; place++)
        {
            to[place] = 0;
            for (var k = 0; k < steps.Length; k++)
            {
                to[place] += from[place + steps[k]] * _kernel[k];
            }
        }
    }
}
