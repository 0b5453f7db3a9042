using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Problems;

namespace Tagend.Imports;

/// <summary>Reads the maps of a templates folder: one file a source.</summary>
public static class MapReader
{
    /// <summary>In the templates folder.</summary>
    public const string Folder = "imports";

    private const string OptionsPrefix = "options.";
    private const string ValuesPrefix = "values.";

    /// <summary>Reads all maps; every mistake in any of them is added to the problems, and that map left out.</summary>
    /// <exception cref="TagendException">A file cannot be opened.</exception>
    public static IReadOnlyList<SourceMap> ReadAll(string templates, ICollection<Problem> problems)
    {
        var folder = Path.Combine(templates, Folder);
        return [.. TemplateFiles.In(folder, "*.toml").Select(path => Read(path, problems)).OfType<SourceMap>()];
    }

    /// <summary>Reads one map; null, with its problems, where it has mistakes.</summary>
    public static SourceMap? Read(string path, ICollection<Problem> problems)
    {
        var found = new List<Problem>();
        return Read(TomlFile.Read(path, $"{Folder}/{Path.GetFileName(path)}", found), Path.GetFileNameWithoutExtension(path), found, problems);
    }

    /// <summary>Reads a map that is not written yet.</summary>
    internal static SourceMap? Parse(string toml, string name, ICollection<Problem> problems)
    {
        var found = new List<Problem>();
        return Read(TomlFile.Parse(toml, $"{Folder}/{name}.toml", found), name, found, problems);
    }

    private static SourceMap? Read(TomlFile? file, string name, List<Problem> found, ICollection<Problem> problems)
    {
        var map = file is null ? null : Read(file, name.ToLowerInvariant());
        foreach (var problem in found)
        {
            problems.Add(problem);
        }

        return found.Count == 0 ? map : null;
    }

    private static SourceMap Read(TomlFile file, string name)
    {
        var title = file.Root.Text("title");
        LengthUnit? unit = file.Root.Keys.Contains("unit")
            ? file.Root.Choice("unit", ("in", LengthUnit.Inch), ("mm", LengthUnit.Millimeter))
            : null;
        var blank = file.Root.Texts("blank") ?? [];
        var carried = file.Root.Texts("carry") ?? [];
        var (cells, options, constants, leaveOut) =
            (new List<MappedCell>(), new List<OptionColumn>(), new List<MapConstant>(), new List<LeftOutRows>());
        var values = new Dictionary<string, IReadOnlyDictionary<string, string>>();
        foreach (var section in file.Sections)
        {
            switch (section.Name)
            {
                case "columns":
                    cells.AddRange(section.Keys.Select(header => new MappedCell(CellTemplate.Of(header), Targets(section, header))));
                    break;
                case "join":
                    cells.AddRange(section.Keys.Select(key => Joined(section, key)).OfType<MappedCell>());
                    break;
                case "constants":
                    constants.AddRange(section.Keys.SelectMany(key => Target(section, key, key, key) is { } target
                        ? [new MapConstant(target, section.Text(key))]
                        : Array.Empty<MapConstant>()));
                    break;
                case "leave_out":
                    leaveOut.AddRange(LeaveOut(section));
                    break;
                case var n when n.StartsWith(OptionsPrefix, StringComparison.Ordinal):
                    options.Add(new OptionColumn(n[OptionsPrefix.Length..], section.Keys.ToDictionary(k => k, k => Targets(section, k))));
                    break;
                case var n when n.StartsWith(ValuesPrefix, StringComparison.Ordinal):
                    _ = Target(section, null, n[ValuesPrefix.Length..], n[ValuesPrefix.Length..]);
                    values[n[ValuesPrefix.Length..].ToLowerInvariant()] = Values(section);
                    break;
                default:
                    section.Report(null, null, ImportWording.UnknownSection);
                    continue;
            }

            section.RefuseUnknown();
        }

        file.Root.RefuseUnknown();
        var (never, mapped) = (cells.Where(IsNever).ToList(), cells.Where(c => !IsNever(c)).ToList());
        RefuseTwice(file, mapped);
        return new SourceMap
        {
            Name = name,
            Title = title,
            Unit = unit,
            Cells = mapped,
            Options = options,
            Constants = constants,
            Values = values,
            LeaveOut = leaveOut,
            Never = [.. never.SelectMany(c => c.Template.Headers)],
            Carried = carried,
            Blank = blank,
        };

        static bool IsNever(MappedCell cell) => cell.Targets.All(t => t.Column == MapTarget.Never);
    }

    private static IReadOnlyList<MapTarget> Targets(TomlSection section, string key) =>
        [.. (section.Texts(key) ?? []).Select(text => Target(section, key, text, text)).OfType<MapTarget>()];

    private static MapTarget? Target(TomlSection section, string? key, string text, string shown)
    {
        if (MapTarget.TryRead(text, out var target, out var error))
        {
            return target;
        }

        section.Report(key, shown, error);
        return null;
    }

    /// <summary>Texts of the file by how they are compared.</summary>
    private static Dictionary<string, string> Values(TomlSection section)
    {
        var values = new Dictionary<string, string>();
        foreach (var key in section.Keys.Where(k => !values.TryAdd(Headers.Plain(k), section.Text(k))))
        {
            section.Report(key, null, ImportWording.ValueTwice);
        }

        return values;
    }

    private static MappedCell? Joined(TomlSection section, string key)
    {
        var text = section.Text(key);
        if (CellTemplate.Read(text) is not { } template)
        {
            section.Report(key, text, ImportWording.ATemplate);
            return null;
        }

        return Target(section, key, key, key) is { } target ? new MappedCell(template, [target]) : null;
    }

    private static LeftOutRows[] LeaveOut(TomlSection section)
    {
        var header = section.Text("column");
        var (are, areNot) = (section.Texts("is"), section.Texts("is_not"));
        var why = section.Text("why");
        if (are is null == areNot is null)
        {
            section.Report(null, null, ImportWording.OneOfIsAndIsNot);
            return [];
        }

        return [new LeftOutRows(header, are, areNot, why)];
    }

    /// <summary>Two cells for one text: which of them is meant, nobody could tell. Notes may have several.</summary>
    private static void RefuseTwice(TomlFile file, IEnumerable<MappedCell> cells)
    {
        foreach (var twice in cells
            .SelectMany(c => c.Targets.Select(t => (Target: t, c.Title)))
            .Where(c => c.Target.Column != Orders.OrderColumn.Notes)
            .GroupBy(c => c.Target)
            .Where(g => g.Count() > 1))
        {
            file.Root.Report(null, null, ImportWording.TargetTwice(twice.Key, twice.Select(c => c.Title)));
        }
    }
}
