using System.Globalization;
using Tagend.Measures;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Tags;

namespace Tagend.Jobs;

/// <summary>The shop's memory, one file: every printed spec, and what was really built.</summary>
/// <remarks>What a method has acknowledged by returning is on the disk. Customers' names are in it: the tags have none.</remarks>
public sealed class JobBook : IDisposable
{
    /// <summary>In the shop's folder.</summary>
    public const string FileName = "tagend-jobs.db";

    /// <summary>How long to wait for another run that writes.</summary>
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    private readonly JobFile _file;
    private readonly TimeProvider _clock;

    private JobBook(JobFile file, TimeProvider clock)
    {
        _file = file;
        _clock = clock;
    }

    /// <summary>Opens a book; an older one is brought to today's version.</summary>
    /// <param name="make">Makes a new book where there is none.</param>
    /// <exception cref="TagendException">It cannot be used; so says every method.</exception>
    public static JobBook Open(string path, bool make, TimeProvider clock, TimeSpan? patience = null) =>
        new(JobFile.Open(path, make, patience ?? Patience), clock);

    public void Dispose() => _file.Dispose();

    /// <summary>Enters specs as printed, all or none. One that is in the book already, letter for letter, stays as it is.</summary>
    /// <returns>How many are new.</returns>
    public int Record(IEnumerable<Build> builds) => _file.Write(() => builds.Sum(b => Enter(b, TagWriter.Write(b.Spec))));

    /// <summary>Logs what was built of a spec; a spec that the book does not have is entered first.</summary>
    public LoggedBuild Log(BuildSpec spec, AsBuilt built)
    {
        var now = _clock.GetUtcNow();
        var number = _file.Write(() =>
        {
            var tag = TagWriter.Write(spec);
            Enter(new Build(spec, Orders.OrderSlip.Blank), tag);
            _file.Run(
                """
                INSERT INTO builds (job, posts_nm, turns, measured_nm, load_un, minutes, who, logged_at)
                SELECT number, $posts, $turns, $measured, $load, $minutes, $who, $now
                FROM jobs WHERE order_number = $order AND piece = $piece AND tag = $tag
                """,
                ("$posts", built.Posts.Nanometers),
                ("$turns", built.Turns),
                ("$measured", built.Measured.Nanometers),
                ("$load", built.Load.Micronewtons),
                ("$minutes", built.Minutes),
                ("$who", built.Who),
                ("$now", JobRows.Time(now)),
                ("$order", spec.Order),
                ("$piece", spec.Piece),
                ("$tag", tag));
            return _file.Number("SELECT last_insert_rowid()")!.Value;
        });
        return new LoggedBuild(number, built, now, IsLeftOut: false);
    }

    /// <summary>Takes builds out of the fit, or back in, all or none.</summary>
    /// <exception cref="TagendException">A number is of no build.</exception>
    public void LeaveOut(IEnumerable<long> numbers, bool isLeftOut) => _file.Write(() =>
    {
        foreach (var number in numbers)
        {
            if (_file.Run("UPDATE builds SET left_out = $out WHERE number = $number", ("$out", isLeftOut ? 1 : 0), ("$number", number)) == 0)
            {
                throw new TagendException(JobWording.NoBuild(number));
            }
        }

        return 0;
    });

    /// <summary>In the order of printing, each with its builds.</summary>
    public IReadOnlyList<PrintedJob> Find(JobSearch search)
    {
        var builds = _file.Read($"SELECT job, {JobRows.BuildColumns} FROM builds ORDER BY number", JobRows.Build).ToLookup(b => b.Job, b => b.Build);
        var jobs = _file.Read(
            $"""
             SELECT {JobRows.JobColumns} FROM jobs
             WHERE ($order = '' OR order_number = $order) AND ($piece = '' OR piece = $piece) AND issued BETWEEN $from AND $to
                 AND (NOT $built OR number IN (SELECT job FROM builds))
             ORDER BY number
             """,
            JobRows.Job,
            ("$order", search.Order ?? ""),
            ("$piece", search.Piece ?? ""),
            ("$from", DateWriter.Iso(search.From ?? DateOnly.MinValue)),
            ("$to", DateWriter.Iso(search.To ?? DateOnly.MaxValue)),
            ("$built", search.IsBuilt));
        return [.. jobs.Where(j => Has(j.Customer, search.Customer) && Has(j.Bow, search.Bow))
            .Select(j => j with { Builds = builds[j.Number].ToValueList() })];
    }

    private static bool Has(string text, string? part) =>
        part is null || CultureInfo.InvariantCulture.CompareInfo.IndexOf(text, part, CompareOptions.OrdinalIgnoreCase) >= 0;

    private int Enter(Build build, string tag)
    {
        var (spec, slip) = build;
        return _file.Run(
            $"""
             INSERT INTO jobs ({JobRows.EnteredColumns})
             VALUES ($order, $piece, $revision, $issued, $kind, $material, $strands, $finished, $tolerance, $laidUp, $posts,
                 $customer, $bow, $due, $tag, $now)
             ON CONFLICT DO NOTHING
             """,
            ("$order", spec.Order),
            ("$piece", spec.Piece),
            ("$revision", spec.Revision),
            ("$issued", DateWriter.Iso(spec.Date)),
            ("$kind", spec.Kind),
            ("$material", spec.Bundle.Material),
            ("$strands", spec.Bundle.Strands),
            ("$finished", spec.FinishedLength.Nanometers),
            ("$tolerance", spec.Tolerance.Nanometers),
            ("$laidUp", spec.LaidUpLength.Nanometers),
            ("$posts", spec.Posts.Outside.Nanometers),
            ("$customer", slip.Customer),
            ("$bow", slip.Bow),
            ("$due", slip.Due),
            ("$tag", tag),
            ("$now", JobRows.Time(_clock.GetUtcNow())));
    }
}
