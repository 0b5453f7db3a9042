namespace Tagend.Workshop.Books;

/// <summary>Whether an order's number may be used again for another customer than the job book has, and how the shop says so.</summary>
/// <param name="IsMeant">Of an order, given first, and its customer now.</param>
/// <param name="How">What to do where the problem is told, as <c>--replace</c> at a terminal; empty where the way stands beside it.</param>
public sealed record NumberReuse(Func<string, string, bool> IsMeant, string How)
{
    /// <summary>None may.</summary>
    public static NumberReuse Never { get; } = new((_, _) => false, "");
}
