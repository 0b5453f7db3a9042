using Tagend.Blocks;
using Tagend.Logos;
using Tagend.Output;
using Tagend.Problems;

namespace Tagend.Fuzz;

/// <summary>Logos, in SVG and PNG: read and drawn, or refused in words.</summary>
internal sealed class LogosTarget(Corpus corpus) : ITarget
{
    private readonly string _folder = Directory.CreateTempSubdirectory("tagend-fuzz-").FullName;

    private readonly IReadOnlyList<byte[]> _vectors =
    [
        .. Corpus.Words(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 40 20\"><g fill=\"#1a4f8c\" stroke=\"none\"><circle cx=\"10\" cy=\"10\" r=\"8\"/>"
                + "<path d=\"M20 2h10v10a4 4 0 0 1-8 0zM1 1c2 3 4 5 6 7s2 2 3 3q4 4 5 5t1 1\" fill-rule=\"evenodd\" transform=\"rotate(10) scale(.9)\"/></g></svg>",
            "<?xml version=\"1.0\"?><!DOCTYPE svg PUBLIC \"-//W3C//DTD SVG 1.1//EN\" \"x.dtd\"><svg xmlns=\"http://www.w3.org/2000/svg\" width=\"2cm\" height=\"1cm\">"
                + "<style>.a{fill:red;stroke-width:2}</style><rect class=\"a\" x=\"1\" y=\"2\" width=\"30\" height=\"9\" rx=\"3\"/><polygon points=\"1,2 3,4 5,6\"/><line x1=\"0\" x2=\"9\" stroke=\"black\"/></svg>"),
    ];

    private readonly IReadOnlyList<byte[]> _dots = [Dots(DotDepth.Gray, corpus.Fonts), Dots(DotDepth.BlackOrWhite, corpus.Fonts)];

    public IReadOnlyList<byte[]> Tokens { get; } = Corpus.Words(
        "<g>", "</g>", "<g transform=\"", "matrix(1 0 0 1 0 0)", "skewX(90)", "scale(0)", "scale(1e30)", "rotate(", "M", "A", "z", "e9999", "NaN", "#fff", "rgb(1,2,3)", "url(#a)",
        "fill=\"none\"", "stroke-width=\"1e9\"", "<use href=\"#a\"/>", "<text>", "<image/>", "<!ENTITY a \"aaaa\">", "&a;", "<![CDATA[", "viewBox=\"0 0 0 0\"", "%", "IHDR", "IDAT", "PLTE", "IEND", "\0\0\0\0");

    public bool Run(Mutation mutation)
    {
        var isVector = mutation.OneIn(2);
        var path = Path.Combine(_folder, isVector ? "logo.svg" : "logo.png");
        File.WriteAllBytes(path, mutation.Of(isVector ? _vectors : _dots));
        var problems = new List<Problem>();
        var picture = Logo.Read(path, problems);
        Corpus.Hold(problems);
        if (picture is null || new PictureBlock(picture, 100, 100).Place(corpus.Fonts, new Room(200, 200)) is not Placed placed)
        {
            return false;
        }

        Page[] pages = [new Page(200, 200, [.. placed.InksAt(10, 10)])];
        PdfFile.Write(pages, corpus.Fonts, new PdfNote("Fuzz", new DateOnly(2026, 3, 14)), new MemoryStream());
        PngFile.Write(pages[0], corpus.Fonts, 72, DotDepth.Gray, new MemoryStream());
        return true;
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static byte[] Dots(DotDepth depth, Fonts fonts)
    {
        using var png = new MemoryStream();
        var placed = (Placed)new Paragraph("Demo shop", new TextStyle(Weight.Regular, 20)).Place(fonts, new Room(200, 100));
        PngFile.Write(new Page(200, 100, [.. placed.InksAt(4, 4)]), fonts, 72, depth, png);
        return png.ToArray();
    }
}
