namespace Tagend.Workshop;

/// <summary>A number and what it counts, in the singular or plural: <c>1 set</c>, <c>2 sets</c>.</summary>
public static class Counted
{
    /// <summary>The number and its noun.</summary>
    /// <param name="number">0 or more.</param>
    /// <param name="noun">In the singular; its plural is made with an s.</param>
    public static string Of(int number, string noun) => $"{number} {noun}{(number == 1 ? "" : "s")}";
}
