using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Specs;

namespace Tagend.Workshop.Json;

/// <summary>A spool of the job book, as it is now.</summary>
/// <param name="Kind"><c>strand</c> or <c>thread</c>.</param>
/// <param name="BuildsLeft">How many more builds like those made from it are on it; null before the first one.</param>
/// <param name="Bench">Empty on the shelf.</param>
internal sealed record SpoolContract(
    long Spool,
    string Kind,
    string Name,
    string Color,
    string Lot,
    string Received,
    LengthContract Length,
    LengthContract Left,
    int Builds,
    int? BuildsLeft,
    string Bench,
    bool Finished)
{
    internal static SpoolContract Of(KeptSpool kept) => new(
        kept.Spool.Number,
        kept.Spool.Kind == StockKind.Strand ? "strand" : "thread",
        kept.Spool.Name,
        kept.Spool.Color,
        kept.Spool.Lot,
        DateWriter.Iso(kept.Spool.Received),
        LengthContract.Of(kept.Spool.Length),
        LengthContract.Of(kept.Left),
        kept.Builds,
        kept.BuildsLeft,
        kept.Bench,
        kept.IsFinished);
}

/// <summary>What a build took from a spool.</summary>
internal sealed record SpoolUseContract(long Spool, LengthContract Length)
{
    internal static SpoolUseContract Of(SpoolUse use) => new(use.Spool, LengthContract.Of(use.Length));
}
