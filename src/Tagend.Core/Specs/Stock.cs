using Tagend.Catalog;
using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>What is pulled from a spool.</summary>
public enum StockKind
{
    /// <summary>Strand material, from materials.toml.</summary>
    Strand,

    /// <summary>Serving thread, from threads.toml.</summary>
    Thread,
}

/// <summary>A length to pull from one spool.</summary>
/// <param name="Name">Of the strand material or the serving thread, in the catalog.</param>
/// <param name="Color">Empty where the shop's stock decides.</param>
/// <param name="Length">With tails, dummy tags and waste.</param>
public sealed record StockNeed(StockKind Kind, string Name, string Color, Length Length)
{
    /// <summary>Whether both are pulled from the same spool.</summary>
    internal bool IsOfSameSpool(StockNeed other) => Kind == other.Kind && Name == other.Name && Color == other.Color;
}

/// <summary>Strand material and serving thread that building takes.</summary>
public static class Stock
{
    /// <summary>What one piece takes: its strands by color, then its threads, each spool once.</summary>
    public static ValueList<StockNeed> Of(BuildSpec spec, Shop shop) => Total(Strands(spec, shop).Concat(Threads(spec, shop)));

    /// <summary>Strands before threads, in order of name and color.</summary>
    internal static ValueList<StockNeed> Sorted(IEnumerable<StockNeed> needs) =>
        needs
            .OrderBy(need => need.Kind)
            .ThenBy(need => need.Name, StringComparer.Ordinal)
            .ThenBy(need => need.Color, StringComparer.Ordinal)
            .ToValueList();

    /// <summary>Way of a strand once around both posts: 2 × centers + π × post diameter.</summary>
    /// <remarks>Twice the laid-up length, and what the loops' round ends take more.</remarks>
    public static Length OfLoop(PostSetting posts) => (posts.Centers * 2) + (posts.PostDiameter * Math.PI);

    /// <summary>Full spools that hold it; null where the catalog does not say what a spool holds.</summary>
    public static int? Spools(StockNeed need, ShopCatalog catalog)
    {
        var spool = need.Kind == StockKind.Strand
            ? catalog.Materials.GetValueOrDefault(need.Name)?.Spool
            : catalog.Threads.GetValueOrDefault(need.Name)?.Spool;
        return spool is { } length ? (int)Math.Ceiling(need.Length / length) : null;
    }

    private static IEnumerable<StockNeed> Strands(BuildSpec spec, Shop shop)
    {
        var loop = OfLoop(spec.Posts);
        var dummies = shop.DummyTag * spec.EndTags().Count(tag => tag.IsDummy);
        foreach (var (i, color) in spec.Layup.Colors.Index())
        {
            var length = (loop * (color.Strands / 2.0)) + (spec.Layup.Tail * 2) + (i == 0 ? dummies : Length.Zero);
            yield return new StockNeed(StockKind.Strand, spec.Bundle.Material, color.Color, length * (1 + shop.Waste));
        }
    }

    private static IEnumerable<StockNeed> Threads(BuildSpec spec, Shop shop)
    {
        foreach (var use in ThreadUse.Of(spec))
        {
            yield return new StockNeed(StockKind.Thread, use.Thread, use.Color, (use.Wound + shop.ThreadTail) * (1 + shop.Waste));
        }
    }

    private static ValueList<StockNeed> Total(IEnumerable<StockNeed> needs)
    {
        var total = new List<StockNeed>();
        foreach (var need in needs)
        {
            var at = 0;
            while (at < total.Count && !total[at].IsOfSameSpool(need))
            {
                at++;
            }

            if (at == total.Count)
            {
                total.Add(need);
            }
            else
            {
                total[at] = need with { Length = total[at].Length + need.Length };
            }
        }

        return total.ToValueList();
    }
}
