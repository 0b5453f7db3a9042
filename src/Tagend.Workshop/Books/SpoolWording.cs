using Tagend.Jobs;
using Tagend.Measures;

namespace Tagend.Workshop.Books;

/// <summary>Spools in sentences.</summary>
public static class SpoolWording
{
    /// <summary><c>spool 12, hmpe-0145 black, lot H88-4</c>.</summary>
    public static string Name(KeptSpool kept) => $"spool {kept.Spool.Number}, {SpoolShelf.TextOf(kept.Spool)}, lot {kept.Spool.Lot}";

    /// <summary>What is left, and for how many builds like those before.</summary>
    public static string Left(KeptSpool kept, LengthUnit unit) => kept.Left < Length.Zero
        ? $"{LengthWriter.Spool(Length.Abs(kept.Left), unit)} more was used than it had: count what is left"
        : $"{LengthWriter.Spool(kept.Left, unit)} left of {LengthWriter.Spool(kept.Spool.Length, unit)}"
            + (kept.BuildsLeft is { } builds ? builds == 0 ? ", not enough for another build like those before" : $", enough for about {Counted.Of(builds, "build")} like those before" : "");

    /// <summary>A count that is no length.</summary>
    public static string NoCount(string text) => $"\"{text}\": expected what is on the spool with its unit, such as 300 yd or 270 m";

    /// <summary>A count of more than the spool was received with.</summary>
    public static string MoreThanCame(KeptSpool kept, string text, LengthUnit unit) =>
        $"\"{text}\": spool {kept.Spool.Number} was received with {LengthWriter.Spool(kept.Spool.Length, unit)}, and no more can be left on it: count it again; if more came on it than was entered, finish this spool and receive it anew";

    /// <summary>A spool that was taken to a bench.</summary>
    public static string Mounted((KeptSpool Spool, KeptSpool? Back) mount, LengthUnit unit) =>
        $"{Name(mount.Spool)}: at bench {mount.Spool.Bench} now; {Left(mount.Spool, unit)}"
        + (mount.Back is { } back ? $"; spool {back.Spool.Number} goes back to the shelf" : "");
}
