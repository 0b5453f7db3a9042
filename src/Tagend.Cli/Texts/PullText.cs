using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Specs;
using Tagend.Workshop;

namespace Tagend.Texts;

/// <summary>The pull sheet as plain lines: stock of all sets that are ready, and the order of builds.</summary>
internal static class PullText
{
    public static void Write(TextWriter output, BatchPull pull, ShopCatalog catalog)
    {
        var unit = pull.Unit;
        output.WriteLine($"to pull for {Counted.Of(pull.Sets, "set")}, with tails, dummy tags and waste");
        foreach (var need in pull.Stock)
        {
            var color = need.Color.Length > 0 ? need.Color : "any color";
            var spools = Stock.Spools(need, catalog) is { } count ? Counted.Of(count, "spool") : "";
            output.WriteLine($"  {need.Name,-16}{color,-12} {LengthWriter.Spool(need.Length, unit),-14}{spools}".TrimEnd());
            if (pull.Spools?.Of(need) is { } take)
            {
                output.WriteLine($"    {Take(take, unit)}");
            }
        }

        var order = pull.Order;
        output.WriteLine();
        output.WriteLine(
            $"order of builds: {Counted.Of(order.Changes, "change")} of spools and posts; {order.ChangesAsOrdered} in the order of the file");
        foreach (var step in order.Steps)
        {
            var changes = step.Mounted.Select(s => $"{s.Material} {s.Color}")
                .Prepend(step.MovesPosts ? $"posts to {LengthWriter.Setting(step.Posts, unit)}" : "")
                .Where(c => c.Length > 0)
                .DefaultIfEmpty("no change");
            output.WriteLine($"  {step.Order}/{step.Piece,-16}{string.Join("; ", changes)}");
        }

        output.WriteLine();
    }

    private static string Take(SpoolTake take, LengthUnit unit)
    {
        var spools = string.Join("; ", take.Spools.Select(s => $"{s.Spool.Number} (lot {s.Spool.Lot})" + (s.From is null ? "" : $" from {s.From} on")));
        return string.Join("; ", new[]
        {
            spools.Length == 0 ? "" : $"take spool {spools}",
            take.ShortFrom is null ? "" : $"no spool holds {take.ShortFrom} and what follows: {LengthWriter.Spool(take.Short, unit)} more is needed",
        }.Where(t => t.Length > 0));
    }
}
