using System.Text.RegularExpressions;
using SkiaSharp;
using Xunit;

namespace Tagend.PaperTests.Cli;

/// <summary>Customer sheets as programs that are not ours see them.</summary>
public class SheetsTests
{
    public static TheoryData<string, string, string[]> Headings => new()
    {
        { "en", "en-US", ["Fitting your new string set", "Your safety", "DANGER", "What is in the bag", "Before the old set comes off", "Fitting the new set", "The first shots", "Measured on this bow", "Care and wax", "When to replace it"] },
        { "es", "es", ["Montaje de su nuevo juego", "Su seguridad", "PELIGRO", "Qué hay en la bolsa", "Antes de quitar el juego viejo", "Montaje del juego nuevo", "Los primeros tiros", "Medidas de este arco", "Cuidado y cera", "Cuándo cambiarlo"] },
        { "fr", "fr", ["Montage de votre nouveau jeu", "Votre sécurité", "DANGER", "Ce que contient le sachet", "Avant de retirer l'ancien jeu", "Monter le nouveau jeu", "Les premiers tirs", "Mesures de cet arc", "Soin et cire", "Quand le remplacer"] },
        { "de", "de", ["Montage: Ihr neuer Satz", "Ihre Sicherheit", "GEFAHR", "Was im Beutel ist", "Bevor der alte Satz herunterkommt", "Den neuen Satz auflegen", "Die ersten Schüsse", "Maße dieses Bogens", "Pflege und Wachs", "Wann ersetzen"] },
    };

    [Theory]
    [MemberData(nameof(Headings))]
    public void Sheets_OfALanguage_AreSoundNameItAndComeOutInReadingOrder(string language, string tag, string[] headings)
    {
        using var folder = Printed("--language", language, "--order", "1001");
        var sheets = folder["sheets.pdf"];

        var check = OutsideTool.Run("qpdf", "--check", sheets);
        Assert.True(check.ExitCode == 0, check.Output + check.Errors);
        Assert.Contains($"\"/Lang\": \"u:{tag}\"", OutsideTool.Run("qpdf", "--json=2", "--json-key=qpdf", sheets).Output, StringComparison.Ordinal);

        // -raw: in the order of the content stream, which is what screen readers without tags follow.
        var text = OutsideTool.Run("pdftotext", "-raw", "-enc", "UTF-8", sheets, "-").Output;
        var at = -1;
        Assert.All(headings, heading =>
        {
            var next = text.IndexOf(heading, at + 1, StringComparison.Ordinal);
            Assert.True(next > at, $"\"{heading}\" does not come after what stands before it");
            at = next;
        });
    }

    [Theory]
    [InlineData("sheets.pdf")]
    [InlineData("cards.pdf")]
    [InlineData("tags.pdf")]
    public void Bookmarks_OfAFile_LeadToTheFirstPageOfEachSet(string file)
    {
        using var folder = TagendProgram.NewFolder();
        TagendProgram.Run("print", TagendProgram.DemoOrders, "--out", folder.Path);
        var outline = OutsideTool.Run("mutool", "show", folder[file], "outline").Output;
        var marks = Regex.Matches(outline, "\"([^\"]*)\"\\s+#page=(\\d+)").Select(m => (Title: m.Groups[1].Value, Page: m.Groups[2].Value)).ToList();

        Assert.Equal(
            ["1001", "1002", "1003", "1004", "1005", "1006", "1007"], marks.Select(m => m.Title.Split(',')[0]));
        Assert.Equal("1004, Example club, bow 4", marks[3].Title);
        Assert.All(marks, mark => Assert.Contains(
            mark.Title.Split(',')[0],
            OutsideTool.Run("pdftotext", "-f", mark.Page, "-l", mark.Page, folder[file], "-").Output,
            StringComparison.Ordinal));
    }

    [Fact]
    public void Bookmarks_OfLabelsOnOneSheet_AreOneASet()
    {
        using var folder = TagendProgram.NewFolder();
        TagendProgram.Run(
            "print", TagendProgram.DemoOrders, "--out", folder.Path, "--only", "tags", "--bag-labels", "letter-2x5", "--loop-labels", "letter-2x5");
        var outline = OutsideTool.Run("mutool", "show", folder["tags.pdf"], "outline").Output;

        Assert.Equal(["1 1001", "1 1002", "1 1003", "2 1004", "2 1005", "2 1006", "3 1007"], Regex.Matches(outline, "\"(\\d+)[^\"]*\"\\s+#page=(\\d+)").Select(m => $"{m.Groups[2].Value} {m.Groups[1].Value}"));
    }

    [Fact]
    public void Bookmarks_OfAPullSheet_AreItsParts()
    {
        using var folder = TagendProgram.NewFolder();
        TagendProgram.Run("print", TagendProgram.DemoOrders, "--out", folder.Path, "--only", "pulls");
        var outline = OutsideTool.Run("mutool", "show", folder["pulls.pdf"], "outline").Output;

        Assert.Equal(
            ["STRAND MATERIAL TO PULL", "SERVING THREAD TO PULL", "ORDER OF BUILDS"],
            Regex.Matches(outline, "\"([^\"]*)\"\\s+#page=1").Select(m => m.Groups[1].Value));
    }

    [Fact]
    public void Bookmarks_WithALetterBeyondAscii_AreReadBack()
    {
        using var folder = TagendProgram.NewFolder();
        TagendProgram.Run("print", Path.Combine(TagendProgram.Root, "demo-orders", "demo-mm.csv"), "--out", folder.Path);
        Assert.Contains("2001, Musterschütze 1", OutsideTool.Run("mutool", "show", folder["sheets.pdf"], "outline").Output, StringComparison.Ordinal);
    }

    /// <summary>
    /// Smooth edges differ dot by dot, so squares of 1/8 in are compared: their shades differ by less than 0.15 of black,
    /// and a missing line of text would be 0.3.
    /// </summary>
    [Theory]
    [InlineData("sheets.pdf")]
    [InlineData("cards.pdf")]
    public void Renderers_TwoOfThem_ShowTheSamePage(string file)
    {
        using var folder = TagendProgram.NewFolder();
        TagendProgram.Run("print", TagendProgram.DemoOrders, "--out", folder.Path, "--order", "1001");
        OutsideTool.Run("pdftoppm", "-r", "96", "-f", "1", "-l", "1", "-gray", "-png", "-singlefile", folder[file], folder["poppler"]);
        OutsideTool.Run("mutool", "draw", "-q", "-r", "96", "-c", "gray", "-o", folder["mupdf.png"], folder[file], "1");
        using var poppler = SKBitmap.Decode(folder["poppler.png"]);
        using var mupdf = SKBitmap.Decode(folder["mupdf.png"]);

        Assert.InRange(poppler.Width - mupdf.Width, -1, 1);
        Assert.InRange(poppler.Height - mupdf.Height, -1, 1);
        Assert.True(ShadesOf(poppler).Zip(ShadesOf(mupdf)).Max(s => Math.Abs(s.First - s.Second)) < 0.15);
        Assert.True(ShadesOf(poppler).Min() < 0.5, "the page is empty");
    }

    /// <summary>Of squares of 1/8 in at 96 dpi, row by row; 1 is white. What is left over at right and foot is margin.</summary>
    private static List<double> ShadesOf(SKBitmap page)
    {
        const int Side = 12;
        var pixels = page.Pixels;
        return
        [
            .. from row in Enumerable.Range(0, (page.Height / Side) - 1)
               from column in Enumerable.Range(0, (page.Width / Side) - 1)
               select Enumerable.Range(0, Side * Side)
                   .Average(i => pixels[(((row * Side) + (i / Side)) * page.Width) + (column * Side) + (i % Side)].Red / 255.0),
        ];
    }

    [Fact]
    public void Shop_WithLogoAndAccent_HasBothOnItsSheets()
    {
        using var folder = TagendProgram.NewFolder();
        TagendProgram.Run("init", folder["shop"]);
        using (var logo = new SKBitmap(400, 100))
        {
            logo.Erase(new SKColor(10, 90, 40));
            using var file = File.Create(Path.Combine(folder["shop"], "logo.png"));
            logo.Encode(file, SKEncodedImageFormat.Png, 100);
        }

        var toml = Path.Combine(folder["shop"], "shop.toml");
        File.WriteAllText(toml, File.ReadAllText(toml)
            .Replace("logo = \"\"", "logo = \"logo.png\"", StringComparison.Ordinal)
            .Replace("accent = \"\"", "accent = \"#1a4f8c\"", StringComparison.Ordinal));
        var said = TagendProgram.Run("print", TagendProgram.DemoOrders, "--out", folder.Path, "--only", "sheets", "--templates", folder["shop"]);

        Assert.Equal((0, ""), (said.ExitCode, said.Errors));
        var images = OutsideTool.Run("pdfimages", "-list", folder["sheets.pdf"]).Output.Split('\n', StringSplitOptions.RemoveEmptyEntries)[2..];
        Assert.Equal(7, images.Length);
        Assert.All(images, i => Assert.Matches(" 400 +100 ", i));
        Assert.Single(images.Select(i => Regex.Match(i, @"(\d+) +0 +\d+ +\d+ ").Groups[1].Value).Distinct());
        var page = OutsideTool.Run("mutool", "draw", "-q", "-F", "trace", folder["sheets.pdf"], "1").Output;
        Assert.Contains("color=\".102 .31 .549\"", page, StringComparison.Ordinal); // #1a4f8c in shares of 255, to a thousandth
        Assert.Equal(0, OutsideTool.Run("qpdf", "--check", folder["sheets.pdf"]).ExitCode);
    }

    [Fact]
    public void Shop_WithALogoInSvg_HasItOnItsSheetsWithoutDots()
    {
        using var folder = TagendProgram.NewFolder();
        var said = PrintedWithLogo(folder, "<path fill=\"#0a5a28\" d=\"M0 20q10-40 20 0t20 0\"/>");

        Assert.Equal((0, ""), (said.ExitCode, said.Errors));
        Assert.Equal(2, OutsideTool.Run("pdfimages", "-list", folder["sheets.pdf"]).Output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length); // the list's head
        Assert.Contains("color=\".039 .353 .157\"", OutsideTool.Run("mutool", "draw", "-q", "-F", "trace", folder["sheets.pdf"], "1").Output, StringComparison.Ordinal); // #0a5a28 in shares of 255, to a thousandth
    }

    [Fact]
    public void Shop_WithALogoThatCannotBeDrawn_IsToldOnceAndPrintsNoSheet()
    {
        using var folder = TagendProgram.NewFolder();
        var said = PrintedWithLogo(folder, "<text>A shop</text>");
        var check = TagendProgram.Run("check", TagendProgram.DemoOrders, "--templates", folder["shop"]);

        Assert.Equal((3, 3), (said.ExitCode, check.ExitCode));
        Assert.Single(said.Errors.Split('\n'), l => l.EndsWith("logo.svg:1: text: is not drawn: convert text to paths", StringComparison.Ordinal));
        Assert.Contains("logo.svg:1: text: is not drawn: convert text to paths", check.Errors, StringComparison.Ordinal);
        Assert.False(File.Exists(folder["sheets.pdf"]));
    }

    private static Said PrintedWithLogo(TagendProgram.Folder folder, string elements)
    {
        TagendProgram.Run("init", folder["shop"]);
        File.WriteAllText(Path.Combine(folder["shop"], "logo.svg"), $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 40 40\">{elements}</svg>");
        var toml = Path.Combine(folder["shop"], "shop.toml");
        File.WriteAllText(toml, File.ReadAllText(toml).Replace("logo = \"\"", "logo = \"logo.svg\"", StringComparison.Ordinal));
        return TagendProgram.Run("print", TagendProgram.DemoOrders, "--out", folder.Path, "--only", "sheets", "--templates", folder["shop"]);
    }

    [Fact]
    public void Language_ThatIsNotThere_IsNamedWithThoseThatAre()
    {
        using var folder = TagendProgram.NewFolder();
        var said = TagendProgram.Run("print", TagendProgram.DemoOrders, "--out", folder["out"], "--language", "xx");

        Assert.Contains("there are no papers in the language \"xx\"", said.Errors, StringComparison.Ordinal);
        Assert.Contains("has words for de, en, es, fr", said.Errors, StringComparison.Ordinal);
        Assert.NotEqual(0, said.ExitCode);
        Assert.False(Directory.Exists(folder["out"]));
    }

    private static TagendProgram.Folder Printed(params string[] options)
    {
        var folder = TagendProgram.NewFolder();
        var said = TagendProgram.Run(["print", TagendProgram.DemoOrders, "--out", folder.Path, "--only", "sheets", .. options]);
        Assert.Equal((0, ""), (said.ExitCode, said.Errors));
        return folder;
    }
}
