using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Problems;
using Tagend.Tags;

namespace Tagend.Fits;

/// <summary>A build as the fit sees it.</summary>
/// <param name="Number">The build's number in the job book, from 1.</param>
/// <param name="LaidUpLength">
/// As built: over measuring pins, before twisting, end loops closed. The posts were set so much longer or shorter than
/// the spec has them, and so was the laid-up length: the correction for thick posts and closed loops is the same.
/// </param>
/// <param name="Turns">The turns that were put in, 0 or more, halves too.</param>
/// <param name="Measured">The finished length as measured, over measuring pins and after stretching.</param>
/// <param name="Ordered">The finished length that was ordered.</param>
/// <param name="Tolerance">The piece may be this much longer or shorter.</param>
/// <param name="IsLeftOut">Whether it is left out of the fit, by choice.</param>
public sealed record BuildPoint(
    long Number,
    string Order,
    string Piece,
    string Material,
    int Strands,
    Length LaidUpLength,
    double Turns,
    Length Measured,
    Length Ordered,
    Length Tolerance,
    bool IsLeftOut)
{
    /// <summary>The turns per inch of laid-up length.</summary>
    public double Rate => Turns / LaidUpLength.Inches;

    /// <summary>All builds of some jobs that were not struck, in the order they were logged.</summary>
    /// <exception cref="TagendException">What the book has of a job is not what the job's own tag says, whose check is there.</exception>
    public static IReadOnlyList<BuildPoint> Of(IEnumerable<PrintedJob> jobs) =>
    [
        .. jobs.Select(Held).SelectMany(job => job.Builds.Where(b => !b.IsStruck).Select(logged => new BuildPoint(
            logged.Number,
            job.Order,
            job.Piece,
            job.Material,
            job.Strands,
            job.LaidUpLength + logged.Built.Posts - job.Posts,
            logged.Built.Turns,
            logged.Built.Measured,
            job.FinishedLength,
            job.Tolerance,
            logged.IsLeftOut))).OrderBy(p => p.Number),
    ];

    private static PrintedJob Held(PrintedJob job) =>
        TagReader.Read(job.Tag) is TagReading.Piece { Spec: var spec }
        && (spec.Order, spec.Piece, spec.Bundle.Material, spec.Bundle.Strands) == (job.Order, job.Piece, job.Material, job.Strands)
        && (spec.FinishedLength, spec.Tolerance) == (job.FinishedLength, job.Tolerance)
        && (spec.LaidUpLength, spec.Posts.Outside) == (job.LaidUpLength, job.Posts)
            ? job
            : throw new TagendException(JobWording.NotAsItsTag(job.Order, job.Piece, job.Revision));
}
