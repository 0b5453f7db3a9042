using System.Text;
using Tagend.Catalog;
using Tagend.Output;
using Tagend.Problems;

namespace Tagend.Workshop.Shops;

/// <summary>The settings of a shop's template files, changed one by one; the files keep their comments.</summary>
public static class ShopSettings
{
    private static readonly string[] AtTop = ["shop.toml", "materials.toml", "threads.toml", "stocks.toml", "colors.toml", "card.toml"];

    /// <summary>The files that have settings, as messages name them: <c>shop.toml</c>, <c>plans/yoke.toml</c>.</summary>
    /// <exception cref="TagendException">The folder cannot be read.</exception>
    public static IReadOnlyList<string> Files(string folder) =>
    [
        .. AtTop.Where(f => File.Exists(Path.Combine(folder, f))),
        .. TemplateFiles.In(Path.Combine(folder, "plans"), "*.toml").Select(f => $"plans/{Path.GetFileName(f)}"),
    ];

    /// <summary>The entries of a file.</summary>
    /// <param name="folder">The shop's templates folder.</param>
    /// <param name="file">One of <see cref="Files"/>.</param>
    /// <exception cref="TagendException">It cannot be read.</exception>
    public static TemplateText Read(string folder, string file) => TemplateText.Of(TemplateFiles.Text(Path.Combine(folder, file)));

    /// <summary>Gives an entry another value, unless the templates would have a mistake that they do not have now.</summary>
    /// <param name="folder">The shop's templates folder.</param>
    /// <param name="file">One of <see cref="Files"/>.</param>
    /// <param name="section">The entry's section; empty above the first.</param>
    /// <param name="key">The entry's key.</param>
    /// <param name="was">The value it has as far as whoever changes it knows.</param>
    /// <param name="value">The value it gets.</param>
    /// <returns>The mistakes; with none it is on the disk.</returns>
    /// <exception cref="TagendException">The entry is not there or has another value meanwhile, or the file cannot be written.</exception>
    public static IReadOnlyList<Problem> Change(string folder, string file, string section, string key, string was, string value)
    {
        var text = Read(folder, file);
        var entry = text.Entries.FirstOrDefault(e => e.Section == section && e.Key == key)
            ?? throw new TagendException($"{file} has no entry {key} any more: reload the page") { Blame = Blame.Missing };
        if ((entry.IsOff ? "" : entry.Value) != was)
        {
            throw new TagendException($"{file} was changed meanwhile: {key} is \"{entry.Value}\" now; reload the page and decide") { Blame = Blame.Changed };
        }

        var known = ShopTemplates.Read(folder).Problems.Select(p => (p.At.File, p.At.Column, p.Message)).ToHashSet();
        var changed = text.With(entry, value);
        var mistakes = NewMistakes(changed);
        if (mistakes.Count > 0 && value.Length == 0)
        {
            // What may not be empty may be left out.
            changed = text.Without(entry);
            mistakes = NewMistakes(changed);
        }

        if (mistakes.Count == 0)
        {
            AtomicFiles.Write([new NewFile(Path.Combine(folder, file), stream => stream.Write(Encoding.UTF8.GetBytes(changed)))]);
        }

        return mistakes;

        List<Problem> NewMistakes(string then) =>
            [.. MistakesOf(folder, file, then).Where(p => !known.Contains((p.At.File, p.At.Column, p.Message)))];
    }

    /// <summary>What the templates' own reader says of the folder with another text in one file.</summary>
    private static IReadOnlyList<Problem> MistakesOf(string folder, string file, string text)
    {
        var trial = Directory.CreateTempSubdirectory("tagend-trial-").FullName;
        try
        {
            foreach (var path in Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).Where(p => !p.EndsWith(".ttf", StringComparison.Ordinal) && !p.Contains(".db", StringComparison.Ordinal)))
            {
                var target = Path.Combine(trial, Path.GetRelativePath(folder, path));
                Directory.CreateDirectory(Path.GetDirectoryName(target)!);
                File.Copy(path, target);
            }

            File.WriteAllText(Path.Combine(trial, file), text);
            return ShopTemplates.Read(trial).Problems;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new TagendException($"the change cannot be tried in {trial}: {SystemReason.Of(e)}", e);
        }
        finally
        {
            Directory.Delete(trial, recursive: true);
        }
    }
}
