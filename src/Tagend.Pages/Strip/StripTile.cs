using Tagend.Measures;

namespace Tagend.Pages.Strip;

/// <summary>A part of a strip that is printed in one length, to be glued to its neighbors.</summary>
/// <param name="Number">From 1.</param>
/// <param name="From">Of the whole strip, from end A.</param>
/// <param name="To">Of the whole strip, from end A.</param>
internal sealed record StripTile(int Number, int Count, Length From, Length To)
{
    /// <summary>The least paper under a joint.</summary>
    private static readonly Length LeastLap = Length.FromInches(0.4);

    public bool IsFirst => Number == 1;

    public bool IsLast => Number == Count;

    /// <summary>Cuts a strip at whole steps from end A.</summary>
    /// <param name="room">Longest part with its lap.</param>
    /// <param name="step">All joints are at whole multiples of it.</param>
    public static IReadOnlyList<StripTile> Cut(Length strip, Length room, Length step)
    {
        var pitch = step * Math.Floor((room - LeastLap) / step);
        var count = 1 + Math.Max(0, (int)Math.Ceiling((strip - room) / pitch));
        return
        [
            .. Enumerable.Range(1, count).Select(
                n => new StripTile(n, count, pitch * (n - 1), n == count ? strip : pitch * n)),
        ];
    }
}
