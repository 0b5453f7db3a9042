using System.Text;
using CsCheck;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;
using Xunit;

namespace Tagend.Tests.Orders;

public sealed class OrderTextTests : IDisposable
{
    private const string Text = "order,piece,finished_length,customer\n1,string,60 ¼,Öß €\n";
    private static readonly Dictionary<string, string> NoAliases = [];

    private readonly string _folder = Directory.CreateTempSubdirectory("tagend").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    public static TheoryData<string, byte[]> Encodings => new()
    {
        { "UTF-8", new UTF8Encoding(false).GetBytes(Text) },
        { "UTF-8 with a mark", WithMark(new UTF8Encoding(true)) },
        { "UTF-16, little end first", WithMark(new UnicodeEncoding(false, true)) },
        { "UTF-16, big end first", WithMark(new UnicodeEncoding(true, true)) },
    };

    [Theory]
    [MemberData(nameof(Encodings))]
    public void Read_Encoding_KeepsEveryLetter(string encoding, byte[] bytes)
    {
        Assert.NotEmpty(encoding);
        var file = OrderReader.Read("orders.csv", bytes, LengthUnit.Inch, NoAliases);
        Assert.Empty(file.Problems);
        Assert.Equal("Öß €", Assert.Single(file.Lines).Slip.Customer);
    }

    public static TheoryData<string, byte[], string> Refused => new()
    {
        {
            "Windows-1252",
            Encoding.Latin1.GetBytes("order,piece,finished_length,customer\n1,string,60,Demo\n2,string,60,Ö\n"),
            "orders.csv:3: byte D6 is not UTF-8, so a letter of this line would be guessed: save the file as \"CSV UTF-8\""
        },
        {
            "a cut letter at the end",
            [.. "order\n1"u8, 0xC3],
            "orders.csv:2: byte C3 is not UTF-8, so a letter of this line would be guessed: save the file as \"CSV UTF-8\""
        },
        {
            "a letter of another code after old line ends",
            [.. "order\r1\r2"u8, 0xFF],
            "orders.csv:3: byte FF is not UTF-8, so a letter of this line would be guessed: save the file as \"CSV UTF-8\""
        },
        {
            "a letter of another code in the first line",
            [.. "order"u8, 0xFF],
            "orders.csv:1: byte FF is not UTF-8, so a letter of this line would be guessed: save the file as \"CSV UTF-8\""
        },
        {
            "UTF-16 without a mark",
            Encoding.Unicode.GetBytes("order,piece"),
            "orders.csv:1: the file is not UTF-8 text: save it as \"CSV UTF-8\""
        },
        {
            "UTF-32",
            WithMark(new UTF32Encoding(false, true)),
            "orders.csv:1: the file is not UTF-8 text: save it as \"CSV UTF-8\""
        },
        {
            "UTF-16 with half a letter",
            [0xFF, 0xFE, 0x00, 0xD8],
            "orders.csv: the file starts as UTF-16 but is damaged: save it again as \"CSV UTF-8\""
        },
        {
            "a workbook",
            [.. "PK\u0003\u0004"u8, 0, 0],
            "orders.csv: this is a spreadsheet's own file: save it from there as \"CSV UTF-8\""
        },
        {
            "an old workbook",
            [0xD0, 0xCF, 0x11, 0xE0, 0xA1],
            "orders.csv: this is a spreadsheet's own file: save it from there as \"CSV UTF-8\""
        },
    };

    [Theory]
    [MemberData(nameof(Refused))]
    public void Read_OtherBytes_AreRefusedInWords(string what, byte[] bytes, string problem)
    {
        Assert.NotEmpty(what);
        var file = OrderReader.Read("orders.csv", bytes, LengthUnit.Inch, NoAliases);
        Assert.Equal(problem, Assert.Single(file.Problems).ToString());
        Assert.Empty(file.Lines);
    }

    [Fact]
    public void Read_FileOnDisk_IsNamedAsGiven()
    {
        var path = Path.Combine(_folder, "orders.csv");
        File.WriteAllText(path, "order,piece,finished_length\n1,string,x\n");
        var problem = Assert.Single(OrderReader.Read(path, LengthUnit.Inch, NoAliases).Problems);
        Assert.Equal(new Place(path, 2, "finished_length"), problem.At);
    }

    [Fact]
    public void Read_MissingFile_SaysSo()
    {
        var path = Path.Combine(_folder, "none.csv");
        var e = Assert.Throws<TagendException>(() => OrderReader.Read(path, LengthUnit.Inch, NoAliases));
        Assert.Equal($"cannot find {path}: check its name and folder", e.Message);
    }

    [Fact]
    public void Read_Folder_SaysSo()
    {
        var e = Assert.Throws<TagendException>(() => OrderReader.Read(_folder, LengthUnit.Inch, NoAliases));
        Assert.Equal($"{_folder} is a folder: name the CSV file of orders in it", e.Message);
    }

    [Fact]
    public void Read_UnreadableFile_SaysSo()
    {
        // Reading the start of a process's own memory fails, whatever rights the reader has.
        const string path = "/proc/self/mem";
        Assert.SkipUnless(File.Exists(path), "there is no file here that is sure to be unreadable");
        var e = Assert.Throws<TagendException>(() => OrderReader.Read(path, LengthUnit.Inch, NoAliases));
        Assert.StartsWith($"cannot read {path}: ", e.Message, StringComparison.Ordinal);
        Assert.EndsWith("; close it in other programs and check that you may read it", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_EndlessFile_SaysSo()
    {
        Assert.SkipUnless(File.Exists("/dev/zero"), "there is no endless file here");
        var e = Assert.Throws<TagendException>(() => OrderReader.Read("/dev/zero", LengthUnit.Inch, NoAliases));
        Assert.Equal(
            "/dev/zero is larger than 64 MB, more than any file of orders: check that it is the right one, or split it", e.Message);
    }

    [Fact]
    public void Read_AnyBytes_NeverThrows()
    {
        var bytes = Gen.OneOf(
            Gen.Byte.Array[0, 200],
            Gen.String["order,piece;finished_length\t\r\n\"1234 /.ABtob:"].Select(Encoding.UTF8.GetBytes),
            Gen.String["1,2;3\t\r\n\"'A .x:/¼"].Select(
                s => Encoding.UTF8.GetBytes("order,piece,finished_length,colors,servings,speed_nocks\n" + s)));
        bytes.Sample(
            b =>
            {
                var file = OrderReader.Read("orders.csv", b, LengthUnit.Inch, NoAliases);
                return file.Problems.Count > 0 || file.Lines.Count > 0;
            },
            seed: "0N0XIzNsQ0O2",
            iter: 5000);
    }

    private static byte[] WithMark(Encoding encoding) => [.. encoding.GetPreamble(), .. encoding.GetBytes(Text)];
}
