namespace Tagend.Pages.Parts;

/// <summary>Finds the roomiest of some styles in which a paper fits.</summary>
/// <remarks>
/// It begins with the style of the paper before, for papers of one kind are much alike. Where a style fits, all tighter ones are
/// taken to fit too, so that the style a paper gets does not depend on what came before it.
/// </remarks>
/// <param name="fromRoomyToTight">One at least.</param>
/// <param name="likely">The style that the first paper is most likely to get, from 0: a paper from a cold start has no other before it.</param>
internal sealed class StyleSearch<TStyle>(IReadOnlyList<TStyle> fromRoomyToTight, int likely)
{
    private int _last = likely;

    /// <param name="lay">Lays the paper out in a style.</param>
    /// <returns>As the roomiest that fits has it; where none fits, as the tightest has it.</returns>
    public TPaper Roomiest<TPaper>(Func<TStyle, TPaper> lay, Func<TPaper, bool> fits)
        where TPaper : class
    {
        var (from, to) = (0, fromRoomyToTight.Count - 1);
        TPaper? best = null;
        for (var next = Math.Min(_last, to - 1); from < to; next = to == _last ? to - 1 : (from + to) / 2)
        {
            var paper = lay(fromRoomyToTight[next]);
            if (fits(paper))
            {
                (best, to) = (paper, next);
            }
            else
            {
                from = next + 1;
            }
        }

        _last = to;
        return best ?? lay(fromRoomyToTight[^1]);
    }
}
