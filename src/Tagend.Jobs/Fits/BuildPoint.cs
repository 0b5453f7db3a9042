using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Problems;
using Tagend.Tags;

namespace Tagend.Fits;

/// <summary>A build as the fit sees it.</summary>
public sealed record BuildPoint
{
    /// <summary>The build's number in the job book, from 1.</summary>
    public required long Number { get; init; }

    /// <summary>The order's number, in capitals.</summary>
    public required string Order { get; init; }

    /// <summary>The piece's name, in lower case.</summary>
    public required string Piece { get; init; }

    /// <summary>The strand material's name in the catalog.</summary>
    public required string Material { get; init; }

    /// <summary>The number of strands.</summary>
    public required int Strands { get; init; }

    /// <summary>
    /// As built: over measuring pins, before twisting, end loops closed. The posts were set so much longer or shorter than
    /// the spec has them, and so was the laid-up length: the correction for thick posts and closed loops is the same.
    /// </summary>
    public required Length LaidUpLength { get; init; }

    /// <summary>The turns that were put in, 0 or more, halves too.</summary>
    public required double Turns { get; init; }

    /// <summary>The finished length as measured, over measuring pins and after stretching.</summary>
    public required Length Measured { get; init; }

    /// <summary>The finished length that was ordered.</summary>
    public required Length Ordered { get; init; }

    /// <summary>The piece may be this much longer or shorter.</summary>
    public required Length Tolerance { get; init; }

    /// <summary>Whether it is left out of the fit, by choice.</summary>
    public required bool IsLeftOut { get; init; }

    /// <summary>The turns per inch of laid-up length.</summary>
    public double Rate => Turns / LaidUpLength.Inches;

    /// <summary>All builds of some jobs that were not struck, in the order they were logged.</summary>
    /// <exception cref="TagendException">What the book has of a job is not what the job's own tag says, whose check is there.</exception>
    public static IReadOnlyList<BuildPoint> Of(IEnumerable<PrintedJob> jobs) =>
    [
        .. SideBySide.Select([.. jobs], job => (Job: job, IsHeld: IsAsItsTag(job))).Select(Held).SelectMany(job => job.Builds.Where(b => !b.IsStruck).Select(logged => new BuildPoint
        {
            Number = logged.Number,
            Order = job.Order,
            Piece = job.Piece,
            Material = job.Material,
            Strands = job.Strands,
            LaidUpLength = job.LaidUpLength + logged.Built.Posts - job.Posts,
            Turns = logged.Built.Turns,
            Measured = logged.Built.Measured,
            Ordered = job.FinishedLength,
            Tolerance = job.Tolerance,
            IsLeftOut = logged.IsLeftOut,
        })).OrderBy(p => p.Number),
    ];

    private static PrintedJob Held((PrintedJob Job, bool IsHeld) read) =>
        read.IsHeld ? read.Job : throw new TagendException(JobWording.NotAsItsTag(read.Job.Order, read.Job.Piece, read.Job.Revision));

    private static bool IsAsItsTag(PrintedJob job) =>
        TagReader.Read(job.Tag) is TagReading.Piece { Spec: var spec }
        && (spec.Order, spec.Piece, spec.Bundle.Material, spec.Bundle.Strands) == (job.Order, job.Piece, job.Material, job.Strands)
        && (spec.FinishedLength, spec.Tolerance) == (job.FinishedLength, job.Tolerance)
        && (spec.LaidUpLength, spec.Posts.Outside) == (job.LaidUpLength, job.Posts);
}
