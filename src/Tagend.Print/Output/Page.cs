using SkiaSharp;
using Tagend.Catalog;

namespace Tagend.Output;

/// <summary>A page ready to be drawn.</summary>
/// <param name="Width">Of the paper, across the feed, in points.</param>
/// <param name="Height">Of the paper, along the feed, in points.</param>
/// <param name="Inks">Placed on the paper upright, or lying: <see cref="IsLying"/>.</param>
public sealed record Page(float Width, float Height, IReadOnlyList<Ink> Inks)
{
    /// <summary>Titles of the bookmarks that lead to it.</summary>
    public IReadOnlyList<string> Bookmarks { get; init; } = [];

    /// <summary>Of what is written on it, and on those after it to the next bookmark, as in RFC 5646; null for the document's.</summary>
    public string? Language { get; init; }

    /// <summary>The inks' x runs down the paper, along the feed, and their y from its right edge to its left.</summary>
    public bool IsLying { get; init; }

    /// <summary>Cut from a roll, so that it is as long as what is drawn on it.</summary>
    public bool IsFromRoll { get; init; }

    /// <summary>Drawn so many times as wide, about the middle of the paper.</summary>
    public float Across { get; private init; } = 1;

    /// <summary>Drawn so many times as high, about the middle of the paper, or of a roll from its start.</summary>
    public float Along { get; private init; } = 1;

    /// <summary>The page as a printer must be given it for its paper to be true. A sheet keeps its size.</summary>
    public Page Through(PrinterScale scale)
    {
        var (across, along) = ((float)scale.Across, (float)scale.Along);
        return this with { Across = across, Along = along, Height = IsFromRoll ? Height / Along * along : Height };
    }

    /// <summary>The page as it is read on a screen: a lying one on its side.</summary>
    public Page Readable => IsLying ? new Page(Height, Width, Inks) : this;

    /// <summary>From the inks' places to the paper's, upright.</summary>
    internal SKMatrix Setting
    {
        get
        {
            var (left, top) = (Width * (1 - Across) / 2, IsFromRoll ? 0 : Height * (1 - Along) / 2);
            return IsLying
                ? new SKMatrix(0, -Across, left + (Across * Width), Along, 0, top, 0, 0, 1)
                : new SKMatrix(Across, 0, left, 0, Along, top, 0, 0, 1);
        }
    }
}
