using Tagend.Jobs;
using Tagend.Measures;

namespace Tagend.Workshop.Json;

/// <summary>A job of the job book, with its builds.</summary>
internal sealed record JobContract(
    string Order,
    string Piece,
    int Revision,
    string Date,
    string Kind,
    string Material,
    int Strands,
    LengthContract FinishedLength,
    LengthContract Tolerance,
    LengthContract PostsOutside,
    string Customer,
    string Bow,
    string Due,
    DateTimeOffset PrintedAt,
    string Tag,
    string State,
    string Bench,
    IReadOnlyList<LoggedBuildContract> Builds)
{
    internal static JobContract Of(PrintedJob job) => new(
        job.Order,
        job.Piece,
        job.Revision,
        DateWriter.Iso(job.Issued),
        job.Kind,
        job.Material,
        job.Strands,
        LengthContract.Of(job.FinishedLength),
        LengthContract.Of(job.Tolerance),
        LengthContract.Of(job.Posts),
        job.Customer,
        job.Bow,
        job.Due,
        job.PrintedAt,
        job.Tag,
        StateWords.Of(job.State),
        job.Bench,
        [.. job.Builds.Select(LoggedBuildContract.Of)]);
}

/// <summary>What was really done to a piece.</summary>
internal sealed record LoggedBuildContract(
    long Build,
    LengthContract PostsSet,
    double Turns,
    LengthContract Measured,
    ForceContract Load,
    double Minutes,
    string Who,
    DateTimeOffset LoggedAt,
    bool LeftOut,
    IReadOnlyList<string> Lots,
    IReadOnlyList<SpoolUseContract> Spools,
    string Bench,
    bool Struck,
    long? Replaces)
{
    internal static LoggedBuildContract Of(LoggedBuild logged) => new(
        logged.Number,
        LengthContract.Of(logged.Built.Posts),
        logged.Built.Turns,
        LengthContract.Of(logged.Built.Measured),
        ForceContract.Of(logged.Built.Load),
        logged.Built.Minutes,
        logged.Built.Who,
        logged.LoggedAt,
        logged.IsLeftOut,
        logged.Built.Lots,
        [.. logged.Built.Spools.Select(SpoolUseContract.Of)],
        logged.Bench,
        logged.IsStruck,
        logged.Replaces > 0 ? logged.Replaces : null);
}
