using System.Globalization;
using Tagend.Catalog;
using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Specs;
using Tagend.Tags;

namespace Tagend.Workshop.Books;

/// <summary>The spool that a text names, or what is wrong with the text.</summary>
public sealed record FoundSpool(KeptSpool? Spool, string? Error);

/// <summary>What a build takes from spools, or why it cannot be made from them.</summary>
public sealed record SpoolChoice(ValueList<SpoolUse> Uses, string? Error);

/// <summary>What was found on a spool and is entered, or why it is not.</summary>
public sealed record SpoolCount(Length Left, string? Error);

/// <summary>The shop's spools as one bench uses them.</summary>
/// <param name="bench">The bench's name.</param>
public sealed class SpoolShelf(ISpools spools, ShopCatalog catalog, string bench)
{
    /// <summary>In place of spools: the build is made from none that the book has.</summary>
    public const string None = "none";

    /// <summary>The spools in use as a pull sheet needs them.</summary>
    public static IReadOnlyList<ShelfSpool> InUse(ISpools spools, string bench) =>
        [.. spools.All(withFinished: false).Select(s => new ShelfSpool(s.Spool, s.Left, s.Bench.Length > 0 && s.Bench == bench))];

    /// <summary>The spools, first those that run out first: by how many more builds like their own are on them, then those not used yet.</summary>
    public IReadOnlyList<KeptSpool> Listed(bool withFinished) =>
        [.. spools.All(withFinished).OrderBy(s => s.IsFinished).ThenBy(s => s.BuildsLeft ?? int.MaxValue).ThenBy(s => s.Spool.Number)];

    /// <summary>The spool a text names: its number, or its tag's text.</summary>
    public FoundSpool Find(string text)
    {
        var plain = text.Trim();
        if (TagReader.Read(plain) is TagReading.Spool { Received: var scanned })
        {
            return spools.Find(scanned.Number) switch
            {
                null => new FoundSpool(null, $"the job book has no spool {scanned.Number}: it is of another book, or was never entered"),
                { } known when known.Spool != scanned => new FoundSpool(
                    null, $"the tag is of {Told(scanned)}, and the job book's spool {scanned.Number} is {Told(known.Spool)}: it is of another book"),
                { } known => new FoundSpool(known, null),
            };
        }

        if (!long.TryParse(plain, NumberStyles.None, CultureInfo.InvariantCulture, out var number))
        {
            return new FoundSpool(null, $"\"{plain}\": expected the number of a spool, or its tag");
        }

        return spools.Find(number) is { } found ? new FoundSpool(found, null) : new FoundSpool(null, $"there is no spool {number} in the job book: check the number, or scan its tag");
    }

    /// <summary>Takes a spool to this bench, in place of one of the same material or thread and color.</summary>
    /// <returns>The spool as it is then, and the one that went back to the shelf.</returns>
    /// <exception cref="Problems.TagendException">It is not in the book.</exception>
    public (KeptSpool Mounted, KeptSpool? Back) Mount(KeptSpool spool)
    {
        var back = spools.All(withFinished: false).FirstOrDefault(s =>
            s.Bench == bench && s.Spool.Number != spool.Spool.Number && (s.Spool.Kind, s.Spool.Name, s.Spool.Color) == (spool.Spool.Kind, spool.Spool.Name, spool.Spool.Color));
        spools.Mount(spool.Spool.Number, bench);
        return (spools.Find(spool.Spool.Number)!, back);
    }

    /// <summary>Enters what was found on a spool by scale or tape, as it was typed: no more than came on it.</summary>
    /// <param name="key">Of this one write, as in <see cref="ISpools.Count"/>.</param>
    /// <exception cref="Problems.TagendException">It is not in the book.</exception>
    public SpoolCount Count(KeptSpool spool, string text, Guid key)
    {
        if (!SpoolLengthReader.TryRead(text, out var left))
        {
            return new SpoolCount(Length.Zero, SpoolWording.NoCount(text));
        }

        if (left > spool.Spool.Length)
        {
            return new SpoolCount(left, SpoolWording.MoreThanCame(spool, text, catalog.Shop.Unit));
        }

        spools.Count(spool.Spool.Number, left, key);
        return new SpoolCount(left, null);
    }

    /// <summary>Whether any spool in use is of what a piece is made of.</summary>
    public bool Serves(BuildSpec spec) => spools.All(withFinished: false).Any(s => Stock.Of(spec, catalog.Shop).Any(s.Spool.Serves));

    /// <summary>The spools at this bench that a piece is made from.</summary>
    public IReadOnlyList<KeptSpool> MountedFor(BuildSpec spec)
    {
        var needs = Stock.Of(spec, catalog.Shop);
        return [.. spools.All(withFinished: false).Where(s => s.Bench == bench && needs.Any(s.Spool.Serves))];
    }

    /// <summary>What a piece takes from spools that are named by numbers or tags, with commas between them; or from none.</summary>
    public SpoolChoice UsesOf(BuildSpec spec, string text)
    {
        if (text.Equals(None, StringComparison.OrdinalIgnoreCase))
        {
            return new SpoolChoice([], null);
        }

        var found = text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(Find).ToList();
        return found.Find(f => f.Error is not null) is { } wrong
            ? new SpoolChoice([], wrong.Error)
            : UsesOf(spec, [.. found.Select(f => f.Spool!).DistinctBy(s => s.Spool.Number)]);
    }

    /// <summary>What a piece takes from spools, by its spec's own lengths with tails and waste.</summary>
    /// <remarks>Of several that serve for the same need each is used up before the next, as far as the book knows; the last gives the rest.</remarks>
    public SpoolChoice UsesOf(BuildSpec spec, IReadOnlyList<KeptSpool> taken)
    {
        var needs = Stock.Of(spec, catalog.Shop);
        foreach (var spool in taken)
        {
            if (spool.IsFinished)
            {
                return new SpoolChoice([], $"spool {spool.Spool.Number} is finished, as the job book has it");
            }

            if (!needs.Any(spool.Spool.Serves))
            {
                var made = string.Join(", ", needs.Select(n => $"{n.Name} {n.Color}".TrimEnd()));
                return new SpoolChoice([], $"spool {spool.Spool.Number} is {TextOf(spool.Spool)}, and {spec.Order}/{spec.Piece} is made of {made}");
            }
        }

        var left = taken.ToDictionary(s => s.Spool.Number, s => s.Left);
        var used = taken.ToDictionary(s => s.Spool.Number, _ => Length.Zero);
        foreach (var need in needs)
        {
            var (rest, serving) = (need.Length, taken.Where(s => s.Spool.Serves(need)).Select(s => s.Spool.Number).ToList());
            foreach (var (i, number) in serving.Index())
            {
                var part = i == serving.Count - 1 || left[number] >= rest ? rest : left[number] > Length.Zero ? left[number] : Length.Zero;
                (left[number], used[number], rest) = (left[number] - part, used[number] + part, rest - part);
            }
        }

        return new SpoolChoice(taken.Select(s => new SpoolUse(s.Spool.Number, used[s.Spool.Number])).Where(u => u.Length > Length.Zero).ToValueList(), null);
    }

    /// <summary>The lots of some spools, in capitals.</summary>
    public IEnumerable<string> LotsOf(IEnumerable<SpoolUse> uses) => uses.Select(u => spools.Find(u.Spool)?.Spool.Lot).OfType<string>();

    /// <summary>Some spools as they are now.</summary>
    public IReadOnlyList<KeptSpool> Now(IEnumerable<SpoolUse> uses) => [.. uses.Select(u => spools.Find(u.Spool)).OfType<KeptSpool>()];

    private string Told(ReceivedSpool spool) =>
        $"{TextOf(spool)}, lot {spool.Lot}, {LengthWriter.Spool(spool.Length, catalog.Shop.Unit)}, received {DateWriter.Iso(spool.Received)}";

    /// <summary>Material or thread, and color: <c>hmpe-0145 black</c>.</summary>
    public static string TextOf(ReceivedSpool spool) => $"{spool.Name} {spool.Color}".TrimEnd();
}
