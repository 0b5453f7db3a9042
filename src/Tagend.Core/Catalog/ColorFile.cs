using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;

namespace Tagend.Catalog;

/// <summary>Reads colors.toml: a section a color, with the other names it is ordered by. A shop may do without.</summary>
internal static class ColorFile
{
    private const string Name = "colors.toml";

    public static ColorNames Read(string folder, ICollection<Problem> problems)
    {
        var path = Path.Combine(folder, Name);
        if (!File.Exists(path) || TomlFile.Read(path, Name, problems) is not { } file)
        {
            return ColorNames.None;
        }

        var colors = new List<NamedColor>();
        var said = new Dictionary<string, string>();
        foreach (var section in file.Sections)
        {
            var name = section.Name.ToLowerInvariant();
            var color = new NamedColor(name, (section.Texts("also") ?? []).ToValueList());
            if (!ColorsReader.TryRead($"{name}/", out _, out var error))
            {
                section.Report(null, null, error);
            }

            foreach (var twice in color.Also.Prepend(name).Where(n => !said.TryAdd(n.ToLowerInvariant(), name)))
            {
                section.Report("also", twice, CatalogWording.ColorNameTwice(said[twice.ToLowerInvariant()]));
            }

            colors.Add(color);
            section.RefuseUnknown();
        }

        file.Root.RefuseUnknown();
        return new ColorNames(colors);
    }
}
