using Tagend.Catalog;
using Tagend.Output;
using Tagend.Problems;

namespace Tagend.Logos;

/// <summary>Reads a shop's logo: an SVG by its name, else a PNG.</summary>
public static class Logo
{
    /// <summary>The picture; null, with its problems, for an SVG that cannot be drawn as it is meant.</summary>
    /// <exception cref="TagendException">The file cannot be read, or a PNG is damaged.</exception>
    public static Picture? Read(string path, ICollection<Problem> problems)
    {
        var file = TemplateFiles.Bytes(path);
        return path.EndsWith(".svg", StringComparison.OrdinalIgnoreCase)
            ? SvgReader.Read(path, file, problems)
            : DotPicture.Read(path, file);
    }
}
