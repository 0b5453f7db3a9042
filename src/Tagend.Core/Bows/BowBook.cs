using System.Text;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;

namespace Tagend.Bows;

/// <summary>The shop's bows, found by any name that they are called by.</summary>
public sealed class BowBook(IReadOnlyList<BowRecipe> bows)
{
    /// <summary>In the templates folder.</summary>
    public const string Folder = "bows";

    private readonly Dictionary<string, BowRecipe> _byName = bows
        .SelectMany(b => b.Also.Prepend(b.Bow).Append(b.Name).Select(n => (Name: Plain(n), Bow: b)))
        .DistinctBy(n => n.Name)
        .ToDictionary(n => n.Name, n => n.Bow);

    /// <summary>All bows without a mistake, in order of their files' names.</summary>
    public IReadOnlyList<BowRecipe> Bows => bows;

    /// <summary>The bow of a name: letter case, spaces and punctuation do not matter.</summary>
    public BowRecipe? Find(string written) => _byName.GetValueOrDefault(Plain(written));

    /// <summary>The name that was probably meant; null where none is near.</summary>
    public string? Nearest(string written) =>
        NearestName.To(Plain(written), _byName.Keys) is { } near ? _byName[near].Bow : null;

    /// <summary>Reads all bows of a templates folder; every mistake in any of them is added to the problems, and that bow left out.</summary>
    /// <param name="bareUnit">The shop's: of a length that names none.</param>
    /// <exception cref="TagendException">A file cannot be opened.</exception>
    public static BowBook Read(string templates, LengthUnit bareUnit, ColorNames colors, ICollection<Problem> problems)
    {
        var folder = Path.Combine(templates, Folder);
        var bows = new List<BowRecipe>();
        var said = new Dictionary<string, BowRecipe>();
        foreach (var path in TemplateFiles.In(folder, "*.toml"))
        {
            var found = new List<Problem>();
            var file = TomlFile.Read(path, $"{Folder}/{Path.GetFileName(path)}", found);
            var bow = file is null ? null : BowReader.Read(file, Path.GetFileNameWithoutExtension(path), bareUnit, colors, found);
            foreach (var name in bow?.Also.Prepend(bow.Bow) ?? [])
            {
                if (!said.TryAdd(Plain(name), bow!) && said[Plain(name)] != bow)
                {
                    file!.Root.Report(null, name, BowWording.NameTwice(said[Plain(name)].Name));
                }
            }

            foreach (var problem in found)
            {
                problems.Add(problem);
            }

            bows.AddRange(found.Count == 0 ? [bow!] : []);
        }

        return new BowBook(bows);
    }

    private static string Plain(string name)
    {
        var plain = new StringBuilder(name.Length);
        foreach (var c in name)
        {
            if (char.IsLetterOrDigit(c))
            {
                plain.Append(char.ToLowerInvariant(c));
            }
        }

        return plain.ToString();
    }
}
