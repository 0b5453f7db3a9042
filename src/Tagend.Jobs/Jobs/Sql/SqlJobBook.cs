using System.Globalization;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Tags;

namespace Tagend.Jobs.Sql;

/// <summary>A job book in a database. The statements are the same for every kind of database.</summary>
internal sealed class SqlJobBook(SqlStore store, TimeProvider clock, string bench) : IJobBook
{
    /// <summary>Jobs that are read at once.</summary>
    private const int PageSize = 500;

    private readonly SqlSpools _spools = new(store);

    public ISpools Spools => _spools;

    private SqlStore Store => store;

    public void Dispose() => store.Dispose();

    public int Record(IEnumerable<Build> builds)
    {
        var entered = builds.ToList();
        return store.Write(() => entered.Sum(b => Enter(b, TagOf(b.Spec) ?? TagWriter.Write(b.Spec))));
    }

    public LoggedBuild Log(BuildSpec spec, AsBuilt built, Guid key) => store.Write(() => Added(spec, built, key));

    public LoggedBuild? LogFirst(BuildSpec spec, AsBuilt built, Guid key) => store.Write(() =>
    {
        store.Alone();
        return Logged(key) ?? (Stands(spec) is null ? Added(spec, built, key) : null);
    });

    public LoggedBuild? Stands(BuildSpec spec) =>
        Jobs("order_number = @order AND piece = @piece", ("order", spec.Order), ("piece", spec.Piece))
            .FindLast(j => j.Revision == spec.Revision && j.State is PieceState.Built or PieceState.Shipped)?.Standing.LastOrDefault();

    public LoggedBuild? Logged(Guid key) => BuildOf("write_key", key.ToString())?.Build;

    public LoggedBuild Correct(long number, AsBuilt built, string who, string reason, Guid key) => store.Write(() =>
        StrikeOut(number, EventKind.Corrected, who, reason, key) is { } struck
            ? Add(struck.Job, built, struck.Build.Replaces > 0 ? struck.Build.Replaces : number, key)
            : Logged(key)!);

    public void Strike(long number, string who, string reason, Guid key) =>
        store.Write(() => StrikeOut(number, EventKind.Struck, who, reason, key));

    public IReadOnlyList<PrintedJob> Enter(string order, string? piece, EventKind what, string who, string reason, Guid key) => store.Write(() =>
    {
        store.Alone();
        var jobs = Jobs("order_number = @order", ("order", order));
        var meant = jobs.FindAll(j => piece is null || j.Piece == piece);
        if (meant.Count == 0)
        {
            throw new TagendException(jobs.Count == 0 ? JobWording.NoOrder(order) : JobWording.NoPiece(order, piece!, jobs.Select(j => j.Piece).Distinct())) { Blame = Blame.Missing };
        }

        if (!EventRows.Add(store, new BookEvent(0, order, piece ?? "", what, 0, clock.GetUtcNow(), new EventNote(who, bench, reason)), key))
        {
            return meant;
        }

        var next = store.Read("SELECT coalesce(max(number), 0) + 1 FROM builds", row => row.GetInt64(0))[0];
        return meant.ConvertAll(job => (what, job.Mark) switch
        {
            (EventKind.Shipped, not PieceState.Cancelled) => Kept(job with { Mark = PieceState.Shipped }),
            (EventKind.Cancelled, not PieceState.Shipped) => Kept(job with { Mark = PieceState.Cancelled }),
            (EventKind.Reopened, _) => Kept(job with { Mark = null }),
            (EventKind.Remade, not PieceState.Cancelled) => Kept(job with { Mark = null, RemadeFrom = next }),
            (EventKind.Corrected or EventKind.Struck, _) => throw new ArgumentOutOfRangeException(nameof(what), what, "is of builds"),
            _ => job,
        });
    });

    public IReadOnlyList<BookEvent> Events(string order) => EventRows.Of(store, order);

    public PrintedJob? WithBuild(long number) => BuildOf("number", number) is { } found ? Jobs("number = @number", ("number", found.Job.Number)).Single() : null;

    public string LastBuilder() => store.Read(
        $"""
         SELECT who FROM builds WHERE number > (SELECT coalesce(max(number), 0) FROM builds) - {PageSize} AND bench = @bench AND who <> ''
         ORDER BY number DESC LIMIT 1
         """,
        row => row.Text("who"),
        ("bench", bench)).SingleOrDefault() ?? "";

    public int? NextLabel(string stock) => LabelSheetRows.Next(store, bench, stock);

    public void KeepLabel(string stock, int next) => store.Write(() =>
    {
        LabelSheetRows.Keep(store, bench, stock, next);
        return 0;
    });

    public void LeaveOut(IReadOnlyCollection<long> numbers, bool isLeftOut) => store.Write(() =>
    {
        store.Alone();
        foreach (var number in numbers)
        {
            var (job, logged) = BuildOf("number", number) ?? throw new TagendException(JobWording.NoBuild(number)) { Blame = Blame.Missing };
            Write(job, logged with { IsLeftOut = isLeftOut });
        }

        return 0;
    });

    public int Forget(string customer)
    {
        var forgotten = store.Write(() =>
        {
            store.Alone();
            var jobs = Jobs("customer_folded = @customer", ("customer", JobConditions.Folded(customer)));
            jobs.ForEach(job => Kept(job with { Customer = "", Notes = "" }));
            return jobs.Count;
        });
        store.Scrub();
        return forgotten;
    }

    public int CopyTo(JobBookAddress target) =>
        target.Fill(clock, other => BookCopy.Copy(store, ((SqlJobBook)other).Store, target.Text));

    public IEnumerable<PrintedJob> Find(JobSearch search)
    {
        var conditions = new JobConditions(search, store);
        for (PrintedJob? last = null; ;)
        {
            var page = Read(
                JobRows.Select($"({conditions.Page(PageSize)}) j", "LEFT JOIN") + $" ORDER BY {conditions.Order}, b.number", conditions.ValuesAfter(last));
            foreach (var job in page)
            {
                yield return job;
            }

            if (page.Count < PageSize)
            {
                yield break;
            }

            last = page[^1];
        }
    }

    public IReadOnlyList<PrintedJob> JobsOf(IReadOnlyCollection<string> orders)
    {
        (string Name, object Value)[] values = [.. orders.Select((order, i) => (string.Create(CultureInfo.InvariantCulture, $"order{i}"), (object)order))];
        return Jobs($"order_number IN ({string.Join(", ", values.Select(v => "@" + v.Name))})", values);
    }

    public IReadOnlyList<PrintedJob> Built() => store.Snapshot(() =>
    {
        var jobs = Read(JobRows.Select("jobs j", "JOIN") + " ORDER BY j.number, b.number");
        store.CheckBuilds(JobRows.SealsOf(jobs));
        return jobs;
    });

    public string StateOfBuilds()
    {
        var (builds, seals) = store.BuildTotals();
        return string.Create(CultureInfo.InvariantCulture, $"{builds} {seals}");
    }

    public PrintedJob? Newest(string order, string piece) =>
        Page("order_number = @order AND piece = @piece", "number DESC", 1, [("order", order), ("piece", piece)]).SingleOrDefault();

    /// <summary>The first jobs that fit, each with its builds.</summary>
    private List<PrintedJob> Page(string condition, string order, int size, (string Name, object Value)[] values) => Read(
        JobRows.Select($"(SELECT * FROM jobs WHERE {condition} ORDER BY {order} LIMIT {size}) j", "LEFT JOIN") + " ORDER BY j.number, b.number",
        values);

    /// <summary>All jobs that fit, each with its builds.</summary>
    private List<PrintedJob> Jobs(string condition, params ReadOnlySpan<(string Name, object Value)> values) =>
        Read(JobRows.Select($"(SELECT * FROM jobs WHERE {condition}) j", "LEFT JOIN") + " ORDER BY j.number, b.number", values);

    /// <summary>Jobs with all their builds.</summary>
    private List<PrintedJob> Read(string sql, params ReadOnlySpan<(string Name, object Value)> values)
    {
        var jobs = new List<PrintedJob>();
        foreach (var rows in store.Read(sql, row => (Job: JobRows.Job(row), Builds: JobRows.Builds(row), Build: JobRows.Build(row)), values).GroupBy(r => r.Job.Number))
        {
            var (job, count, _) = rows.First();
            jobs.Add(job with { Builds = rows.Where(r => r.Build is not null).Select(r => r.Build!).ToValueList() });
            var found = jobs[^1].Builds.Select(b => b.Number).Distinct().Count(); // a damaged index may have one twice in another's place
            if (found != count || jobs[^1].Builds.Count != count)
            {
                throw store.Damage($"of {count} builds of job {job.Number} {found} are found");
            }
        }

        return jobs;
    }

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

    private LoggedBuild Added(BuildSpec spec, AsBuilt built, Guid key)
    {
        var tag = TagOf(spec) ?? TagWriter.Write(spec);
        Enter(new Build(spec, OrderSlip.Blank), tag);
        return Add(Jobs("order_number = @order AND piece = @piece AND tag = @tag", ("order", spec.Order), ("piece", spec.Piece), ("tag", tag)).Single(), built, 0, key);
    }

    /// <summary>Adds a build of a job, or finds the one that this write has added before.</summary>
    private LoggedBuild Add(PrintedJob job, AsBuilt built, long replaces, Guid key)
    {
        var added = store.Read(
            """
            INSERT INTO builds (job, posts_nm, turns, measured_nm, load_un, minutes, who, logged_at, left_out, lots, seal, write_key)
            VALUES (@job, 0, 0, 0, 0, 0, '', '', 0, '', 0, @key)
            ON CONFLICT DO NOTHING RETURNING number
            """,
            row => row.GetInt64(0),
            ("key", key.ToString()), ("job", job.Number));
        foreach (var number in added)
        {
            Write(job, new LoggedBuild(number, built, clock.GetUtcNow(), IsLeftOut: false) { Bench = bench, Replaces = replaces });
            store.Run("UPDATE jobs SET builds = builds + 1 WHERE number = @job", ("job", job.Number));
            foreach (var lot in built.Lots)
            {
                store.Run("INSERT INTO build_lots (lot, build, job) VALUES (@lot, @build, @job)", ("lot", lot), ("build", number), ("job", job.Number));
            }

            _spools.Take(number, built.Spools, key);
        }

        // A damaged count of numbers may give one that is taken, and then nothing was entered.
        return Logged(key) ?? throw store.Damage("a build that is entered is not found");
    }

    /// <returns>Null where this write has struck it before.</returns>
    private (PrintedJob Job, LoggedBuild Build)? StrikeOut(long number, EventKind what, string who, string reason, Guid key)
    {
        store.Alone();
        var found = BuildOf("number", number) ?? throw new TagendException(JobWording.NoBuild(number)) { Blame = Blame.Missing };
        var entry = new BookEvent(0, found.Job.Order, found.Job.Piece, what, number, clock.GetUtcNow(), new EventNote(who, bench, reason));
        if (!EventRows.Add(store, entry, key))
        {
            return null;
        }

        if (found.Build.IsStruck)
        {
            throw new TagendException(JobWording.IsStruck(number)) { Blame = Blame.Changed };
        }

        Write(found.Job, found.Build with { IsStruck = true });
        return found;
    }

    private void Write(PrintedJob job, LoggedBuild build) => store.Run(
        """
        UPDATE builds SET posts_nm = @set_nm, turns = @turns, measured_nm = @measured_nm, load_un = @load_un, minutes = @minutes,
            who = @who, logged_at = @logged_at, left_out = @left_out, lots = @lots, bench = @build_bench, struck = @struck,
            replaces = @replaces, spools = @spools, seal = @seal
        WHERE number = @build
        """,
        JobRows.Values(job, build));

    private int Enter(Build build, string tag)
    {
        var job = JobRows.New(build, tag, clock.GetUtcNow(), bench);
        var columns = JobRows.OfJob.Concat(["seal", "customer_folded", "bow_folded"]).ToList();
        var added = store.Run(
            $"INSERT INTO jobs ({string.Join(", ", columns)}) VALUES ({string.Join(", ", columns.Select(c => "@" + c))}) ON CONFLICT DO NOTHING",
            Row(job));
        if (added == 0 && build.Slip != OrderSlip.Blank)
        {
            Renew(build, tag);
        }

        return added;
    }

    /// <summary>What is printed beside a spec that is in the book becomes as it is now, where something is given.</summary>
    private void Renew(Build build, string tag)
    {
        store.Alone();
        var (spec, slip) = (build.Spec, build.Slip);
        var job = Jobs("order_number = @order AND piece = @piece AND tag = @tag", ("order", spec.Order), ("piece", spec.Piece), ("tag", tag)).Single();
        var now = job with
        {
            Customer = slip.Customer.Length > 0 ? slip.Customer : job.Customer,
            Bow = slip.Bow.Length > 0 ? slip.Bow : job.Bow,
            Due = slip.Due.Length > 0 ? slip.Due : job.Due,
            Notes = slip.Notes.Length > 0 ? slip.Notes : job.Notes,
            Language = slip.Language.Length > 0 ? slip.Language : job.Language,
            Units = slip.Units ?? job.Units,
            Accessories = slip.Accessories.Count > 0 ? slip.Accessories : job.Accessories,
        };
        if (now != job)
        {
            Kept(now);
        }
    }

    /// <summary>Writes a job that is in the book as it is now.</summary>
    private PrintedJob Kept(PrintedJob job)
    {
        store.Run(
            """
            UPDATE jobs SET customer = @customer, bow = @bow, due = @due, notes = @notes, language = @language, units = @units,
                accessories = @accessories, mark = @mark, remade_from = @remade_from, seal = @seal,
                customer_folded = @customer_folded, bow_folded = @bow_folded
            WHERE order_number = @order_number AND piece = @piece AND tag = @tag
            """,
            Row(job));
        return job;
    }

    private static (string Name, object Value)[] Row(PrintedJob job) =>
    [
        .. JobRows.Values(job),
        ("customer_folded", JobConditions.Folded(job.Customer)),
        ("bow_folded", JobConditions.Folded(job.Bow)),
    ];
}
