using System.Text.RegularExpressions;

namespace Tagend.Workshop.Printing;

/// <summary>Files that an earlier, larger run left in a folder beside those of this one.</summary>
public static class EarlierFiles
{
    /// <summary>
    /// Removes them: volumes, pictures and stocks of the kinds of paper that this run has printed, which it would have written
    /// over had it been as large. Other kinds and files of other names stay.
    /// </summary>
    /// <param name="written">Paths of all files of this run; with none nothing is removed.</param>
    /// <param name="stocks">Names of label stocks, which are part of the names of some files.</param>
    /// <returns>Names of what was removed.</returns>
    /// <exception cref="Problems.TagendException">One cannot be removed.</exception>
    public static IReadOnlyList<string> Remove(PrintPlan plan, IEnumerable<string> stocks, IReadOnlyCollection<string> written)
    {
        if (written.Count == 0)
        {
            return [];
        }

        var kinds = string.Join('|', plan.Kinds.Select(k => Regex.Escape(k.Name)));
        var ofStock = string.Join('|', stocks.Select(Regex.Escape));
        var pattern = $@"^({kinds})(-({ofStock}))?(-\d{{3,}})?(\.pdf|(-\d+dpi)?-\d{{2,}}\.png)$";
        var names = written.Select(Path.GetFileName).ToHashSet();
        List<string> earlier =
        [
            .. Directory.EnumerateFiles(plan.Folder).Select(f => Path.GetFileName(f)!)
                .Where(f => !names.Contains(f) && Regex.IsMatch(f, pattern, RegexOptions.CultureInvariant))
                .Order(StringComparer.Ordinal),
        ];
        try
        {
            earlier.ForEach(f => File.Delete(Path.Combine(plan.Folder, f)));
            return earlier;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new Problems.TagendException(
                $"{plan.Folder}: files of an earlier, larger run are still there and cannot be removed ({e.Message.TrimEnd('.')}): delete {string.Join(", ", earlier)}", e);
        }
    }
}
