using Tagend.Measures;
using Tagend.Specs;

namespace Tagend.Pages.Parts;

/// <summary>What sits where on the finished piece, under the same key in tables and drawings.</summary>
internal static class CardPlaces
{
    /// <summary>Number of a serving in table and drawing.</summary>
    public static string ServingKey(int index) => $"{index + 1}";

    /// <summary>Letter of a separator or mark in table and drawing.</summary>
    public static string PlaceKey(int index) => $"{(char)('a' + index)}";

    /// <summary>Separators and marks, in order from end A.</summary>
    public static IReadOnlyList<CardPlace> PlacesOf(BuildSpec spec, CardWriter write) =>
    [
        .. spec.Separators.Select(s => (Name: write.Separator(s.Name), s.Position, Separator: (Separator?)s, Mark: (Mark?)null))
            .Concat(spec.Marks.Select(m => (Name: write.Kind(m.Kind), m.Position, Separator: (Separator?)null, Mark: (Mark?)m)))
            .OrderBy(p => p.Position)
            .Select((p, i) => new CardPlace(PlaceKey(i), p.Name, p.Position, p.Separator, p.Mark)),
    ];
}

/// <summary>A separator or a mark.</summary>
/// <param name="Key">Its letter in tables and drawings.</param>
/// <param name="Position">From end A, on the finished piece.</param>
internal sealed record CardPlace(string Key, string Name, Length Position, Separator? Separator, Mark? Mark);
