using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Specs;

namespace Tagend.Commands;

/// <summary>The pull sheet as plain lines: stock of all sets that are ready, and the order of builds.</summary>
internal static class PullText
{
    public static void Write(TextWriter output, IReadOnlyList<BuildSet> sets, ShopCatalog catalog)
    {
        if (sets.Count == 0)
        {
            return;
        }

        IReadOnlyList<Build> builds = [.. sets.SelectMany(s => s.Builds)];
        var unit = builds[0].Spec.Unit;
        output.WriteLine($"to pull for {Counted.Of(sets.Count, "set")}, with tails, dummy tags and waste");
        foreach (var need in Stock.Of(builds.Select(b => b.Spec), catalog.Shop))
        {
            var color = need.Color.Length > 0 ? need.Color : "any color";
            var spools = Stock.Spools(need, catalog) is { } count ? Counted.Of(count, "spool") : "";
            output.WriteLine($"  {need.Name,-16}{color,-12} {LengthWriter.Spool(need.Length, unit),-14}{spools}".TrimEnd());
        }

        var order = BuildOrder.Of(builds);
        output.WriteLine();
        output.WriteLine(
            $"order of builds: {Counted.Of(order.Changes, "change")} of spools and posts; {order.ChangesAsOrdered} in the order of the file");
        foreach (var step in order.Steps)
        {
            var spec = step.Build.Spec;
            var changes = step.Mounted.Select(s => $"{s.Material} {s.Color}")
                .Prepend(step.MovesPosts ? $"posts to {LengthWriter.Setting(spec.Posts.Tape, unit)}" : "")
                .Where(c => c.Length > 0)
                .DefaultIfEmpty("no change");
            output.WriteLine($"  {spec.Order}/{spec.Piece,-16}{string.Join("; ", changes)}");
        }

        output.WriteLine();
    }
}
