using Tagend.Fuzz;
using Xunit;

namespace Tagend.Tests.Fuzz;

/// <summary>A few of the runs that <c>./build.sh fuzz</c> makes: no crash, no run over a second, no wrong recall.</summary>
public class FuzzTests
{
    private const int Seed = 20260314;

    /// <summary>The long mode allows one second; here code is not yet optimized, and other tests run.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    [Theory]
    [InlineData("orders", 1000, 500)]
    [InlineData("sources", 200, 100)]
    [InlineData("templates", 150, 75)]
    [InlineData("tags", 1000, 500)]
    [InlineData("books", 400, 200)]
    [InlineData("fonts", 60, 45)]
    [InlineData("logos", 1000, 500)]
    [InlineData("lines", 400, 200)]
    [InlineData("folders", 60, 45)]
    [InlineData("pictures", 80, 40)]
    public void Target_FedWithSpoiledInputs_HasNoFault(string target, int runs, int mostAccepted)
    {
        var corpus = new Corpus(TestFiles.Root);
        var tally = new Campaign(target, () => Targets.All[target](corpus), Seed, Patience, trail: null).Run(1, runs, threads: 2);
        Assert.Empty(tally.Faults);
        Assert.Equal(runs, tally.Runs);
        Assert.InRange(tally.Accepted, runs / 100, mostAccepted); // both ways are tried
    }

    [Fact]
    public void Run_OfOneSeedAndNumber_IsAlwaysTheSame()
    {
        byte[][] inputs = ["order,piece\n1,string\n"u8.ToArray(), "a"u8.ToArray()];
        Assert.Equal(Spoiled(), Spoiled());

        List<byte[]> Spoiled()
        {
            var mutation = new Mutation(new Random(Seed), inputs);
            return [.. Enumerable.Range(0, 100).Select(_ => mutation.Of(inputs))];
        }
    }

    [Fact]
    public void Campaign_OfFaults_ReportsEachWithTheLineThatMakesItAgain()
    {
        var tally = new Campaign("broken", () => new Broken(), Seed, Patience, trail: null).Run(5, 2, threads: 1);
        Assert.StartsWith("broken: ./build.sh fuzz 20260314 1 broken 5: System.IndexOutOfRangeException: ", tally.Faults[0], StringComparison.Ordinal);
        Assert.Equal(2, tally.Faults.Count);
        Assert.Equal("broken: 2 runs, 0 accepted, 2 refused, slowest ", tally.ToString()[..47]);
    }

    private sealed class Broken : ITarget
    {
        public IReadOnlyList<byte[]> Tokens => [];

        public bool Run(Mutation mutation) => mutation.Spoiled[0] == 0;

        public void Dispose()
        {
        }
    }
}
