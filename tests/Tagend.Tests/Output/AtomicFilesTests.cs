using Tagend.Output;
using Tagend.Problems;
using Xunit;

namespace Tagend.Tests.Output;

public sealed class AtomicFilesTests : IDisposable
{
    private const int UnixNoSpace = 28;
    private const int WindowsNoSpace = unchecked((int)0x80070070);

    private readonly string _folder = Directory.CreateTempSubdirectory("tagend-files-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Write_OverAnOldFile_ReplacesIt()
    {
        File.WriteAllText(At("cards.pdf"), "a longer text of an earlier run");
        AtomicFiles.Write([Text("cards.pdf", "new")]);
        Assert.Equal("new", File.ReadAllText(At("cards.pdf")));
        Assert.Equal(["cards.pdf"], Names());
    }

    [Fact]
    public void Write_IntoAMissingFolder_MakesIt()
    {
        AtomicFiles.Write([Text("out/today/cards.pdf", "new")]);
        Assert.Equal("new", File.ReadAllText(At("out/today/cards.pdf")));
    }

    [Fact]
    public void Write_OverTheFolderOfADrive_SaysThatItIsAFolder()
    {
        var root = Path.GetPathRoot(_folder)!;
        Assert.EndsWith(": is a folder; name a file", Assert.Throws<TagendException>(() => AtomicFiles.Write([Text(root, "new") with { Path = root }])).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_WhenTheLastOfASetFails_LeavesTheOldFiles()
    {
        File.WriteAllText(At("cards.pdf"), "old");
        Assert.Throws<TagendException>(() => AtomicFiles.Write(
        [
            Text("cards.pdf", "new"),
            Text("tags.pdf", "new"),
            Failing("sheets.pdf", new IOException("No space left on device", UnixNoSpace)),
        ]));
        Assert.Equal("old", File.ReadAllText(At("cards.pdf")));
        Assert.Equal(["cards.pdf"], Names());
    }

    [Fact]
    public void Write_WhenThePageHasABug_LeavesNothingAndThrowsTheBug()
    {
        Assert.Throws<InvalidOperationException>(() => AtomicFiles.Write([Failing("cards.pdf", new InvalidOperationException("bug"))]));
        Assert.Empty(Names());
    }

    public static TheoryData<Exception, string> Failures => new()
    {
        { new IOException("no space", UnixNoSpace), "the disk is full; free some space and run again" },
        { new IOException("no space", WindowsNoSpace), "the disk is full; free some space and run again" },
        {
            new UnauthorizedAccessException("denied"),
            "may not be written; choose a folder you may write to, or close the program that has the file open"
        },
        { new IOException("a name of a resource", 5), "cannot be written (Input/output error); choose another folder or try again" },
    };

    [Theory]
    [MemberData(nameof(Failures))]
    public void Write_WhenTheDiskRefuses_SaysPathCauseAndRemedy(Exception cause, string reason)
    {
        var thrown = Assert.Throws<TagendException>(() => AtomicFiles.Write([Failing("cards.pdf", cause)]));
        Assert.Equal($"{At("cards.pdf")}: {reason}", thrown.Message);
        Assert.Same(cause, thrown.InnerException);
    }

    [Fact]
    public void Write_WhenOneOfASetCannotHaveItsName_PutsBackAllThatWasThere()
    {
        Array.ForEach(["cards.pdf", "cards-002.pdf"], n => File.WriteAllText(At(n), "old"));
        using (var files = AtomicFiles.Prepare([Text("cards.pdf", "new"), Text("pulls.pdf", "new"), Text("tags.pdf", "new")]))
        {
            Directory.CreateDirectory(At("tags.pdf"));
            Assert.Throws<TagendException>(() => files.Appear([At("cards-002.pdf")]));
        }

        Assert.Equal(["cards-002.pdf", "cards.pdf", "tags.pdf"], Names());
        Assert.All(["cards.pdf", "cards-002.pdf"], n => Assert.Equal("old", File.ReadAllText(At(n))));
    }

    [Fact]
    public void Appear_AfterAnEarlierRun_LeavesThePapersOfOneRun()
    {
        Array.ForEach(["cards.pdf", "cards-002.pdf", "notes.txt"], n => File.WriteAllText(At(n), "old"));
        using (var files = AtomicFiles.Prepare([Text("cards.pdf", "new")]))
        {
            Assert.Equal("old", File.ReadAllText(At("cards.pdf")));
            files.Appear([At("cards.pdf"), At("cards-002.pdf")]);
        }

        Assert.Equal(["cards.pdf", "notes.txt"], Names());
        Assert.Equal("new", File.ReadAllText(At("cards.pdf")));
    }

    [Fact]
    public void Write_AfterARunThatWasKilled_ClearsItsFilesOnly()
    {
        using var running = AtomicFiles.Prepare([Text("tags.pdf", "half")]);
        var ofRunning = Path.GetFileName(Assert.Single(Directory.GetDirectories(_folder)));
        var otherMachines = ofRunning.Replace(Environment.MachineName, "elsewhere", StringComparison.Ordinal);
        var killed = ofRunning[..^1] + "-";
        string[] stay = [otherMachines, ".tagend-cards.swp.d", ".cards.pdf.swp"];
        Array.ForEach([killed, .. stay], n => Directory.CreateDirectory(At(n)));
        File.WriteAllText(At(Path.Combine(killed, "tags.pdf")), "half");
        File.WriteAllText(At(Path.Combine(killed, ".lock")), "");
        File.WriteAllText(At(Path.Combine(otherMachines, "tags.pdf")), "half");
        AtomicFiles.Write([Text("cards.pdf", "new")]);
        Assert.Equal([.. stay.Append(ofRunning).Append("cards.pdf").Order()], Names());
    }

    [Theory]
    [InlineData(23, true)]
    [InlineData(25, false)]
    public void Write_BesideTheFilesOfAnotherMachine_LeavesThemForADay(int hoursAgo, bool stay)
    {
        Directory.CreateDirectory(At(".tagend-elsewhere-1"));
        Directory.SetLastWriteTimeUtc(At(".tagend-elsewhere-1"), TimeProvider.System.GetUtcNow().UtcDateTime.AddHours(-hoursAgo));
        AtomicFiles.Write([Text("cards.pdf", "new")]);
        Assert.Equal(stay, Directory.Exists(At(".tagend-elsewhere-1")));
    }

    [Fact]
    public void Write_OverAFolder_SaysSo()
    {
        Directory.CreateDirectory(At("cards.pdf"));
        var thrown = Assert.Throws<TagendException>(() => AtomicFiles.Write([Text("tags.pdf", "new"), Text("cards.pdf", "new")]));
        Assert.Equal($"{At("cards.pdf")}: is a folder; name a file", thrown.Message);
        Assert.Equal(["cards.pdf"], Names());
    }

    [Fact]
    public void Write_OverAPipeOrALinkToADevice_RefusesAndLeavesIt()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "only Linux is asked what a name is");
        System.Diagnostics.Process.Start("mkfifo", [At("pipe")]).WaitForExit();
        File.CreateSymbolicLink(At("device"), "/dev/null");
        foreach (var name in new[] { "pipe", "device" })
        {
            var thrown = Assert.Throws<TagendException>(() => AtomicFiles.Write([Text("tags.pdf", "new"), Text(name, "new")]));
            Assert.Equal($"{At(name)}: is a device or a pipe, which a file would replace; name a file", thrown.Message);
        }

        Assert.Equal(["device", "pipe"], Names());
        Assert.Equal("/dev/null", new FileInfo(At("device")).LinkTarget);
    }

    [Fact]
    public void Write_OverALinkToAFile_ReplacesTheLink()
    {
        File.WriteAllText(At("kept"), "old");
        File.CreateSymbolicLink(At("cards.pdf"), At("kept"));
        AtomicFiles.Write([Text("cards.pdf", "new")]);
        Assert.Equal(("new", "old"), (File.ReadAllText(At("cards.pdf")), File.ReadAllText(At("kept"))));
    }

    [Fact]
    public void Write_UnderAFile_SaysSo()
    {
        File.WriteAllText(At("out"), "a file");
        var thrown = Assert.Throws<TagendException>(() => AtomicFiles.Write([Text("out/cards.pdf", "new")]));
        Assert.Equal($"{At("out/cards.pdf")}: a file stands where a folder is needed; choose another folder", thrown.Message);
    }

    private string At(string name) => Path.Combine(_folder, name);

    private IEnumerable<string?> Names() => Directory.GetFileSystemEntries(_folder).Select(Path.GetFileName).Order();

    private NewFile Text(string name, string text) => new(At(name), stream => stream.Write(System.Text.Encoding.UTF8.GetBytes(text)));

    private NewFile Failing(string name, Exception e) => new(At(name), stream =>
    {
        stream.WriteByte(0);
        throw e;
    });
}
