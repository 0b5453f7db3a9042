using System.Text.RegularExpressions;
using Tagend.Problems;

namespace Tagend.Workshop.Printing;

/// <summary>Files that an earlier run left in a folder, and that this one takes the place of.</summary>
internal static class EarlierFiles
{
    /// <summary>Volumes, pictures and stocks of the kinds of paper that are printed. Other kinds and files of other names are left alone.</summary>
    /// <param name="stocks">Names of label stocks, which are part of the names of some files.</param>
    /// <returns>Their paths, by name.</returns>
    /// <exception cref="TagendException">The folder cannot be read.</exception>
    public static IReadOnlyList<string> Of(PrintPlan plan, IEnumerable<string> stocks)
    {
        var kinds = string.Join('|', plan.Kinds.Select(k => Regex.Escape(k.Name)));
        var ofStock = string.Join('|', stocks.Select(Regex.Escape));
        var pattern = $@"^({kinds})(-({ofStock}))?(-\d{{3,}})?(\.pdf|(-\d+dpi)?-\d{{2,}}\.png)$";
        try
        {
            return
            [
                .. Directory.EnumerateFiles(plan.Folder).Select(f => Path.GetFileName(f))
                    .Where(f => Regex.IsMatch(f, pattern, RegexOptions.CultureInvariant))
                    .Order(StringComparer.Ordinal)
                    .Select(f => Path.Combine(plan.Folder, f)),
            ];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new TagendException(
                $"{plan.Folder}: cannot see which papers of an earlier run are there ({SystemReason.Of(e)}); choose another folder", e);
        }
    }
}
