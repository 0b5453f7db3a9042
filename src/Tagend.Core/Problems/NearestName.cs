namespace Tagend.Problems;

/// <summary>Finds the name that was probably meant.</summary>
public static class NearestName
{
    /// <summary>The nearest of some names, where one is near enough to be offered; else null.</summary>
    /// <remarks>
    /// Near: a third of the letters changed, added or dropped at most, or one name within the other. Of two that are
    /// equally near none is offered: it would be a guess.
    /// </remarks>
    public static string? To(string wanted, IEnumerable<string> names)
    {
        var near = names
            .Select(name => (Name: name, Changes: Changes(wanted, name)))
            .Where(c => c.Changes <= wanted.Length / 3 || IsWithin(wanted, c.Name) || IsWithin(c.Name, wanted))
            .OrderBy(c => c.Changes)
            .Take(2)
            .ToList();
        return near.Count == 0 || (near.Count == 2 && near[0].Changes == near[1].Changes) ? null : near[0].Name;
    }

    /// <summary>The name that a word was meant to be, where that is one of few: half of its letters may be wrong, but no other name may be as near.</summary>
    /// <remarks>Two letters that changed places are two changes, and the likeliest slip in a short word.</remarks>
    public static string? Meant(string word, IEnumerable<string> names)
    {
        var near = names.Select(n => (Name: n, Changes: Changes(word, n))).OrderBy(n => n.Changes).Take(2).ToList();
        return near.Count > 0 && near[0].Changes * 2 <= word.Length && (near.Count == 1 || near[0].Changes < near[1].Changes) ? near[0].Name : null;
    }

    /// <summary>Fewest letters changed, added or dropped that make one text the other (Levenshtein 1966).</summary>
    public static int Changes(string a, string b)
    {
        var previous = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var current = new int[b.Length + 1];
            current[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var swap = previous[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                current[j] = Math.Min(swap, 1 + Math.Min(previous[j], current[j - 1]));
            }

            previous = current;
        }

        return previous[^1];
    }

    private static bool IsWithin(string inner, string outer) =>
        inner.Length >= 3 && outer.Contains(inner, StringComparison.Ordinal);
}
