using Tagend.Problems;

namespace Tagend.Catalog;

/// <summary>Reads the words of a customer sheet's language.</summary>
public static class SheetLanguageReader
{
    private const string Prefix = "words.";
    private const string Suffix = ".toml";

    /// <summary>Keys of the words a sheet needs.</summary>
    private static readonly string[] WordKeys =
        ["danger", "warning", "caution", "notice", "peep", "nock_point", "speed_nock", "drawing"];

    /// <summary>The languages a templates folder has words for.</summary>
    public static IReadOnlyList<string> Languages(string folder) => Directory.Exists(SheetsOf(folder))
        ? [.. Directory.EnumerateFiles(SheetsOf(folder), Prefix + "*" + Suffix)
            .Select(f => Path.GetFileName(f)[Prefix.Length..^Suffix.Length])
            .Order(StringComparer.Ordinal)]
        : [];

    /// <summary>The words of a language; null, with its problems, where the file has mistakes.</summary>
    /// <exception cref="TagendException">There is no such language, or its file cannot be opened.</exception>
    public static SheetLanguage? Read(string folder, string language, ICollection<Problem> problems)
    {
        var name = $"{Prefix}{language}{Suffix}";
        var path = Path.Combine(SheetsOf(folder), name);
        if (!File.Exists(path))
        {
            throw new TagendException(CatalogWording.NoLanguage(language, SheetsOf(folder), Languages(folder)));
        }

        var found = new List<Problem>();
        var file = TomlFile.Read(path, $"sheets/{name}", found);
        var words = file?.Section("words");
        var terms = file?.Sections.FirstOrDefault(s => s.Name == "terms");
        var read = words is null ? null : new SheetLanguage(
            language,
            file!.Root.Text("tag"),
            file.Root.Text("decimal"),
            file.Root.Text("date"),
            file.Root.Text("first_day", "1"),
            MonthsOf(file.Root),
            file.Root.Text("inch"),
            file.Root.Text("millimeter"),
            WordKeys.ToDictionary(k => k, words.Text),
            terms?.Keys.ToDictionary(k => k, terms.Text) ?? []);
        foreach (var section in file?.Sections.Prepend(file.Root) ?? [])
        {
            section.RefuseUnknown();
        }

        foreach (var problem in found)
        {
            problems.Add(problem);
        }

        return found.Count > 0 ? null : read;
    }

    private static string[] MonthsOf(TomlSection root)
    {
        const int InAYear = 12;
        var text = root.Text("months");
        var months = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (months.Length != InAYear)
        {
            root.Report("months", text, CatalogWording.Expected("the names of twelve months with spaces between"));
        }

        return months;
    }

    private static string SheetsOf(string folder) => Path.Combine(folder, "sheets");
}
