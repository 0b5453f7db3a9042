namespace Tagend.Commands;

/// <summary>A number and what it counts, in the singular or plural: <c>1 set</c>, <c>2 sets</c>.</summary>
internal static class Counted
{
    public static string Of(int number, string noun) => $"{number} {noun}{(number == 1 ? "" : "s")}";
}
