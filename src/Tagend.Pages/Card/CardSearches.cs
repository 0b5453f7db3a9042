using Tagend.Pages.Parts;

namespace Tagend.Pages.Card;

/// <summary>The searches for styles of a batch of cards, one for each kind of piece and side. Belongs to one thread.</summary>
internal sealed class CardSearches
{
    /// <summary>Of a front; a back has room enough for the roomiest.</summary>
    private const int LikelyFront = 2;

    private readonly Dictionary<(string Kind, IReadOnlyList<CardStyle> Styles), StyleSearch<CardStyle>> _searches = [];

    public StyleSearch<CardStyle> Of(string kind, IReadOnlyList<CardStyle> styles)
    {
        if (!_searches.TryGetValue((kind, styles), out var search))
        {
            search = new StyleSearch<CardStyle>(styles, styles == CardStyle.Front ? LikelyFront : 0);
            _searches.Add((kind, styles), search);
        }

        return search;
    }
}
