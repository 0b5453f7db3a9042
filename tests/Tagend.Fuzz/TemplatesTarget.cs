using Tagend.Catalog;
using Tagend.Pages.Sheet;
using Tagend.Problems;

namespace Tagend.Fuzz;

/// <summary>The files of a templates folder, one spoiled at a time: read, and a paper of a demo set composed with them.</summary>
internal sealed class TemplatesTarget : ITarget
{
    private const int MixedOneIn = 20;

    private readonly Corpus _corpus;
    private readonly string _folder = Directory.CreateTempSubdirectory("tagend-fuzz-").FullName;
    private readonly List<(string Path, byte[] Content)> _files = [];
    private readonly ILookup<string, byte[]> _contents;

    public TemplatesTarget(Corpus corpus)
    {
        _corpus = corpus;
        foreach (var file in Directory.EnumerateFiles(corpus.Templates, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
        {
            var path = Path.Combine(_folder, Path.GetRelativePath(corpus.Templates, file));
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.Copy(file, path);
            var isRead = path.EndsWith(".toml", StringComparison.Ordinal) || path.EndsWith(".en.md", StringComparison.Ordinal);
            if (isRead && !(Path.GetFileName(Path.GetDirectoryName(path)) == "words" && !path.EndsWith("en.toml", StringComparison.Ordinal)))
            {
                _files.Add((path, File.ReadAllBytes(path)));
            }
        }

        _files.Add((Path.Combine(_folder, PrinterScaleFile.Name), "[\"Desk printer\"]\nacross = \"149.6 mm\"\nalong = \"150.2 mm\"\n"u8.ToArray()));
        _contents = _files.ToLookup(f => Path.GetExtension(f.Path), f => f.Content);
    }

    public IReadOnlyList<byte[]> Tokens { get; } = Corpus.Words(
        [
            "= ", "\"", "'", "\"\"\"", "[", "]", "[[", "]]", "{", "}", "#", "\n", ".", ",", "true", "1979-05-27", "nan", "inf", "-inf", "\\", "\\u0000", "é", "\uFEFF",
            "\" in\"", "mm", "in", "A 0..2", "B", "t021", "hmpe-0145", "shortest", "longest", "strands", "servings", "[separator]", "corner", "dpi", "page",
            "{{", "}}", "{% ", " %}", "{% for a in (1..100000000) %}x{% endfor %}", "{% for piece in pieces %}", "{% endfor %}", "{% if count > 1 %}", "{% endif %}",
            "{% include 'compound.en.md' %}", "{% assign a = 1 %}", "{% assign order = pieces %}", "{% capture a %}", "{% endcapture %}", "{% raw %}", "{% cycle 'a','b' %}",
            "{{ order | append: order }}", "{{ count | divided_by: 0 }}", "{{ pieces }}", "{{ pieces[99].name }}", "{{ order | split: '' | join: 'x' }}", "{{ piece.name }}",
            "|", "|---|\n", "| a | b |\n|---|---|\n| c |\n", "> ", "- ", "1. ", "    ", "# ", "## ", "###### ", "**", "***", "_", "- [ ] ", "::: columns\n", "::: boxes\n", ":::\n", "![](drawing)\n\n",
            "> **WARNING** ", "<!-- ", " -->", "<b>", "&nbsp;", "&#0;", "`", "```\n", "---\n", "[a](b)", "[a]: b\n", "\\\n", "\t", "  \n", "\u202E", "\u0301",
        ]);

    public bool Run(Mutation mutation)
    {
        var (path, content) = mutation.Pick(_files);
        File.WriteAllBytes(path, mutation.Of([content, .. mutation.OneIn(MixedOneIn) ? _contents[Path.GetExtension(path)] : []]));
        try
        {
            return Print(mutation);
        }
        finally
        {
            File.WriteAllBytes(path, content);
        }
    }

    private bool Print(Mutation mutation)
    {
        var problems = new List<Problem>();
        PrinterScaleFile.Read(_folder, problems);
        var catalog = CatalogReader.Read(_folder, problems);
        problems.AddRange(CustomerSheet.Check(_folder));
        Corpus.Hold(problems);
        if (catalog is not null)
        {
            var report = Corpus.Read(mutation.Pick(_corpus.Orders), catalog);
            Corpus.Hold(report.Problems);
            if (report.MakeSets().Count > 0)
            {
                new Papers(_corpus.Fonts, mutation).OfOrder(mutation.Pick(report.MakeSets()), catalog);
            }
        }

        return problems.Count == 0;
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
