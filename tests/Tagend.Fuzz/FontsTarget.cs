using Tagend.Blocks;
using Tagend.Output;

namespace Tagend.Fuzz;

/// <summary>Font files with flipped bits, wrong bytes and lost parts: a text is measured, drawn and cut to its glyphs, or the font is refused.</summary>
internal sealed class FontsTarget : ITarget
{
    /// <summary>The head of a font, with the table of its tables.</summary>
    private const int Head = 400;

    private const string Words = "60 1/4 in, AVATAR fi ½ Zoë";

    private readonly string _folder = Directory.CreateTempSubdirectory("tagend-fuzz-").FullName;
    private readonly byte[] _font;

    public FontsTarget(Corpus corpus)
    {
        var fonts = Path.Combine(corpus.Templates, "fonts");
        _font = File.ReadAllBytes(Path.Combine(fonts, "Inter-Regular.ttf"));
        foreach (var file in Directory.GetFiles(fonts, "*.ttf"))
        {
            File.Copy(file, Path.Combine(_folder, Path.GetFileName(file)));
        }
    }

    public IReadOnlyList<byte[]> Tokens => [];

    public bool Run(Mutation mutation)
    {
        var font = (byte[])_font.Clone();
        for (var changes = mutation.Random.Next(1, 9); changes > 0; changes--)
        {
            var at = mutation.Random.Next(mutation.OneIn(2) ? Head : font.Length);
            font[at] = mutation.OneIn(2) ? (byte)mutation.Random.Next(256) : (byte)(font[at] ^ (1 << mutation.Random.Next(8)));
        }

        mutation.Spoiled = mutation.OneIn(8) ? font[..mutation.Random.Next(font.Length)] : font;
        // A new file each time: the last one may still be mapped.
        var path = Path.Combine(_folder, "Inter-Regular.ttf");
        File.Delete(path);
        File.WriteAllBytes(path, mutation.Spoiled);
        var fonts = Fonts.Load(_folder);
        if (new Paragraph(Words, new TextStyle(Weight.Regular, 10)).Place(fonts, new Room(400, 400)) is not Placed placed)
        {
            return false;
        }

        Page[] pages = [new Page(400, 400, [.. placed.InksAt(10, 10)])];
        PdfFile.Write(pages, fonts, new PdfNote("Fuzz", new DateOnly(2026, 3, 14)), new MemoryStream());
        PngFile.Write(pages[0], fonts, 72, DotDepth.Gray, new MemoryStream());
        return true;
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
