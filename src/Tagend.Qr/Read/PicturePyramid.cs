using Tagend.Qr.Symbol;

namespace Tagend.Qr.Read;

/// <summary>A picture in ever halved sizes.</summary>
internal sealed class PicturePyramid(GrayPicture whole)
{
    /// <summary>A symbol is sampled where its modules are at most so many pixels, so that each look is a mean of several.</summary>
    private const float LargestModule = 5;

    private readonly List<GrayPicture> _levels = [whole];

    /// <summary>The whole picture is level 0; each next is half as wide.</summary>
    public GrayPicture Level(int level)
    {
        while (_levels.Count <= level)
        {
            _levels.Add(_levels[^1].Halved());
        }

        return _levels[level];
    }

    public static float Scale(int level) => MathF.Pow(0.5f, level);

    public bool Has(int level) => Math.Min(whole.Width >> level, whole.Height >> level) >= SymbolLayout.Smallest;

    /// <summary>The level to sample a symbol in.</summary>
    /// <param name="module">Pixels of the whole picture.</param>
    public int LevelFor(float module)
    {
        var level = 0;
        while (module * Scale(level) > LargestModule && Has(level + 1))
        {
            level++;
        }

        return level;
    }
}
