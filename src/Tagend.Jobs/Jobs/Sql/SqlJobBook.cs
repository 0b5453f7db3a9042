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

    private SqlStore Store => store;

    public void Dispose() => store.Dispose();

    public int Record(IEnumerable<Build> builds)
    {
        var entered = builds.ToList();
        return store.Write(() => entered.Sum(b => TagOf(b.Spec) is null ? Enter(b, TagWriter.Write(b.Spec)) : 0));
    }

    public LoggedBuild Log(BuildSpec spec, AsBuilt built, Guid key) => store.Write(() =>
    {
        var tag = TagOf(spec) ?? TagWriter.Write(spec);
        Enter(new Build(spec, OrderSlip.Blank), tag);
        var added = store.Read(
            """
            INSERT INTO builds (job, posts_nm, turns, measured_nm, load_un, minutes, who, logged_at, left_out, lots, seal, write_key)
            SELECT number, 0, 0, 0, 0, 0, '', '', 0, '', 0, @key FROM jobs WHERE order_number = @order AND piece = @piece AND tag = @tag
            ON CONFLICT DO NOTHING RETURNING number, job
            """,
            row => (Number: row.GetInt64(0), Job: row.GetInt64(1)),
            ("key", key.ToString()), ("order", spec.Order), ("piece", spec.Piece), ("tag", tag));
        foreach (var (number, job) in added)
        {
            Write(JobRows.Values(number, spec.Order, spec.Piece, tag, built, clock.GetUtcNow(), isLeftOut: false));
            store.Run("UPDATE jobs SET builds = builds + 1 WHERE number = @job", ("job", job));
            foreach (var lot in built.Lots)
            {
                store.Run("INSERT INTO build_lots (lot, build, job) VALUES (@lot, @build, @job)", ("lot", lot), ("build", number), ("job", job));
            }
        }

        return BuildOf("write_key", key.ToString())!.Value.Build;
    });

    public void LeaveOut(IReadOnlyCollection<long> numbers, bool isLeftOut) => store.Write(() =>
    {
        foreach (var number in numbers)
        {
            var (job, logged) = BuildOf("number", number) ?? throw new TagendException(JobWording.NoBuild(number));
            Write(JobRows.Values(number, job.Order, job.Piece, job.Tag, logged.Built, logged.LoggedAt, isLeftOut));
        }

        return 0;
    });

    public int Forget(string customer)
    {
        var forgotten = store.Write(() =>
        {
            var jobs = store.Read(
                JobRows.Select("(SELECT * FROM jobs WHERE customer_folded = @customer) j", "LEFT JOIN"),
                JobRows.Job,
                ("customer", JobConditions.Folded(customer)));
            foreach (var job in jobs.DistinctBy(j => j.Number))
            {
                store.Run(
                    "UPDATE jobs SET customer = '', customer_folded = '', seal = @seal WHERE number = @number",
                    ("seal", JobRows.SealOf(job with { Customer = "" })),
                    ("number", job.Number));
            }

            return jobs.DistinctBy(j => j.Number).Count();
        });
        store.Scrub();
        return forgotten;
    }

    public int CopyTo(JobBookAddress target)
    {
        using var other = (SqlJobBook)target.OpenOrBegin(clock);
        return BookCopy.Copy(store, other.Store, target.Text);
    }

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

    public IReadOnlyList<PrintedJob> Built() => store.Snapshot(() =>
    {
        var jobs = Read(JobRows.Select("jobs j", "JOIN") + " ORDER BY j.number, b.number");
        store.CheckBuilds(JobRows.SealsOf(jobs));
        return jobs;
    });

    public PrintedJob? Newest(string order, string piece) =>
        Page("order_number = @order AND piece = @piece", "number DESC", 1, [("order", order), ("piece", piece)]).SingleOrDefault();

    /// <summary>The first jobs that fit, each with its builds.</summary>
    private List<PrintedJob> Page(string condition, string order, int size, (string Name, object Value)[] values) => Read(
        JobRows.Select($"(SELECT * FROM jobs WHERE {condition} ORDER BY {order} LIMIT {size}) j", "LEFT JOIN") + " ORDER BY j.number, b.number",
        values);

    /// <summary>Jobs with all their builds.</summary>
    private List<PrintedJob> Read(string sql, params ReadOnlySpan<(string Name, object Value)> values)
    {
        var jobs = new List<PrintedJob>();
        foreach (var rows in store.Read(sql, row => (Job: JobRows.Job(row), Builds: JobRows.Builds(row), Build: JobRows.Build(row)), values).GroupBy(r => r.Job.Number))
        {
            var (job, count, _) = rows.First();
            jobs.Add(job with { Builds = rows.Where(r => r.Build is not null).Select(r => r.Build!).ToValueList() });
            if (jobs[^1].Builds.Count != count)
            {
                throw store.Damage($"of {count} builds of job {job.Number} {jobs[^1].Builds.Count} are found");
            }
        }

        return jobs;
    }

    private void Write((string Name, object Value)[] build) => store.Run(
        """
        UPDATE builds SET posts_nm = @set_nm, turns = @turns, measured_nm = @measured_nm, load_un = @load_un, minutes = @minutes,
            who = @who, logged_at = @logged_at, left_out = @left_out, lots = @lots, seal = @seal
        WHERE number = @build
        """,
        JobRows.Sealed(build));

    private (PrintedJob Job, LoggedBuild Build)? BuildOf(string column, object value) =>
        store.Read(JobRows.Select("jobs j", "JOIN") + $" WHERE b.{column} = @value", row => (JobRows.Job(row), JobRows.Build(row)!), ("value", value))
            .Select(r => ((PrintedJob, LoggedBuild)?)r).SingleOrDefault();

    /// <summary>The text of the job that is this issue of the piece, whatever version or unit it was printed in; null where there is none.</summary>
    private string? TagOf(BuildSpec spec) => store.Read(
        "SELECT tag FROM jobs WHERE order_number = @order AND piece = @piece AND revision = @revision ORDER BY number",
        row => row.GetString(0),
        ("order", spec.Order),
        ("piece", spec.Piece),
        ("revision", (long)spec.Revision)).LastOrDefault(tag => TagReader.Read(tag) is TagReading.Piece job && SpecChange.Of(job.Spec, spec).Count == 0);

    private int Enter(Build build, string tag) => store.Run(
        """
        INSERT INTO jobs (order_number, piece, revision, issued, kind, material, strands, finished_nm, tolerance_nm, laid_up_nm,
            posts_nm, customer, bow, due, tag, printed_at, seal, customer_folded, bow_folded)
        VALUES (@order_number, @piece, @revision, @issued, @kind, @material, @strands, @finished_nm, @tolerance_nm, @laid_up_nm,
            @posts_nm, @customer, @bow, @due, @tag, @printed_at, @seal, @customer_folded, @bow_folded)
        ON CONFLICT DO NOTHING
        """,
        [
            .. JobRows.Sealed(JobRows.Values(build, tag, clock.GetUtcNow())),
            ("customer_folded", JobConditions.Folded(build.Slip.Customer)),
            ("bow_folded", JobConditions.Folded(build.Slip.Bow)),
        ]);
}
