using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Specs;
using Tagend.Streams;
using Tagend.Workshop;
using Tagend.Workshop.Books;

namespace Tagend.Texts;

/// <summary>Spools on the terminal.</summary>
internal static class SpoolText
{
    public static void Write(IReadOnlyList<KeptSpool> spools, LengthUnit unit)
    {
        var table = new TextTable(wraps: 1, "spool", "of", "lot", "left", "builds left", "where");
        foreach (var spool in spools)
        {
            table.Add(
                $"{spool.Spool.Number}",
                SpoolShelf.TextOf(spool.Spool),
                spool.Spool.Lot,
                (spool.Left < Length.Zero ? "-" : "") + LengthWriter.Spool(Length.Abs(spool.Left), unit),
                spool.BuildsLeft is { } builds ? $"{builds}" : "",
                spool.IsFinished ? "finished" : spool.Bench.Length > 0 ? $"bench {spool.Bench}" : "shelf");
        }

        table.Write();
        Console.WriteLine(Counted.Of(spools.Count, "spool"));
    }

    /// <summary>A spool as its tag alone has it.</summary>
    public static string Of(ReceivedSpool spool) => $"spool {spool.Number}: {SpoolShelf.TextOf(spool)}, lot {spool.Lot}, "
        + $"{LengthWriter.Spool(spool.Length, LengthUnit.Inch)} ({LengthWriter.Spool(spool.Length, LengthUnit.Millimeter)}) received {DateWriter.Iso(spool.Received)}";
}
