using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Tags;

namespace Tagend.Jobs.Sql;

/// <summary>A job book in a database. The statements are the same for every kind of database.</summary>
internal sealed class SqlJobBook(SqlStore store, TimeProvider clock) : IJobBook
{
    /// <summary>Jobs that are read at once.</summary>
    private const int PageSize = 500;

    public void Dispose() => store.Dispose();

    public int Record(IEnumerable<Build> builds) => store.Write(() => builds.Sum(b => Enter(b, TagWriter.Write(b.Spec))));

    public LoggedBuild Log(BuildSpec spec, AsBuilt built, Guid key) => store.Write(() =>
    {
        var tag = TagWriter.Write(spec);
        Enter(new Build(spec, OrderSlip.Blank), tag);
        store.Run(
            """
            INSERT INTO builds (job, posts_nm, turns, measured_nm, load_un, minutes, who, logged_at, left_out, write_key)
            SELECT number, @posts, @turns, @measured, @load, @minutes, @who, @now, 0, @key
            FROM jobs WHERE order_number = @order AND piece = @piece AND tag = @tag
            ON CONFLICT DO NOTHING
            """,
            ("posts", built.Posts.Nanometers),
            ("turns", built.Turns),
            ("measured", built.Measured.Nanometers),
            ("load", built.Load.Micronewtons),
            ("minutes", built.Minutes),
            ("who", built.Who),
            ("now", UtcTime.Write(clock.GetUtcNow())),
            ("key", key.ToString()),
            ("order", spec.Order),
            ("piece", spec.Piece),
            ("tag", tag));
        return store.Read($"SELECT {JobRows.BuildColumns} FROM builds b WHERE write_key = @key", JobRows.Build, ("key", key.ToString()))[0]!;
    });

    public void LeaveOut(IEnumerable<long> numbers, bool isLeftOut) => store.Write(() =>
    {
        foreach (var number in numbers)
        {
            if (store.Run("UPDATE builds SET left_out = @out WHERE number = @number", ("out", isLeftOut ? 1L : 0L), ("number", number)) == 0)
            {
                throw new TagendException(JobWording.NoBuild(number));
            }
        }

        return 0;
    });

    public IEnumerable<PrintedJob> Find(JobSearch search)
    {
        var conditions = new JobConditions(search, store);
        for (var after = 0L; ;)
        {
            var page = Page($"number > @after{conditions.Sql}", "number", PageSize, [("after", after), .. conditions.Values]);
            foreach (var job in page)
            {
                yield return job;
            }

            if (page.Count < PageSize)
            {
                yield break;
            }

            after = page[^1].Number;
        }
    }

    public PrintedJob? Newest(string order, string piece) =>
        Page("order_number = @order AND piece = @piece", "number DESC", 1, [("order", order), ("piece", piece)]).SingleOrDefault();

    /// <summary>The first jobs that fit, each with its builds.</summary>
    private List<PrintedJob> Page(string condition, string order, int size, (string Name, object Value)[] values)
    {
        var rows = store.Read(
            $"""
             SELECT j.*, {JobRows.BuildColumns}
             FROM (SELECT {JobRows.JobColumns} FROM jobs WHERE {condition} ORDER BY {order} LIMIT {size}) j
             LEFT JOIN builds b ON b.job = j.number
             ORDER BY j.number, b.number
             """,
            row => (Job: JobRows.Job(row), Build: JobRows.Build(row)),
            values);
        return [.. rows.GroupBy(r => r.Job.Number).Select(g => g.First().Job with
        {
            Builds = g.Where(r => r.Build is not null).Select(r => r.Build!).ToValueList(),
        })];
    }

    private int Enter(Build build, string tag)
    {
        var (spec, slip) = build;
        return store.Run(
            """
            INSERT INTO jobs (order_number, piece, revision, issued, kind, material, strands, finished_nm, tolerance_nm, laid_up_nm,
                posts_nm, customer, bow, due, tag, printed_at, customer_folded, bow_folded)
            VALUES (@order, @piece, @revision, @issued, @kind, @material, @strands, @finished, @tolerance, @laid_up,
                @posts, @customer, @bow, @due, @tag, @now, @customer_folded, @bow_folded)
            ON CONFLICT DO NOTHING
            """,
            ("order", spec.Order),
            ("piece", spec.Piece),
            ("revision", (long)spec.Revision),
            ("issued", DateWriter.Iso(spec.Date)),
            ("kind", spec.Kind),
            ("material", spec.Bundle.Material),
            ("strands", (long)spec.Bundle.Strands),
            ("finished", spec.FinishedLength.Nanometers),
            ("tolerance", spec.Tolerance.Nanometers),
            ("laid_up", spec.LaidUpLength.Nanometers),
            ("posts", spec.Posts.Outside.Nanometers),
            ("customer", slip.Customer),
            ("bow", slip.Bow),
            ("due", slip.Due),
            ("tag", tag),
            ("now", UtcTime.Write(clock.GetUtcNow())),
            ("customer_folded", JobConditions.Folded(slip.Customer)),
            ("bow_folded", JobConditions.Folded(slip.Bow)));
    }
}
