using Tagend.Qr.Symbol;

namespace Tagend.Qr.Read;

/// <summary>A picture in ever halved sizes.</summary>
/// <param name="largest">The largest there is.</param>
/// <param name="first">Its level: of the whole picture it is 0.</param>
internal sealed class PicturePyramid(GrayPicture largest, int first = 0)
{
    /// <summary>A symbol is sampled where its modules are at most so many pixels, so that each look is a mean of several.</summary>
    private const float LargestModule = 5;

    private readonly List<GrayPicture> _levels = [largest];

    /// <summary>The whole picture is level 0; each next is half as wide.</summary>
    public GrayPicture Level(int level)
    {
        while (_levels.Count <= level - first)
        {
            _levels.Add(_levels[^1].Halved());
        }

        return _levels[level - first];
    }

    public static float Scale(int level) => MathF.Pow(0.5f, level);

    public bool Has(int level) => Math.Min(largest.Width >> (level - first), largest.Height >> (level - first)) >= SymbolLayout.Smallest;

    /// <summary>The level to sample a symbol in.</summary>
    /// <param name="module">Pixels of the whole picture.</param>
    public int LevelFor(float module)
    {
        var level = first;
        while (module * Scale(level) > LargestModule && Has(level + 1))
        {
            level++;
        }

        return level;
    }
}
