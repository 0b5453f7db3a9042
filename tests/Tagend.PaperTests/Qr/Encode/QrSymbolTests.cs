using QRCoder;
using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Output;
using Tagend.Qr.Encode;
using Xunit;

namespace Tagend.PaperTests.Blocks;

public sealed class QrSymbolTests
{
    private const string TagLike = "TAGEND1/1042-STRING/L1555.75MM/M-HMPE-0145/N24/BLACK:12.RED:12/T45/P1554.16/R1/20260302*0F3A";

    // Quiet zone and module sizes as a label has them: whole dots of the printer.
    public static TheoryData<int, int> DotsAndModules => new() { { 203, 3 }, { 203, 4 }, { 300, 4 }, { 300, 6 } };

    [Theory]
    [MemberData(nameof(DotsAndModules))]
    public void Symbol_OnAPage_IsReadByTwoDecoders(int dotsPerInch, int dotsPerModule)
    {
        using var sample = new Sample();
        var block = new QrBlock(QrSymbol.Of(TagLike)!, dotsPerModule * Points.PerInch / dotsPerInch);
        var pdf = sample.Pdf(Sample.PageOf(Paper.A5, new Stack([new Paragraph("Above", TypeScale.Body), block])));
        var picture = sample.Place("page");
        Assert.Equal(0, OutsideTool.Run("pdftoppm", "-r", $"{dotsPerInch}", "-png", "-singlefile", pdf, picture).ExitCode);

        Assert.Equal(TagLike, OutsideTool.Run("zbarimg", "--quiet", "--raw", picture + ".png").Output.Trim());
        Assert.Equal(TagLike, OutsideTool.Run("ZXingReader", "-1", "-bytes", picture + ".png").Output.Trim());
    }

    [Theory]
    [MemberData(nameof(DotsAndModules))]
    public void Symbol_AsBlackOrWhiteDots_IsReadByTwoDecoders(int dotsPerInch, int dotsPerModule)
    {
        using var sample = new Sample();
        var block = new QrBlock(QrSymbol.Of(TagLike)!, dotsPerModule * Points.PerInch / dotsPerInch);
        var picture = sample.Place("label.png");
        var margin = 100 * Points.PerInch / dotsPerInch;
        var page = Sample.PageOf(Paper.A5, block, margin, margin);
        AtomicFiles.Write([new NewFile(picture, s => PngFile.Write(page, Sample.Fonts, dotsPerInch, DotDepth.BlackOrWhite, s))]);

        Assert.Equal(TagLike, OutsideTool.Run("zbarimg", "--quiet", "--raw", picture).Output.Trim());
        Assert.Equal(TagLike, OutsideTool.Run("ZXingReader", "-1", "-bytes", picture).Output.Trim());
    }

    public static TheoryData<string, QrRecovery> Texts => new()
    {
        { "01234567", QrRecovery.M },
        { "AC-42", QrRecovery.H },
        { TagLike, QrRecovery.L },
        { TagLike, QrRecovery.M },
        { string.Concat(Enumerable.Repeat(TagLike, 3)), QrRecovery.M },
    };

    /// <summary>QRCoder 1.8.1 is an encoder of other descent.</summary>
    [Theory]
    [MemberData(nameof(Texts))]
    public void Modules_OfAVersion_AreThoseOfAnotherEncoder(string text, QrRecovery recovery)
    {
        var symbol = QrSymbol.Of(text, recovery)!;
        var level = Enum.Parse<QRCodeGenerator.ECCLevel>(recovery.ToString());
        using var other = QRCodeGenerator.GenerateQrCode(text, level, requestedVersion: symbol.Version);
        Assert.Equal(RowsOf(other), RowsOf(symbol));
    }

    private static string[] RowsOf(QrSymbol symbol) =>
    [
        .. Enumerable.Range(0, symbol.Modules).Select(row =>
            string.Concat(Enumerable.Range(0, symbol.Modules).Select(column => symbol.IsDark(column, row) ? '#' : '.'))),
    ];

    private static string[] RowsOf(QRCodeData data)
    {
        var quiet = QrSymbol.QuietModules;
        var inner = data.ModuleMatrix.Skip(quiet).SkipLast(quiet);
        return [.. inner.Select(row => string.Concat(row.Cast<bool>().Skip(quiet).SkipLast(quiet).Select(dark => dark ? '#' : '.')))];
    }
}
