namespace Tagend.Imports;

/// <summary>Headers of a source's file: two that differ in letter case or spaces alone are the same.</summary>
internal static class Headers
{
    public static string Plain(string header) =>
        string.Join(' ', header.ToLowerInvariant().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    /// <summary>Where a header stands; −1 where it does not.</summary>
    public static int IndexOf(IReadOnlyList<string> titles, string header)
    {
        var plain = Plain(header);
        for (var i = 0; i < titles.Count; i++)
        {
            if (Plain(titles[i]) == plain)
            {
                return i;
            }
        }

        return -1;
    }
}
