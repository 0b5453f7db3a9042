using CsCheck;
using Tagend.Measures;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Specs;

public class BatchPullTests
{
    private static readonly BuildSpec Good = SpecFixture.Good();

    /// <summary>A build as (material, colors, post setting), few of each so that they meet again.</summary>
    private static readonly Gen<(int Material, int[] Colors, int Posts)> AnyBuild =
        Gen.Select(Gen.Int[0, 1], Gen.Int[0, 4].Array[1, 3], Gen.Int[0, 3]);

    [Fact]
    public void Of_AlternatingSets_PutsEqualSetUpsTogether()
    {
        var order = Of((0, [0, 1], 0), (0, [2], 1), (0, [0, 1], 0), (0, [2], 1));
        Assert.Equal(["p0", "p2", "p1", "p3"], order.Steps.Select(s => s.Piece));
        Assert.Equal(5, order.Changes); // two spools and the posts, nothing, one spool and the posts, nothing
        Assert.Equal(10, order.ChangesAsOrdered); // 3 + 2 + 3 + 2
    }

    [Fact]
    public void Of_AnyStep_SaysWhatIsChanged()
    {
        var order = Of((0, [0, 1], 0), (0, [1], 0), (0, [1, 2], 1));
        Assert.Equal(
            [("c0 c1", true), ("", false), ("c2", true)],
            order.Steps.Select(s => (string.Join(' ', s.Mounted.Select(m => m.Color)), s.MovesPosts)));
        Assert.All(order.Steps.SelectMany(s => s.Mounted), m => Assert.Equal("m0", m.Material));
    }

    [Fact]
    public void Of_TheSameColorInAnotherMaterial_IsAnotherSpool() =>
        Assert.Equal(3, Of((0, [0], 0), (1, [0], 0)).Changes);

    [Fact]
    public void Of_NoBuilds_IsNothing() => Assert.Null(BatchPull.Of([], SpecFixture.Catalog.Shop));

    [Fact]
    public void Of_SmallBatches_TakeATenthMoreChangesThanTheBestOfAllOrdersAtMost()
    {
        var (best, ours) = (0, 0);
        AnyBuild.Array[1, 7].Sample(
            builds =>
            {
                var least = Permutations(builds).Min(ChangesOf);
                Assert.True(Of(builds).Changes >= least);
                Interlocked.Add(ref best, least);
                Interlocked.Add(ref ours, Of(builds).Changes);
            },
            seed: "0000KOIPe036",
            iter: 100);
        Assert.InRange(ours, best, best * 1.1);
    }

    [Fact]
    public void Of_LargerBatch_IsAPermutationAndNeverWorseThanAsOrdered() =>
        Gen.Select(Gen.Int[0, 1], Gen.Int[0, 11].Array[1, 4], Gen.Int[0, 30]).Array[13, 120].Sample(
            builds =>
            {
                var order = Of(builds);
                Assert.Equal(
                    builds.Select((_, i) => $"p{i}").Order(StringComparer.Ordinal),
                    order.Steps.Select(s => s.Piece).Order(StringComparer.Ordinal));
                var taken = order.Steps.Select(s => builds[int.Parse(s.Piece.AsSpan(1), null)]).ToArray();
                Assert.Equal(ChangesOf(taken), order.Changes);
                Assert.Equal(ChangesOf(builds), order.ChangesAsOrdered);
                Assert.True(order.Changes <= order.ChangesAsOrdered);
                Assert.Equal(order.Steps, Of(builds).Steps);
            },
            seed: "0000KOIPe036",
            iter: 60);

    [Fact]
    public void Of_ColorsThatSplitIntoFamilies_FindsTheBestOfALargeBatch()
    {
        // 40 set-ups in 4 families of one color each, a post setting of its own a piece: at best each family's spool
        // is mounted once and the posts are moved for every piece.
        var order = Of([.. Enumerable.Range(0, 40).Select(i => (0, new[] { i % 4 }, i))]);
        Assert.Equal(40 + 4, order.Changes);
        Assert.Equal(80, order.ChangesAsOrdered);
    }

    [Fact]
    public void Of_ThousandsOfBuilds_StaysAPermutation()
    {
        var builds = Enumerable.Range(0, 4000).Select(i => (0, new[] { i * 7 % 90, i * 11 % 90 }, i * 13 % 900)).ToArray();
        var order = Of(builds);
        Assert.Equal(4000, order.Steps.Select(s => s.Piece).Distinct().Count());
        Assert.True(order.Changes < order.ChangesAsOrdered);
    }

    [Fact]
    public void Of_MoreThan64Spools_GoesFromEachSetUpToTheNearest() =>
        Gen.Select(Gen.Int[0, 1], Gen.Int[0, 120].Array[1, 5], Gen.Int[0, 3]).Array[40, 60].Sample(
            builds =>
            {
                var order = Of(builds);
                Assert.True(builds.SelectMany(b => b.Item2.Select(c => (b.Item1, c))).Distinct().Count() > 64);
                Assert.Equal(ByNearest(builds), order.Steps.Select(s => int.Parse(s.Piece.AsSpan(1), null)));
            },
            seed: "0000KOIPe036",
            iter: 20);

    [Fact]
    public void Of_AnotherOrderOfAsManyChanges_StaysAsOrdered()
    {
        // As ordered 2 + 3 + 1; by the nearest the last before the second, 2 + 2 + 2.
        var order = Of((0, [0], 0), (0, [1, 2], 1), (0, [2], 2));
        Assert.Equal((6, 6), (order.Changes, order.ChangesAsOrdered));
        Assert.Equal(["p0", "p1", "p2"], order.Steps.Select(s => s.Piece));
    }

    [Fact]
    public void Of_Batch_HasTheUnitAndDateOfItsFirstPiece()
    {
        var pull = BatchPull.Of([Good with { Unit = LengthUnit.Millimeter, Date = new DateOnly(2026, 5, 1) }, Good], SpecFixture.Catalog.Shop)!;
        Assert.Equal((LengthUnit.Millimeter, new DateOnly(2026, 5, 1)), (pull.Unit, pull.Date));
    }

    /// <summary>From each build to the one with the fewest changes, of several to the earliest.</summary>
    private static List<int> ByNearest((int Material, int[] Colors, int Posts)[] builds)
    {
        var (path, left) = (new List<int> { 0 }, Enumerable.Range(1, builds.Length - 1).ToList());
        while (left.Count > 0)
        {
            var from = builds[path[^1]];
            var nearest = left.MinBy(to => builds[to].Colors.Distinct().Count(c => from.Material != builds[to].Material || !from.Colors.Contains(c))
                + (from.Posts == builds[to].Posts ? 0 : 1));
            path.Add(nearest);
            left.Remove(nearest);
        }

        return path;
    }

    private static PullOrder Of(params (int Material, int[] Colors, int Posts)[] builds) => BatchPull.Of(
        builds.Select((b, i) => Good with
        {
            Piece = $"p{i}",
            Bundle = Good.Bundle with { Material = $"m{b.Material}" },
            Layup = Layup.Of(b.Colors.Distinct().Select(c => ($"c{c}", 8)), Good.Layup.Tail),
            Posts = Good.Posts with { Outside = Length.FromInches(30 + b.Posts) },
        }),
        SpecFixture.Catalog.Shop)!.Order;

    /// <summary>Counted anew, from the definition: spools that are not mounted, and posts that stand elsewhere.</summary>
    private static int ChangesOf((int Material, int[] Colors, int Posts)[] builds)
    {
        var (changes, mounted, posts) = (0, new HashSet<(int, int)>(), -1);
        foreach (var b in builds)
        {
            var spools = b.Colors.Select(c => (b.Material, c)).ToHashSet();
            changes += spools.Count(s => !mounted.Contains(s)) + (posts == b.Posts ? 0 : 1);
            (mounted, posts) = (spools, b.Posts);
        }

        return changes;
    }

    private static IEnumerable<T[]> Permutations<T>(T[] items) => items.Length <= 1
        ? [items]
        : items.SelectMany((item, i) => Permutations<T>([.. items[..i], .. items[(i + 1)..]]).Select(rest => (T[])[item, .. rest]));
}
