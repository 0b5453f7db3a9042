using Tagend.Problems;
using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace Tagend.Catalog;

/// <summary>One template file in TOML: its sections, each entry with its line.</summary>
internal sealed class TomlFile
{
    private readonly List<TomlSection> _sections = [];

    private TomlFile(string name, TomlSection root) => (Name, Root) = (name, root);

    /// <summary>As messages name the file.</summary>
    public string Name { get; }

    /// <summary>The entries above the first section.</summary>
    public TomlSection Root { get; }

    public IReadOnlyList<TomlSection> Sections => _sections;

    /// <summary>Reads a file; what is wrong with it is added to the problems.</summary>
    /// <param name="path">Where it is.</param>
    /// <param name="name">How messages name it, such as <c>plans/yoke.toml</c>.</param>
    /// <returns>Null where the file is missing or is not TOML.</returns>
    /// <exception cref="TagendException">The file cannot be opened.</exception>
    public static TomlFile? Read(string path, string name, ICollection<Problem> problems)
    {
        if (!File.Exists(path))
        {
            problems.Add(new Problem(new Place(name), null, CatalogWording.MissingFile(path)));
            return null;
        }

        return Parse(TemplateFiles.Text(path), name, problems);
    }

    /// <summary>Reads a file's text; null where it is not TOML.</summary>
    public static TomlFile? Parse(string text, string name, ICollection<Problem> problems)
    {
        DocumentSyntax document;
        try
        {
            document = SyntaxParser.Parse(text, name);
        }
        catch (TomlException)
        {
            problems.Add(new Problem(new Place(name), null, CatalogWording.NestedToml));
            return null;
        }
        catch (ArgumentOutOfRangeException)
        {
            // What the parser answers to an escape that the end of the file cuts off.
            problems.Add(new Problem(new Place(name), null, CatalogWording.CutOffToml));
            return null;
        }

        Report(document, text.Split('\n'), name, problems);
        if (document.HasErrors)
        {
            return null;
        }

        var file = new TomlFile(name, new TomlSection(name, "", 1, document.KeyValues, problems));
        foreach (var table in document.Tables)
        {
            file._sections.Add(new TomlSection(name, TomlKey.Plain(table.Name!), table.Span.Start.Line + 1, table.Items, problems));
        }

        return file;
    }

    /// <summary>Tells the first of what the parser says in a row and in a section: the others follow from it, for after a mistake it stumbles.</summary>
    private static void Report(DocumentSyntax document, string[] lines, string name, ICollection<Problem> problems)
    {
        var last = -1;
        foreach (var (line, message) in document.Diagnostics.Select(d => (Math.Min(d.Span.Start.Line, lines.Length - 1), d.Message)).OrderBy(d => d.Item1))
        {
            if (last < 0 || (line > last + 1 && lines[(last + 1)..(line + 1)].Any(l => l.StartsWith('['))))
            {
                problems.Add(CatalogWording.NotToml(new Place(name, line + 1), lines[line].Trim(), message));
            }

            last = line;
        }
    }

    /// <summary>The only section of a name; null, with a problem, where there is none.</summary>
    public TomlSection? Section(string name)
    {
        var section = _sections.Find(s => s.Name == name);
        if (section is null)
        {
            Root.Report(null, null, CatalogWording.MissingSection(name));
        }

        return section;
    }
}
