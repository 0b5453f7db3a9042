using Tagend.Files;
using Tagend.Output;
using Tagend.Problems;
using Xunit;

namespace Tagend.Tests.Output;

public sealed class FolderTurnTests : IDisposable
{
    private const int Takers = 8;
    private const int Turns = 50;

    private readonly string _folder = Directory.CreateTempSubdirectory("tagend-turn-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    /// <summary>Also in the moment when one gives its turn back and the file of the lock goes.</summary>
    [Fact]
    public void Take_ByManyAtOnce_IsOnesAtATimeAndLeavesNothing()
    {
        var (inside, worst, taken) = (0, 0, 0);
        Parallel.For(0, Takers, new ParallelOptions { MaxDegreeOfParallelism = Takers }, _ =>
        {
            for (var turn = 0; turn < Turns; turn++)
            {
                using var held = LockFile.TryTake(Path.Combine(_folder, "lock"));
                if (held is not null)
                {
                    worst = Math.Max(worst, Interlocked.Increment(ref inside));
                    Thread.SpinWait(1000);
                    Interlocked.Decrement(ref inside);
                    Interlocked.Increment(ref taken);
                }
            }
        });
        Assert.Equal(1, worst);
        Assert.InRange(taken, 1, Takers * Turns);
        Assert.Empty(Directory.GetFiles(_folder));
    }

    [Fact]
    public void Take_AfterAProcessThatWasKilled_TakesTheFileThatItLeft()
    {
        File.WriteAllText(Path.Combine(_folder, ".tagend.lock"), "");
        FolderTurn.Take(_folder).Dispose();
        Assert.Empty(Directory.GetFiles(_folder));
    }

    [Fact]
    public void Take_AFolderThatCannotBeMade_SaysWhy()
    {
        var file = Path.Combine(_folder, "file");
        File.WriteAllText(file, "");
        var error = Assert.Throws<TagendException>(() => FolderTurn.Take(file));
        Assert.Equal($"{file}: a file stands where a folder is needed; choose another folder", error.Message);
    }
}
