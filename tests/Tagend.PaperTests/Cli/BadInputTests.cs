using Xunit;

namespace Tagend.PaperTests.Cli;

/// <summary>What the program says when something is wrong: a sentence, an exit code, and nothing half written.</summary>
public class BadInputTests
{
    private const string Header = "order,piece,kind,finished_length,strands,colors,servings\n";

    [Theory]
    [InlineData("", "the file is empty")]
    [InlineData(Header, "there are no rows")]
    [InlineData("order,piece,kind\n1,string,compound-string\n", "finished_length")]
    [InlineData(Header + "1,string,compound-string,60 1/4,24,,\n1,string,compound-string,60 1/4,24,,\n", "line 2")]
    [InlineData(Header + "1,string,compound-string,60 1/4,23,,\n", "even")]
    [InlineData(Header + "1,string,compound-string,60 1/4,24,black:12 red:10,\n", "the colors add up to 22 strands, not 24")]
    [InlineData(Header + "1,string,compound-string,60 1/4,24,,A 0..8; 7..9\n", "overlaps")]
    [InlineData(Header + "1,string,compound-string,60 1/4,24,,A 0..61\n", "is not on the piece")]
    [InlineData(Header + "1,string,compound-string,0,24,,\n", "finished_length \"0\"")]
    [InlineData(Header + "1,string,compound-string,10 m,24,,\n", "finished_length \"10 m\"")]
    [InlineData(Header + "1,string,compound-string,6o 1/4,24,,\n", "orders.csv:2: finished_length \"6o 1/4\": expected a length such as 60 1/4, 60.25 in or 1530 mm")]
    public void Print_WrongOrders_SaysWhatToDoAndWritesNothing(string csv, string sentence)
    {
        using var folder = TagendProgram.NewFolder();
        var orders = folder.Write("orders.csv", csv);
        var said = TagendProgram.Run("print", orders, "--out", folder["out"]);
        Assert.Equal(3, said.ExitCode);
        Assert.Contains(sentence, said.Errors, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder["out"]));
    }

    [Theory]
    [InlineData("TAG", "recall", "")]
    [InlineData("--csv", "jobs", "--csv", "")]
    [InlineData("DIR", "init", "")]
    [InlineData("ORDERS.csv", "check", "")]
    [InlineData("--out", "print", "orders.csv", "--out", "")]
    [InlineData("ADDRESS", "book", "copy", "")]
    [InlineData("--tag", "bow", "Demo bow", "--tag", "")]
    [InlineData("--from", "bow", "Demo bow", "--from", "")]
    public void Program_AnEmptyNameOfAFileOrTag_SaysWhichIsEmpty(string which, params string[] arguments)
    {
        var said = TagendProgram.Run(arguments);
        Assert.Equal((2, $"tagend: {which} \"\": expected a name, and it is empty\ntagend: see tagend --help\n"), (said.ExitCode, said.Errors));
    }

    [Fact]
    public void Check_ANameThatBeginsWithAt_IsAFileOfOrdersAndNotOfArguments()
    {
        using var folder = TagendProgram.NewFolder();
        folder.Write("arguments", "--help");
        var said = TagendProgram.RunIn(folder.Path, "check", "@arguments");
        Assert.Equal(5, said.ExitCode);
        Assert.StartsWith("tagend: cannot find @arguments", said.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Print_FolderInPlaceOfOrders_SaysSo()
    {
        using var folder = TagendProgram.NewFolder();
        var said = TagendProgram.Run("print", folder.Path, "--out", folder["out"]);
        Assert.Equal(5, said.ExitCode);
        Assert.Contains("folder", said.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Print_MissingFile_SaysSo() => Assert.Equal(5, TagendProgram.Run("print", "no-such.csv").ExitCode);

    [Fact]
    public void Print_FileInPlaceOfOutputFolder_SaysSoAndLeavesIt()
    {
        using var folder = TagendProgram.NewFolder();
        var file = folder.Write("out", "mine");
        var said = TagendProgram.Run("print", TagendProgram.DemoOrders, "--out", file);
        Assert.Equal(5, said.ExitCode);
        Assert.Contains(file, said.Errors, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(file));
    }

    [Fact]
    public void Print_ReadOnlyFolder_SaysSo()
    {
        // Root writes into any folder but one the kernel keeps.
        var said = TagendProgram.Run("print", TagendProgram.DemoOrders, "--out", "/proc/tagend");
        Assert.Equal(5, said.ExitCode);
        Assert.Contains("/proc/tagend", said.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("ro", "cannot be written (Read-only file system")]
    [InlineData("mode=0555", "may not be written; choose a folder you may write to")]
    public void Print_FolderOfADiskThatMayOnlyBeRead_SaysSoAndWritesNothing(string mount, string sentence)
    {
        using var folder = TagendProgram.NewFolder();
        var disk = Directory.CreateDirectory(folder["disk"]).FullName;
        if (OutsideTool.Run("mount", "-t", "tmpfs", "-o", mount, "tmpfs", disk).ExitCode != 0)
        {
            Assert.Skip("this machine does not let a test mount a disk");
        }

        try
        {
            // Root may write whatever the mode says; nobody may not.
            OutsideTool.Run("chmod", "755", folder.Path);
            string[] print = ["--reuid", "65534", "--clear-groups", TagendProgram.Executable, "print", TagendProgram.DemoOrders, "--out", disk, "--job-book", "none"];
            var said = OutsideTool.Run("setpriv", print);
            Assert.Equal(5, said.ExitCode);
            Assert.Contains($"{disk}/cards.pdf: {sentence}", said.Errors, StringComparison.Ordinal);
            Assert.Empty(Directory.GetFileSystemEntries(disk));
        }
        finally
        {
            OutsideTool.Run("umount", disk);
        }
    }

    [Theory]
    [InlineData("check")]
    [InlineData("check", "--json")]
    [InlineData("explain")]
    [InlineData("print", "--only", "cards")]
    public void AnyCommand_OutputOntoAFullDisk_SaysSo(string command, params string[] options)
    {
        Assert.SkipUnless(File.Exists("/dev/full"), "this machine has no /dev/full");
        using var folder = TagendProgram.NewFolder();
        var arguments = string.Join(' ', [command, TagendProgram.DemoOrders, .. command == "explain" ? ["1001/string"] : options, "--job-book none"]);
        var said = OutsideTool.Run("sh", "-c", $"cd '{folder.Path}' && '{TagendProgram.Executable}' {arguments} > /dev/full");
        Assert.Equal(5, said.ExitCode);
        Assert.Equal("tagend: standard output cannot be written (the disk is full): make sure that there is space where it goes\n", said.Errors);
    }

    [Theory]
    [InlineData("../../x", "order \"../../x\": ")]
    [InlineData("/etc/x", "order \"/etc/x\": ")]
    [InlineData("C:\\x", "order \"C:\\x\": ")]
    [InlineData("..", "order \"..\": ")]
    [InlineData("=1+1", "order \"=1+1\": ")]
    public void Print_OrderThatIsAPath_SaysSoAndWritesNothing(string order, string sentence)
    {
        using var folder = TagendProgram.NewFolder();
        var orders = folder.Write("orders.csv", Header + $"{order},string,compound-string,60 1/4,24,,\n");
        var said = TagendProgram.Run("print", orders, "--out", folder["out"]);
        Assert.Equal(3, said.ExitCode);
        Assert.StartsWith($"{orders}:2: {sentence}", said.Errors, StringComparison.Ordinal);
        Assert.Equal([orders], Directory.GetFileSystemEntries(folder.Path));
    }

    [Theory]
    [InlineData("CON")]
    [InlineData("NUL.txt")]
    public void Print_OrderOfAReservedName_IsInNoFilesName(string order)
    {
        using var folder = TagendProgram.NewFolder();
        var orders = folder.Write("orders.csv", Header + $"{order},string,compound-string,60 1/4,24,,\n");
        Assert.Equal(0, TagendProgram.Run("print", orders, "--out", folder["out"], "--only", "cards").ExitCode);
        Assert.Equal(["cards.pdf"], Directory.GetFiles(folder["out"]).Select(Path.GetFileName));
    }

    [Fact]
    public void Print_FileCutAmidARow_SaysSo()
    {
        using var folder = TagendProgram.NewFolder();
        var orders = folder.Write("orders.csv", Header + "1,string,compound-string,60 1/4,24,,\n1,buss,\"buss-ca");
        var said = TagendProgram.Run("print", orders, "--out", folder["out"]);
        Assert.Equal(3, said.ExitCode);
        Assert.Contains($"{orders}:3: ", said.Errors, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder["out"]));
    }

    [Theory]
    [InlineData("shop.toml", 400, 3)]
    [InlineData("plans/yoke.toml", 60, 3)]
    [InlineData("sheets/compound.en.md", 160, 3)]
    [InlineData("fonts/Inter-Bold.ttf", 1000, 5)]
    public void Print_TemplateCutShort_NamesIt(string template, int bytes, int exitCode)
    {
        using var folder = TagendProgram.NewFolder();
        TagendProgram.Run("init", folder["templates"]);
        var path = Path.Combine(folder["templates"], template);
        File.WriteAllBytes(path, File.ReadAllBytes(path)[..bytes]);
        var said = TagendProgram.Run("print", TagendProgram.DemoOrders, "--templates", folder["templates"], "--out", folder["out"]);
        Assert.Equal(exitCode, said.ExitCode);
        Assert.Contains(template, said.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(3)]
    [InlineData(1000)]
    [InlineData(6000)]
    public void Jobs_BookCutShort_SaysSo(int bytes)
    {
        using var folder = TagendProgram.NewFolder();
        TagendProgram.Run("print", TagendProgram.DemoOrders, "--only", "cards", "--out", folder["out"], "--job-book", folder["book.db"]);
        File.WriteAllBytes(folder["book.db"], File.ReadAllBytes(folder["book.db"])[..bytes]);
        var said = TagendProgram.Run("jobs", "--job-book", folder["book.db"]);
        Assert.Equal(5, said.ExitCode);
        Assert.Contains(folder["book.db"], said.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Print_FullDisk_SaysSoAndKeepsTheOldFiles()
    {
        using var folder = TagendProgram.NewFolder();
        var disk = Directory.CreateDirectory(folder["disk"]).FullName;
        if (OutsideTool.Run("mount", "-t", "tmpfs", "-o", "size=40k", "tmpfs", disk).ExitCode != 0)
        {
            Assert.Skip("this machine does not let a test mount a small disk");
        }

        try
        {
            File.WriteAllText(Path.Combine(disk, "cards.pdf"), "old");
            var said = TagendProgram.Run("print", TagendProgram.DemoOrders, "--out", disk);
            Assert.Equal(5, said.ExitCode);
            Assert.Contains("disk", said.Errors, StringComparison.Ordinal);
            Assert.Equal("old", File.ReadAllText(Path.Combine(disk, "cards.pdf")));
            Assert.Single(Directory.GetFileSystemEntries(disk));
        }
        finally
        {
            OutsideTool.Run("umount", disk);
        }
    }

    [Theory]
    [InlineData("print")]
    [InlineData("print", "a.csv", "--paper", "foolscap")]
    [InlineData("print", "a.csv", "--only", "cards,lids")]
    [InlineData("print", "a.csv", "--date", "yesterday")]
    [InlineData("print", "a.csv", "--first-label", "0")]
    [InlineData("frobnicate")]
    public void AnyCommand_WrongUsage_ExitsWithTwo(params string[] arguments)
    {
        var said = TagendProgram.Run(arguments);
        Assert.Equal(2, said.ExitCode);
        Assert.Contains("tagend --help", said.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Print_UnknownOrder_NamesThoseThereAre()
    {
        var said = TagendProgram.Run("print", TagendProgram.DemoOrders, "--order", "9999", "--out", "/proc/tagend");
        Assert.Equal(2, said.ExitCode);
        Assert.Contains("there is no order 9999 in the file; there are ", said.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Print_MistakeInATemplate_NamesFileLineAndRemedy()
    {
        using var folder = TagendProgram.NewFolder();
        var templates = folder["templates"];
        Assert.Equal(0, TagendProgram.Run("init", templates).ExitCode);
        var shop = Path.Combine(templates, "shop.toml");
        File.WriteAllText(shop, File.ReadAllText(shop).Replace("turns_per_inch = 0.75", "turns_per_inch = \"many\"", StringComparison.Ordinal));
        var said = TagendProgram.Run("check", TagendProgram.DemoOrders, "--templates", templates);
        Assert.Equal(3, said.ExitCode);
        Assert.StartsWith($"in the templates folder {templates}", said.Errors, StringComparison.Ordinal);
        Assert.Matches(@"\nshop\.toml:\d+: \[twisting\] turns_per_inch ""many"": expected a number from 0.2 to 2", said.Errors);
    }

    [Fact]
    public void Init_FolderThatExists_IsRefused()
    {
        using var folder = TagendProgram.NewFolder();
        Assert.Equal(5, TagendProgram.Run("init", folder.Path).ExitCode);
    }
}
