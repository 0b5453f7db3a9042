using Tagend.Problems;

namespace Tagend.Catalog;

/// <summary>Reads the words of a language: one file for all papers.</summary>
public static class PaperLanguageReader
{
    private const string WordsFolder = "words";
    private const string Suffix = ".toml";

    /// <summary>The languages a templates folder has words for, in order.</summary>
    public static IReadOnlyList<string> Languages(string folder) =>
        [.. TemplateFiles.In(FolderOf(folder), "*" + Suffix).Select(f => Path.GetFileName(f)[..^Suffix.Length]).Order(StringComparer.Ordinal)];

    /// <summary>The words of a language; null, with its problems, where the file has mistakes.</summary>
    /// <exception cref="TagendException">There is no such language, or its file cannot be opened.</exception>
    public static PaperLanguage? Read(string folder, string language, ICollection<Problem> problems)
    {
        var path = Path.Combine(FolderOf(folder), language + Suffix);
        if (!File.Exists(path))
        {
            throw new TagendException(CatalogWording.NoLanguage(language, FolderOf(folder), Languages(folder))) { Blame = Blame.UnknownName };
        }

        var found = new List<Problem>();
        var file = TomlFile.Read(path, $"{WordsFolder}/{language}{Suffix}", found);
        var read = file?.Section("words") is { } words ? Of(language, file, words) : null;
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

    private static PaperLanguage Of(string language, TomlFile file, TomlSection words) => new()
    {
        Name = language,
        Tag = file.Root.Text("tag"),
        DecimalSign = file.Root.Text("decimal"),
        Date = file.Root.Text("date"),
        FirstDay = file.Root.Text("first_day", "1"),
        Months = MonthsOf(file.Root),
        Inch = file.Root.Text("inch"),
        Millimeter = file.Root.Text("millimeter"),
        Warranty = file.Root.Text("warranty", ""),
        Returns = file.Root.Text("returns", ""),
        Words = PaperWords.All.ToDictionary(w => w, w => WordOf(w, words, language)),
        Terms = ListOf("terms", file),
        Kinds = ListOf("kinds", file),
    };

    /// <summary>A file of an earlier version has not all words of today: the others are as they came with the program.</summary>
    private static string WordOf(PaperWord word, TomlSection words, string language)
    {
        var key = PaperWords.KeyOf(word);
        if (words.OptionalText(key) is not { } text)
        {
            return ShippedWords.TextOf(word, language);
        }

        var fields = PaperWords.FieldsOf(word);
        if (text.Length > 0 && !PaperWords.FieldsIn(text).ToHashSet().SetEquals(fields))
        {
            words.Report(key, text, CatalogWording.Fields(fields));
        }

        return text;
    }

    private static Dictionary<string, string> ListOf(string name, TomlFile file)
    {
        var section = file.Sections.FirstOrDefault(s => s.Name == name);
        return section?.Keys.ToDictionary(k => k, section.Text) ?? [];
    }

    private static string[] MonthsOf(TomlSection root)
    {
        const int InAYear = 12;
        var text = root.Text("months");
        var months = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (months.Length != InAYear && root.OptionalText("months") == text)
        {
            root.Report("months", text, CatalogWording.Expected("the names of twelve months with spaces between"));
        }

        return months;
    }

    private static string FolderOf(string folder) => Path.Combine(folder, WordsFolder);
}
