using Tagend.Books;
using Xunit;

namespace Tagend.Tests.Jobs;

/// <summary>The trials of <c>./build.sh books</c> in little, so that they keep running: programs of their own on one file.</summary>
public sealed class BookTrialTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("tagend-trial-").FullName;

    [Fact]
    public void Programs_ThatWriteAtOnceAndAreKilled_EnterEachOnce()
    {
        var trial = new Trial(TestFiles.Root, Path.Combine(_folder, "book.db"), _folder);
        trial.Begin();
        trial.Kill(2, new Random(1));
        var outcome = trial.Result("in little");
        Assert.Empty(outcome.Faults);
        Assert.True(outcome.Acknowledged >= 2, $"{outcome}");
        Assert.Empty(trial.Integrity());
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
