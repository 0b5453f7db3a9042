using System.Text.RegularExpressions;
using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Output;
using Tagend.PaperTests.Cli;
using Xunit;

namespace Tagend.PaperTests.Output;

/// <summary>
/// What PDF/UA-1 (ISO 14289-1) asks of a document and a machine can check, by the checkpoints of the Matterhorn Protocol 1.1 that
/// these papers come under. What only a reader can judge, such as whether words say what a picture shows, is not checked here.
/// </summary>
public sealed partial class TaggedPdfTests
{
    /// <summary>Which parts may stand in which: ISO 32000-1, 14.8.4.</summary>
    private static readonly Dictionary<string, string[]> Within = new()
    {
        ["/TR"] = ["/Table"],
        ["/TH"] = ["/TR"],
        ["/TD"] = ["/TR"],
        ["/LI"] = ["/L"],
        ["/Lbl"] = ["/LI"],
        ["/LBody"] = ["/LI"],
    };

    private static readonly string[] Grouping = ["/Document", "/Sect", "/Table", "/TR", "/L", "/LI"];

    [Fact]
    public void Papers_OfASet_KeepTheRulesOfAccessibleDocuments()
    {
        using var folder = TagendProgram.NewFolder();
        TagendProgram.Run("print", TagendProgram.DemoOrders, "--order", "1003", "--out", folder.Path);
        TagendProgram.Run("print", TagendProgram.DemoOrders, "--order", "1003", "--only", "strips", "--out", folder.Path);
        TagendProgram.Run("ruler", "--out", folder.Path);
        var files = Directory.GetFiles(folder.Path, "*.pdf");
        Assert.Equal(6, files.Length);
        foreach (var file in files)
        {
            AssertAccessible(file); // Assert.All takes a skip for a failure
        }
    }

    /// <summary>Matterhorn Protocol 1.1, 11-006: a natural language for the text of every part, where it is not the document's.</summary>
    [Fact]
    public void Sheets_OfOrdersInSeveralLanguages_NameEachSetsOwn()
    {
        using var folder = TagendProgram.NewFolder();
        var orders = folder.Write("orders.csv", "order,piece,kind,finished_length,language\n1,string,recurve-string,62 in,de\n2,string,recurve-string,62 in,\n3,string,recurve-string,62 in,fr\n");
        TagendProgram.Run("print", orders, "--only", "sheets", "--out", folder.Path);
        var pdf = new TaggedPdf(folder["sheets.pdf"]);
        Assert.Equal(["u:de", "u:en-US", "u:fr"], pdf.Tree.Kids.Where(k => k.Type == "/Sect").Select(k => k.Language));
        Assert.Equal("u:en-US", TaggedPdf.Name(pdf.Catalog, "/Lang"));
    }

    [Fact]
    public void Parts_OfBlocks_AreReadAsWhatTheyAre()
    {
        using var sample = new Sample();
        var page = Sample.PageOf(Paper.A5, new Stack(
        [
            new Paragraph("Title", TypeScale.SheetTitle),
            new Paragraph("one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen", TypeScale.Sheet),
            new Rule(),
            new ListItem(new Paragraph("1.", TypeScale.Sheet), new Paragraph("first", TypeScale.Sheet), 20),
            new ListItem(new Paragraph("2.", TypeScale.Sheet), new Paragraph("second", TypeScale.Sheet), 20),
            new Paragraph("Heading", new TextStyle(Weight.Bold, 13) { HeadingLevel = 2 }),
            new Tagend.Blocks.Table([new("A", ColumnWidth.Natural), new("B", ColumnWidth.Natural)], [[new Paragraph("a", TypeScale.Body), new Paragraph("", TypeScale.Body)]], TypeScale.BodyBold),
            new Drawing(20, (_, room) => new Placed(room.Width, 20, new BoxInk(0, 0, 20, 20, 1), new TextInk(2, 12, "a drawing", TypeScale.Body))),
            new Drawing(20, (_, room) => new Placed(room.Width, 20, new BoxInk(0, 0, 20, 20, 1))),
        ]));
        var path = sample.Pdf(page);
        AssertAccessible(path);
        var tree = new TaggedPdf(path).Tree;
        Assert.Equal(
            "/Document /H1 /P /L /LI /Lbl /LBody /LI /Lbl /LBody /H2 /Table /TR /TH /TH /TR /TD /TD /Figure",
            string.Join(' ', tree.All.Select(e => e.Type)));
        Assert.Equal("u:a drawing", tree.All.Single(e => e.Type == "/Figure").Alternative);
        Assert.Contains("eight nine ten eleven", OutsideTool.Run("pdfinfo", "-struct-text", path).Output, StringComparison.Ordinal);
    }

    private static void AssertAccessible(string path)
    {
        var pdf = new TaggedPdf(path);
        AssertDictionaries(pdf);
        AssertTree(pdf.Tree);
        var marks = pdf.Tree.All.SelectMany(e => e.Marks.Select(m => (e.Page, m, e.Reference))).ToHashSet();
        var found = 0;
        foreach (var page in pdf.Pages)
        {
            // 01, real content is tagged: each operator that paints is in a part or an artifact, once.
            var drawn = MarksOf(pdf.Content(page));
            var owners = pdf.OwnersOn(page);
            Assert.Equal(Enumerable.Range(0, owners.Count), drawn);
            Assert.All(drawn, m => Assert.Contains(marks, k => k.m == m && k.Reference == owners[m]));
            found += drawn.Count;
            Assert.Equal("/S", TaggedPdf.Name(page, "/Tabs")); // 28, the order of the tab key
        }

        Assert.Equal(marks.Count, found);
    }

    /// <summary>06 metadata, 07 catalog, 11 language, 10 and 31 fonts.</summary>
    private static void AssertDictionaries(TaggedPdf pdf)
    {
        var catalog = pdf.Catalog;
        Assert.True(catalog.GetProperty("/MarkInfo").GetProperty("/Marked").GetBoolean());
        Assert.True(catalog.GetProperty("/ViewerPreferences").GetProperty("/DisplayDocTitle").GetBoolean());
        Assert.Matches("^u:[a-z]{2}", catalog.GetProperty("/Lang").GetString());
        var metadata = pdf.Text(catalog.GetProperty("/Metadata"));
        Assert.Contains("<pdfuaid:part>1</pdfuaid:part>", metadata, StringComparison.Ordinal);
        Assert.Matches("<dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">[^<]+</rdf:li>", metadata);
        Assert.All(pdf.Fonts.Where(f => TaggedPdf.Name(f, "/Subtype") == "/Type0"), f => Assert.True(f.TryGetProperty("/ToUnicode", out _)));
        Assert.All(
            pdf.Fonts.Where(f => TaggedPdf.Name(f, "/Subtype") == "/CIDFontType2"),
            f => Assert.True(pdf.Value(f.GetProperty("/FontDescriptor")).TryGetProperty("/FontFile2", out _) && TaggedPdf.Name(f, "/CIDToGIDMap") == "/Identity"));
    }

    /// <summary>09 structure, 13 figures, 14 headings, 15 tables, 16 lists.</summary>
    private static void AssertTree(TaggedPdf.Element tree)
    {
        foreach (var element in tree.All)
        {
            Assert.All(element.Kids, kid => Assert.True(
                Within.TryGetValue(kid.Type, out var holders) ? holders.Contains(element.Type) : element.Type is not ("/Table" or "/TR" or "/L" or "/LI"),
                $"{kid.Type} in {element.Type}"));
            Assert.True(element.Marks.Count == 0 || !Grouping.Contains(element.Type), $"text in {element.Type}");
            Assert.True(element.Type != "/Figure" || element.Alternative is { Length: > 2 }, "a figure without words");
            Assert.True(element.Type != "/TH" || element.Scope == "/Column", "a header without its scope");
            Assert.True(element.Type != "/Table" || element.Kids.Select(r => r.Kids.Count).Distinct().Count() == 1, "rows of different lengths");
        }

        var level = 0;
        foreach (var heading in tree.All.Where(e => HeadingType().IsMatch(e.Type)).Select(e => e.Type[2] - '0'))
        {
            Assert.True(heading <= level + 1, $"H{heading} after H{level}");
            level = heading;
        }
    }

    private static List<int> MarksOf(string content)
    {
        var (marks, isOpen) = (new List<int>(), false);
        foreach (var line in Strings().Replace(content, "()").Split('\n'))
        {
            var operation = line.Split(' ')[^1];
            if (operation is ">>BDC" or "BMC")
            {
                Assert.False(isOpen, "marks within marks");
                isOpen = true;
                if (operation == ">>BDC")
                {
                    marks.Add(int.Parse(MarkNumber().Match(line).Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture));
                }
            }
            else if (operation == "EMC")
            {
                Assert.True(isOpen, "the end of no mark");
                isOpen = false;
            }
            else if (operation is "f" or "f*" or "S" or "B" or "Do" || operation.EndsWith("TJ", StringComparison.Ordinal))
            {
                Assert.True(isOpen, $"not marked: {line}");
            }
        }

        Assert.False(isOpen, "a mark without an end");
        return marks;
    }

    [GeneratedRegex("^/H[1-6]$")]
    private static partial Regex HeadingType();

    [GeneratedRegex(@"MCID (\d+)")]
    private static partial Regex MarkNumber();

    [GeneratedRegex(@"\((\\.|[^\\)])*\)", RegexOptions.Singleline)]
    private static partial Regex Strings();
}
