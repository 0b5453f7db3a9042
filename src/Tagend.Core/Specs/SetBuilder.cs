using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;

namespace Tagend.Specs;

/// <summary>What became of a file of orders.</summary>
/// <param name="Sets">Ready to print, in the file's order.</param>
/// <param name="Withheld">Orders with a problem in any of their pieces.</param>
/// <param name="Problems">All of the file, and all of its specs.</param>
public sealed record SetReport(
    IReadOnlyList<BuildSet> Sets, IReadOnlyList<string> Withheld, IReadOnlyList<Problem> Problems);

/// <summary>Makes sets of the pieces of one order. A set with a problem is withheld whole.</summary>
public static class SetBuilder
{
    public static SetReport Build(OrderFile file, SpecBuilder specs)
    {
        var problems = new List<Problem>(file.Problems);
        var sets = new List<BuildSet>();
        var withheld = file.BrokenOrders.ToHashSet();
        foreach (var lines in file.Lines.GroupBy(l => l.Order))
        {
            var builds = new List<Build>();
            foreach (var line in lines)
            {
                if (specs.Build(line, problems) is { } spec)
                {
                    builds.Add(new Build(spec, line.Slip));
                }
                else
                {
                    withheld.Add(line.Order);
                }
            }

            if (!withheld.Contains(lines.Key))
            {
                sets.Add(new BuildSet(lines.Key, builds.ToValueList()));
            }
        }

        var inFileOrder = problems.OrderBy(p => p.At.Line).ToList();
        return new SetReport(sets, [.. withheld.Order(StringComparer.Ordinal)], inFileOrder);
    }
}
