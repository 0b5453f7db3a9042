using System.Diagnostics;
using System.Globalization;

namespace Tagend.Output;

/// <summary>Names of files that are not yet whole, and what becomes of those that a killed run left behind.</summary>
internal static class Drafts
{
    /// <summary>Behind the file's own name: whose it is. A folder may be on a drive that other machines write to.</summary>
    private static readonly string Mark = $".draft-{Environment.MachineName}-";

    public static string NameFor(string file) =>
        string.Create(CultureInfo.InvariantCulture, $".{file}{Mark}{Environment.ProcessId}-{Guid.NewGuid():N}");

    /// <summary>Removes the drafts of this machine's programs that no longer run.</summary>
    /// <param name="folder">Need not be there.</param>
    public static void RemoveAbandoned(string folder)
    {
        foreach (var path in Directory.Exists(folder) ? Directory.EnumerateFiles(folder, $".*{Mark}*") : [])
        {
            var process = path[(path.LastIndexOf(Mark, StringComparison.Ordinal) + Mark.Length)..].Split('-')[0];
            if (int.TryParse(process, NumberStyles.None, CultureInfo.InvariantCulture, out var id) && !IsRunning(id))
            {
                Remove(path);
            }
        }
    }

    public static void Remove(string draft)
    {
        try
        {
            File.Delete(draft);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // What was told the user already matters more than a draft left behind.
        }
    }

    private static bool IsRunning(int process)
    {
        try
        {
            using var found = Process.GetProcessById(process);
            return true;
        }
        catch (ArgumentException)
        {
            return false;
        }
    }
}
