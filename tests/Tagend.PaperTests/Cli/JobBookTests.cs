using System.Text.Json;
using Microsoft.Data.Sqlite;
using Xunit;

namespace Tagend.PaperTests.Cli;

/// <summary>The job book as a shop uses it: printed, found, built, exported.</summary>
public class JobBookTests
{
    [Theory]
    [InlineData("shop/tagend-jobs.db", "--templates", "shop")]
    [InlineData("own-data/tagend/tagend-jobs.db")] // the shipped templates: beside the program nothing is written
    [InlineData("book.db", "--templates", "shop", "--job-book", "book.db")]
    public void Print_Shop_KeepsOneBookInItsFolder(string book, params string[] options)
    {
        using var folder = TagendProgram.NewFolder();
        TagendProgram.RunIn(folder.Path, "init", "shop");
        var said = TagendProgram.RunWithItsBook(folder.Path, ["print", TagendProgram.DemoOrders, "--out", "out", .. options]);
        Assert.Equal((0, ""), (said.ExitCode, said.Errors));
        Assert.Matches($@"^{book}: \d+ pieces entered in the job book", said.Output[(said.Output.LastIndexOf(book, StringComparison.Ordinal))..]);
        Assert.Equal(
            [folder[book]], Directory.GetFiles(folder.Path, "*.db*", SearchOption.AllDirectories));
        using var jobs = JsonDocument.Parse(TagendProgram.RunWithItsBook(folder.Path, ["jobs", "--json", "--order", "1001", .. options]).Output);
        Assert.Equal(["string", "buss", "control"], jobs.RootElement.EnumerateArray().Select(j => j.GetProperty("piece").GetString()));
        Assert.Equal(0, TagendProgram.Run("recall", jobs.RootElement[0].GetProperty("tag").GetString()!).ExitCode);
    }

    [Fact]
    public void Print_NoBookWanted_LeavesNone()
    {
        using var folder = TagendProgram.NewFolder();
        var said = TagendProgram.RunWithItsBook(folder.Path, "print", TagendProgram.DemoOrders, "--out", "out", "--job-book", "none");
        Assert.Equal(0, said.ExitCode);
        Assert.Empty(Directory.GetFiles(folder.Path));
    }

    [Fact]
    public void Print_BookThatCannotBeUsed_PrintsAllTheSame()
    {
        using var folder = TagendProgram.NewFolder();
        var book = folder.Write("book.db", new string('x', 5000));
        var said = TagendProgram.Run("print", TagendProgram.DemoOrders, "--out", folder["out"], "--job-book", book);
        Assert.Equal(5, said.ExitCode);
        Assert.Contains($"{book}: is not a job book", said.Errors, StringComparison.Ordinal);
        Assert.Contains("cards.pdf", Directory.GetFiles(folder["out"]).Select(Path.GetFileName));
        Assert.Equal(5000, new FileInfo(book).Length);
    }

    [Fact]
    public void Print_BookWithADamagedRow_PrintsAllTheSame()
    {
        using var folder = TagendProgram.NewFolder();
        var book = Printed(folder);
        TagendProgram.Run("built", "1001/string", "--length", "60 5/16", "--job-book", book);
        using (var connection = new SqliteConnection($"Data Source={book};Pooling=False"))
        {
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = "UPDATE builds SET measured_nm = measured_nm + 65536";
            command.ExecuteNonQuery();
        }

        var said = TagendProgram.Run("print", TagendProgram.DemoOrders, "--out", folder["again"], "--job-book", book);
        Assert.Equal(5, said.ExitCode);
        Assert.Contains($"{book}: the job book is damaged (build 1 does not fit its check)", said.Errors, StringComparison.Ordinal);
        Assert.Contains("cards.pdf", Directory.GetFiles(folder["again"]).Select(Path.GetFileName));
    }

    [Theory]
    [InlineData(":memory:")]
    [InlineData("file:book.db?mode=memory")]
    public void Built_BookThatWouldKeepNothing_IsRefused(string book)
    {
        using var folder = TagendProgram.NewFolder();
        var said = TagendProgram.RunIn(folder.Path, "built", "1001/string", "--length", "60 5/16", "--job-book", book);
        Assert.Equal((5, ""), (said.ExitCode, said.Output));
        Assert.Empty(Directory.GetFiles(folder.Path));
    }

    [Fact]
    public void Built_FromTheCommandLine_IsFoundAgain()
    {
        using var folder = TagendProgram.NewFolder();
        var book = Printed(folder);
        var said = TagendProgram.Run(
            "built", "1001/String", "--length", "60 5/16", "--posts", "61 1/4 in", "--turns", "45.5", "--load", "1330 N", "--minutes", "25",
            "--who", "AB", "--job-book", book);
        Assert.Equal((0, ""), (said.ExitCode, said.Errors));
        Assert.StartsWith(
            "build 1 logged: 1001/string, revision 1: 60 5/16 in, 0.063 in longer than ordered (within ± 1/16 in); posts 61 1/4 in, 45.5 turns",
            said.Output,
            StringComparison.Ordinal);
        using var jobs = JsonDocument.Parse(TagendProgram.Run("jobs", "--json", "--built", "--job-book", book).Output);
        var build = Assert.Single(Assert.Single(jobs.RootElement.EnumerateArray()).GetProperty("builds").EnumerateArray());
        Assert.Equal(60.3125, build.GetProperty("measured").GetProperty("in").GetDouble());
        Assert.Equal(1330, build.GetProperty("load").GetProperty("N").GetDouble());
    }

    [Fact]
    public void Built_AtATerminal_RemembersWhoBuiltTheLastOne()
    {
        using var folder = TagendProgram.NewFolder();
        var book = Printed(folder);
        Assert.Equal(0, TagendProgram.Run("built", "1001/string", "--length", "60", "1/4", "--who", "AB", "--job-book", book).ExitCode);
        Assert.EndsWith(", 20 min, AB\r\n", TagendProgram.AtATerminal(["built", "1001/buss", "--length", "38 1/2", "--job-book", book]).Output, StringComparison.Ordinal);
        Assert.Contains("who [AB]: ", TagendProgram.AtATerminal(["built", "1001/control", "--job-book", book], "", "", "40 1/8", "", "", "", "").Output, StringComparison.Ordinal);
        Assert.EndsWith(", 20 min\n", TagendProgram.Run("built", "1003/string", "--length", "57 5/8", "--job-book", book).Output, StringComparison.Ordinal); // a script says who
    }

    [Fact]
    public void Built_CardsScannedAndNumbersTyped_LogsEach()
    {
        using var folder = TagendProgram.NewFolder();
        var book = Printed(folder);
        using var jobs = JsonDocument.Parse(TagendProgram.Run("jobs", "--json", "--order", "1001", "--job-book", book).Output);
        var tags = jobs.RootElement.EnumerateArray().Select(j => j.GetProperty("tag").GetString()).ToList();
        // The string with a length read wrong first; the buss with nothing but its length; the control by name, all as carded.
        var said = TagendProgram.RunWithInput(
            $"{tags[0]}\n61 1/4\n46\n6 5/16\n60 5/16\n\n\nAB\n\n{tags[1]}\n\n\n38 7/16\n1001/control\n\n\n40 1/8\n", "built", "--job-book", book);
        Assert.Contains("build 1 logged: 1001/string, revision 1: 60 5/16 in", said.Output, StringComparison.Ordinal);
        Assert.Contains("build 2 logged: 1001/buss, revision 1: 38 7/16 in, 0.063 in shorter than ordered", said.Output, StringComparison.Ordinal);
        Assert.Contains("length \"6 5/16\": expected about 60.250 in, as on the card: check the digits and the unit", said.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(4, "1009/string", "--length", "60")]
    [InlineData(2, "1001/string", "--turns", "45")]
    [InlineData(2, "1001/string", "--length", "66 1/4 m")]
    [InlineData(2, "1001/string", "--length", "60 1/4", "--turns", "many")]
    [InlineData(2, "--length", "60 1/4")]
    [InlineData(4, "HELLO WORLD", "--length", "60 1/4")]
    [InlineData(4, "TE1*DAMAGED*E00000000", "--length", "60 1/4")]
    public void Built_WrongInput_LogsNothing(int exitCode, params string[] arguments)
    {
        using var folder = TagendProgram.NewFolder();
        var book = Printed(folder);
        var said = TagendProgram.Run(["built", .. arguments, "--job-book", book]);
        Assert.Equal(exitCode, said.ExitCode);
        Assert.NotEqual("", said.Errors);
        Assert.Equal("0 pieces, 0 builds\n", TagendProgram.Run("jobs", "--built", "--job-book", book).Output);
    }

    [Fact]
    public void Jobs_NoBook_SaysHowOneBegins()
    {
        using var folder = TagendProgram.NewFolder();
        var said = TagendProgram.Run("jobs", "--job-book", folder["book.db"]);
        Assert.Equal(5, said.ExitCode);
        Assert.Contains("there is no job book yet; tagend print starts one", said.Errors, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(folder.Path));
    }

    [Fact]
    public void Jobs_Csv_IsWhole()
    {
        using var folder = TagendProgram.NewFolder();
        var book = Printed(folder);
        Assert.Equal(0, TagendProgram.Run("jobs", "--csv", folder["jobs.csv"], "--job-book", book).ExitCode);
        Assert.StartsWith("order,piece,revision,date,", File.ReadAllText(folder["jobs.csv"]), StringComparison.Ordinal);
        Assert.Equal(["jobs.csv"], Directory.GetFiles(folder.Path, "*jobs*").Select(Path.GetFileName));
    }

    /// <summary>The one is asked while the other logs: the book has one build, for nobody said that there are two strings.</summary>
    [Fact]
    public void Built_PieceThatAnotherBenchLogsMeanwhile_IsNotEnteredTwice()
    {
        using var folder = TagendProgram.NewFolder();
        var book = Printed(folder);
        using var asked = TagendProgram.Start(folder.Path, "built", "1001/buss", "--job-book", book);
        asked.StandardInput.Write("?\n");
        asked.StandardInput.Flush();
        Assert.StartsWith("posts ", asked.StandardError.ReadLine(), StringComparison.Ordinal);
        Assert.Equal(0, TagendProgram.Run("built", "1001/buss", "--length", "38 1/2", "--job-book", book).ExitCode);
        asked.StandardInput.Write("\n\n38 7/16\n");
        asked.StandardInput.Close();
        var said = asked.StandardError.ReadToEnd();
        asked.WaitForExit();
        Assert.Contains("nothing was logged: if this is another one, add --again", said, StringComparison.Ordinal);
        Assert.NotEqual(0, asked.ExitCode);
        Assert.EndsWith(", 1 build\n", TagendProgram.Run("jobs", "--built", "--job-book", book).Output, StringComparison.Ordinal);
    }

    private static string Printed(TagendProgram.Folder folder)
    {
        var book = folder["book.db"];
        TagendProgram.Run("print", TagendProgram.DemoOrders, "--out", folder["out"], "--only", "cards", "--job-book", book);
        return book;
    }
}
