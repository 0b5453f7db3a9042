namespace Tagend.Pages.Parts;

/// <summary>Finds the roomiest of some styles in which a paper fits.</summary>
internal static class StyleSearch
{
    /// <summary>Halves the styles at each try: where one fits, all tighter ones are taken to fit too.</summary>
    /// <param name="fromRoomyToTight">One at least.</param>
    /// <param name="lay">Lays the paper out in a style.</param>
    /// <returns>As the roomiest that fits has it; where none fits, as the tightest has it.</returns>
    public static TPaper Roomiest<TStyle, TPaper>(
        IReadOnlyList<TStyle> fromRoomyToTight, Func<TStyle, TPaper> lay, Func<TPaper, bool> fits)
        where TPaper : class
    {
        var (from, to) = (0, fromRoomyToTight.Count - 1);
        TPaper? best = null;
        while (from < to)
        {
            var middle = (from + to) / 2;
            var paper = lay(fromRoomyToTight[middle]);
            if (fits(paper))
            {
                (best, to) = (paper, middle);
            }
            else
            {
                from = middle + 1;
            }
        }

        return best ?? lay(fromRoomyToTight[^1]);
    }
}
