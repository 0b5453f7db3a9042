
namespace Tagend.Catalog;

/// <summary>Reads what makes a customer sheet the shop's own.</summary>
internal static class ShopIdentity
{
    /// <summary>The first bytes of every PNG file: ISO/IEC 15948, 5.2.</summary>
    private static readonly byte[] PngSignature = [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A];

    /// <summary>The picture's path; null for none or a wrong one.</summary>
    public static string? ReadLogo(string folder, TomlSection root)
    {
        var name = root.Text("logo", "");
        if (name.Length == 0)
        {
            return null;
        }

        var path = Path.Combine(folder, name);
        if (!File.Exists(path))
        {
            root.Report("logo", name, CatalogWording.NoPicture(path));
            return null;
        }

        if (name.EndsWith(".svg", StringComparison.OrdinalIgnoreCase) || TemplateFiles.Bytes(path).AsSpan().StartsWith(PngSignature))
        {
            return path;
        }

        root.Report("logo", name, CatalogWording.Expected(CatalogWording.APicture));
        return null;
    }

    /// <summary>Null for black, and for a color that cannot be read on paper.</summary>
    public static InkColor? ReadAccent(TomlSection root)
    {
        var text = root.Text("accent", "");
        if (text.Length == 0)
        {
            return null;
        }

        if (!InkColor.TryRead(text, out var color))
        {
            root.Report("accent", text, CatalogWording.Expected("a color such as \"#1a4f8c\""));
            return null;
        }

        if (color.ContrastWithWhite < InkColor.LeastContrast)
        {
            root.Report("accent", text, CatalogWording.TooPale(color));
            return null;
        }

        return color;
    }

    public static string ReadLanguage(string folder, TomlSection root)
    {
        var language = root.Text("language", "en");
        var known = PaperLanguageReader.Languages(folder);
        if (known.Count == 0)
        {
            root.Report(null, null, CatalogWording.MissingFile(Path.Combine(folder, "words")));
        }
        else if (!known.Contains(language))
        {
            root.Report("language", language, CatalogWording.UnknownName("language in words", known));
        }

        return language;
    }
}
