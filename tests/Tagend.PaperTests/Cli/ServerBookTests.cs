using System.Text.Json;
using Tagend.Books;
using Xunit;

namespace Tagend.PaperTests.Cli;

/// <summary>The program with its job book on a server: <c>Server</c> is PostgreSQL's own, in a folder of the tests'.</summary>
public sealed class ServerBookTests : IDisposable
{
    private readonly Server? _server = Server.Missing is null ? new Server(isSafe: false) : null;

    [Fact]
    public void TwoBenches_OnOneServer_ShareOrdersSpoolsAndBuilds()
    {
        using var folder = TagendProgram.NewFolder();
        var book = NewBook(out _);
        Assert.Equal(0, At("left", book, "print", TagendProgram.DemoOrders, "--out", folder["out"]).ExitCode);
        Assert.Contains("18 in it already", At("right", book, "print", TagendProgram.DemoOrders, "--out", folder["out"]).Output, StringComparison.Ordinal);
        var received = At("left", book, "spools", "receive", "hmpe-0145", "--color", "Black", "--lot", "H88-4", "--length", "300 yd", "--out", folder["out"]);
        Assert.Equal((0, ""), (received.ExitCode, received.Errors));
        var tag = Assert.Single(OutsideTool.Run("zbarimg", "-q", "--raw", Drawn(folder["out/spools.pdf"])).Output.Split('\n'), l => l.StartsWith("BOWSTRING SPOOL TS1*1*", StringComparison.Ordinal));
        Assert.Contains("at bench right now", At("right", book, "recall", tag).Output, StringComparison.Ordinal);
        Assert.Contains("spool 1, hmpe-0145 black", At("right", book, "built", "1001/string", "--length", "60 1/4").Output, StringComparison.Ordinal);
        Assert.DoesNotContain("spool", At("left", book, "built", "1001/buss", "--length", "38 1/2").Output, StringComparison.Ordinal);
        var lot = At("left", book, "jobs", "--lot", "h88-4");
        Assert.EndsWith("1 piece, 1 build\nDemo customer 1: order 1001\n", lot.Output, StringComparison.Ordinal);
        using var spools = JsonDocument.Parse(At("left", book, "spools", "--json").Output);
        Assert.Equal(("right", 1), (spools.RootElement[0].GetProperty("bench").GetString(), spools.RootElement[0].GetProperty("builds").GetInt32()));
        var record = At("left", book, "record", "1001", "--out", folder["out"]);
        Assert.Contains("1 piece without a build in the log, said on the record: control", record.Output, StringComparison.Ordinal);
        Assert.Equal(0, OutsideTool.Run("qpdf", "--check", folder["out/1001-record.pdf"]).ExitCode);
    }

    /// <remarks>The full disk is told by the server as it tells one: SQLSTATE 53100, PostgreSQL 15 documentation, appendix A.</remarks>
    [Theory]
    [InlineData("full", "the disk of the job book's server is full")]
    [InlineData("read-only", "the server is read-only")]
    [InlineData("away", "the server of the job book does not answer")]
    public void Print_ServerThatTakesNothing_PrintsAllTheSame(string trouble, string said)
    {
        using var folder = TagendProgram.NewFolder();
        var book = NewBook(out var database);
        Assert.Equal(0, At("left", book, "print", TagendProgram.DemoOrders, "--order", "1001", "--out", folder["first"]).ExitCode);
        switch (trouble)
        {
            case "full":
                _server!.Run(database, "CREATE FUNCTION full_disk() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN RAISE 'could not extend file: No space left on device' USING ERRCODE = '53100'; END $$");
                _server.Run(database, "CREATE TRIGGER full_disk BEFORE INSERT ON tagend.jobs FOR EACH ROW EXECUTE FUNCTION full_disk()");
                break;
            case "read-only":
                _server!.Run(database, $"ALTER DATABASE {database} SET default_transaction_read_only = on");
                break;
            default:
                _server!.Stop();
                break;
        }

        var printed = At("left", book, "print", TagendProgram.DemoOrders, "--only", "cards", "--out", folder["again"]);
        Assert.Equal(5, printed.ExitCode);
        Assert.Contains($"{book}: {said}", printed.Errors, StringComparison.Ordinal);
        Assert.Equal(["cards.pdf"], Directory.GetFiles(folder["again"], "*.pdf").Select(f => Path.GetFileName(f)));
    }

    public void Dispose() => _server?.Dispose();

    private static string Drawn(string pdf)
    {
        OutsideTool.Run("pdftoppm", "-r", "150", "-png", "-singlefile", pdf, pdf);
        return $"{pdf}.png";
    }

    private string NewBook(out string database)
    {
        Assert.SkipWhen(_server is null, Server.Missing ?? "");
        database = _server!.NewDatabase();
        return _server.AddressOf(database);
    }

    private static Said At(string bench, string book, params string[] arguments) =>
        TagendProgram.RunWith(new() { ["TAGEND_BENCH"] = bench, ["TAGEND_JOB_BOOK"] = book }, arguments);
}
