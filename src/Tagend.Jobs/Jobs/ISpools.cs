using Tagend.Measures;
using Tagend.Problems;
using Tagend.Specs;

namespace Tagend.Jobs;

/// <summary>A spool before it has its number.</summary>
/// <param name="Name">As <see cref="ReceivedSpool.Name"/>; so are the others.</param>
public sealed record NewSpool(StockKind Kind, string Name, string Color, string Lot, Length Length, DateOnly Received);

/// <summary>A spool as the job book has it now.</summary>
/// <param name="Left">What was on it, less what its builds have taken and as it was counted since; below zero where more was used than it had.</param>
/// <param name="Builds">How many builds were made from it; those that were struck are not among them.</param>
/// <param name="Taken">By those builds together.</param>
/// <param name="Bench">Where it is mounted, by the bench's name; empty on the shelf.</param>
/// <param name="IsFinished">It was thrown away, or is used up: it is neither listed nor taken.</param>
public sealed record KeptSpool(ReceivedSpool Spool, Length Left, int Builds, Length Taken, string Bench, bool IsFinished)
{
    /// <summary>How many more builds like those made from it are on it; null before the first one.</summary>
    public int? BuildsLeft => Builds == 0 || Taken <= Length.Zero ? null : Math.Max(0, (int)Math.Floor(Left / (Taken * (1.0 / Builds))));
}

/// <summary>A length that a build has taken from a spool.</summary>
/// <param name="Spool">The spool's number.</param>
public sealed record SpoolUse(long Spool, Length Length);

/// <summary>The spools of a shop, kept in its job book.</summary>
/// <remarks>As <see cref="IJobBook"/>: what has returned is safe, and every method throws <see cref="TagendException"/> where the book cannot be used.</remarks>
public interface ISpools
{
    /// <summary>Enters spools that came into the shop, and gives them their numbers.</summary>
    /// <param name="key">Of this one write, as in <see cref="IJobBook.Log"/>.</param>
    IReadOnlyList<ReceivedSpool> Receive(IReadOnlyList<NewSpool> spools, Guid key);

    /// <summary>All spools in the order of their numbers.</summary>
    /// <param name="withFinished">Those too that are finished.</param>
    IReadOnlyList<KeptSpool> All(bool withFinished);

    /// <returns>Null where there is no spool of this number.</returns>
    KeptSpool? Find(long number);

    /// <summary>Takes a spool to a bench; one of the same material or thread and color that is there goes back to the shelf.</summary>
    /// <param name="bench">The bench's name; empty for the shelf.</param>
    /// <exception cref="TagendException">There is no such spool.</exception>
    void Mount(long number, string bench);

    /// <summary>Enters what was found on a spool, by scale or tape: what is left is counted from there.</summary>
    /// <param name="key">Of this one write, as in <see cref="IJobBook.Log"/>.</param>
    /// <exception cref="TagendException">There is no such spool.</exception>
    void Count(long number, Length left, Guid key);

    /// <summary>Takes a spool out of the shop: off its bench, and out of all lists.</summary>
    /// <exception cref="TagendException">There is no such spool.</exception>
    void Finish(long number);
}
