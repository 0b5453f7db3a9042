using Tagend.Jobs;
using Tagend.Measures;

namespace Tagend.Workshop.Json;

/// <summary>A job of the job book, with its builds.</summary>
internal sealed record JobContract
{
    public required string Order { get; init; }

    public required string Piece { get; init; }

    public required int Revision { get; init; }

    public required string Date { get; init; }

    public required string Kind { get; init; }

    public required string Material { get; init; }

    public required int Strands { get; init; }

    public required LengthContract FinishedLength { get; init; }

    public required LengthContract Tolerance { get; init; }

    public required LengthContract PostsOutside { get; init; }

    public required string Customer { get; init; }

    public required string Bow { get; init; }

    public required string Due { get; init; }

    public required DateTimeOffset PrintedAt { get; init; }

    public required string Tag { get; init; }

    public required string State { get; init; }

    public required string Bench { get; init; }

    public required IReadOnlyList<LoggedBuildContract> Builds { get; init; }

    internal static JobContract Of(PrintedJob job) => new()
    {
        Order = job.Order,
        Piece = job.Piece,
        Revision = job.Revision,
        Date = DateWriter.Iso(job.Issued),
        Kind = job.Kind,
        Material = job.Material,
        Strands = job.Strands,
        FinishedLength = LengthContract.Of(job.FinishedLength),
        Tolerance = LengthContract.Of(job.Tolerance),
        PostsOutside = LengthContract.Of(job.Posts),
        Customer = job.Customer,
        Bow = job.Bow,
        Due = job.Due,
        PrintedAt = job.PrintedAt,
        Tag = job.Tag,
        State = StateWords.Of(job.State),
        Bench = job.Bench,
        Builds = [.. job.Builds.Select(LoggedBuildContract.Of)],
    };
}

/// <summary>What was really done to a piece.</summary>
internal sealed record LoggedBuildContract
{
    public required long Build { get; init; }

    public required LengthContract PostsSet { get; init; }

    public required double Turns { get; init; }

    public required LengthContract Measured { get; init; }

    public required ForceContract Load { get; init; }

    public required double Minutes { get; init; }

    public required string Who { get; init; }

    public required DateTimeOffset LoggedAt { get; init; }

    public required bool LeftOut { get; init; }

    public required IReadOnlyList<string> Lots { get; init; }

    public required IReadOnlyList<SpoolUseContract> Spools { get; init; }

    public required string Bench { get; init; }

    public required bool Struck { get; init; }

    public required long? Replaces { get; init; }

    internal static LoggedBuildContract Of(LoggedBuild logged) => new()
    {
        Build = logged.Number,
        PostsSet = LengthContract.Of(logged.Built.Posts),
        Turns = logged.Built.Turns,
        Measured = LengthContract.Of(logged.Built.Measured),
        Load = ForceContract.Of(logged.Built.Load),
        Minutes = logged.Built.Minutes,
        Who = logged.Built.Who,
        LoggedAt = logged.LoggedAt,
        LeftOut = logged.IsLeftOut,
        Lots = logged.Built.Lots,
        Spools = [.. logged.Built.Spools.Select(SpoolUseContract.Of)],
        Bench = logged.Bench,
        Struck = logged.IsStruck,
        Replaces = logged.Replaces > 0 ? logged.Replaces : null,
    };
}
