using Tagend.Measures;
using Tagend.Problems;
using Tagend.Specs;

namespace Tagend.Jobs.Sql;

/// <summary>The spools in a job book's database.</summary>
internal sealed class SqlSpools(SqlStore store) : ISpools
{
    public IReadOnlyList<ReceivedSpool> Receive(IReadOnlyList<NewSpool> spools, Guid key) => store.Write<IReadOnlyList<ReceivedSpool>>(() =>
    {
        foreach (var (i, spool) in spools.Index())
        {
            var added = store.Read(
                """
                INSERT INTO spools (kind, name, color, lot, received_nm, received_on, bench, finished, seal, write_key)
                VALUES ('', '', '', '', 0, '', '', 0, 0, @key) ON CONFLICT DO NOTHING RETURNING number
                """,
                row => row.GetInt64(0),
                ("key", $"{key}/{i}"));
            foreach (var number in added)
            {
                Write(new SpoolRows.Entry(
                    new ReceivedSpool(number, spool.Kind, spool.Name, spool.Color, spool.Lot, spool.Length, spool.Received), "", false, $"{key}/{i}", 0));
            }
        }

        return [.. Enumerable.Range(0, spools.Count).SelectMany(i => Read("s.write_key = @key", ("key", $"{key}/{i}"))).Select(s => s.Kept.Spool)];
    });

    public IReadOnlyList<KeptSpool> All(bool withFinished) => [.. Read(withFinished ? "1 = 1" : "s.finished = 0").Select(s => s.Kept)];

    public KeptSpool? Find(long number) => Read("s.number = @number", ("number", number)).SingleOrDefault().Kept;

    public void Mount(long number, string bench) => store.Write(() =>
    {
        store.Alone();
        var (entry, _) = Known(number);
        var spool = entry.Spool;
        foreach (var (other, _) in Read("s.bench = @bench AND s.bench <> ''", ("bench", bench)))
        {
            if ((other.Spool.Kind, other.Spool.Name, other.Spool.Color) == (spool.Kind, spool.Name, spool.Color))
            {
                Write(other with { Bench = "" });
            }
        }

        Write(entry with { Bench = bench });
        return 0;
    });

    public void Count(long number, Length left, Guid key) => store.Write(() =>
    {
        Known(number);
        Enter(number, DBNull.Value, left, key.ToString());
        return 0;
    });

    public void Finish(long number) => store.Write(() =>
    {
        store.Alone();
        Write(Known(number).Entry with { Bench = "", IsFinished = true });
        return 0;
    });

    /// <summary>Enters what a build has taken, in the writing that logs the build.</summary>
    /// <exception cref="TagendException">There is no such spool.</exception>
    public void Take(long build, IEnumerable<SpoolUse> uses, Guid key)
    {
        foreach (var use in uses.OrderBy(u => u.Spool)) // in one order, so that two benches never wait for each other
        {
            Known(use.Spool);
            Enter(use.Spool, build, use.Length, $"{key}/{use.Spool}");
        }
    }

    private void Enter(long spool, object build, Length length, string key)
    {
        var added = store.Read(
            """
            INSERT INTO spool_uses (spool, build, length_nm, seal, write_key) VALUES (@spool, @build, @length, 0, @key)
            ON CONFLICT DO NOTHING RETURNING number
            """,
            row => row.GetInt64(0),
            ("spool", spool), ("build", build), ("length", length.Nanometers), ("key", key));
        foreach (var number in added)
        {
            store.Run("UPDATE spool_uses SET seal = @seal WHERE number = @use_number", SpoolRows.UseValues(number, spool, build, length, key));
            store.Run("UPDATE spools SET uses = uses + 1 WHERE number = @spool", ("spool", spool));
        }
    }

    private (SpoolRows.Entry Entry, KeptSpool Kept) Known(long number) =>
        Read("s.number = @number", ("number", number)) is [var known] ? known : throw new TagendException(JobWording.NoSpool(number)) { Blame = Blame.Missing };

    private void Write(SpoolRows.Entry entry) => store.Run(
        """
        UPDATE spools SET kind = @kind, name = @name, color = @color, lot = @lot, received_nm = @received_nm, received_on = @received_on,
            bench = @bench, finished = @finished, write_key = @write_key, seal = @seal
        WHERE number = @number
        """,
        SpoolRows.Values(entry));

    private List<(SpoolRows.Entry Entry, KeptSpool Kept)> Read(string condition, params ReadOnlySpan<(string Name, object Value)> values) =>
    [
        .. store.Read($"{SpoolRows.Select} WHERE {condition} ORDER BY s.number, u.number", row => (Entry: SpoolRows.Spool(row), Use: SpoolRows.UseOf(row)), values)
            .GroupBy(r => r.Entry.Spool.Number)
            .Select(rows => (rows.First().Entry, Kept(rows.First().Entry, [.. rows.Where(r => r.Use is not null).Select(r => r.Use!)]))),
    ];

    /// <param name="uses">In the order of their entering: what is left counts from the last count on.</param>
    private KeptSpool Kept(SpoolRows.Entry entry, List<SpoolRows.Use> uses)
    {
        if (uses.Count != entry.Uses)
        {
            throw store.Damage($"of {entry.Uses} uses of spool {entry.Spool.Number} {uses.Count} are found");
        }

        var count = uses.FindLastIndex(u => u.Build is null);
        var left = uses.Skip(count + 1).Where(u => !u.IsStruck).Aggregate(count < 0 ? entry.Spool.Length : uses[count].Length, (sum, u) => sum - u.Length);
        var ofBuilds = uses.Where(u => u.Build is not null && !u.IsStruck).ToList();
        return new KeptSpool(
            entry.Spool, left, ofBuilds.Count, ofBuilds.Aggregate(Length.Zero, (sum, u) => sum + u.Length), entry.Bench, entry.IsFinished);
    }
}
