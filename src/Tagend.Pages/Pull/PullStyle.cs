using Tagend.Blocks;

namespace Tagend.Pages.Pull;

/// <summary>How close a pull sheet stands.</summary>
/// <param name="Text">Of its tables.</param>
/// <param name="Padding">Over and under the text of a row, in points.</param>
internal sealed record PullStyle(Output.TextStyle Text, float Padding)
{
    /// <summary>The first whose last page is not nearly empty is taken.</summary>
    public static IReadOnlyList<PullStyle> FromRoomyToTight { get; } =
    [
        new(TypeScale.Sheet with { Size = 9, Leading = 1.25f }, 2.5f),
        new(TypeScale.Sheet with { Size = 9, Leading = 1.2f }, 1.5f),
        new(TypeScale.Sheet with { Size = 8.5f, Leading = 1.2f }, 0.8f),
    ];
}
