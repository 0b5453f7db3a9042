namespace Tagend.Imports;

/// <summary>Which map order files are read by, and what is said to do where none can be chosen.</summary>
/// <param name="Name">Of the only map to read by; null to choose by the header.</param>
/// <param name="Choose">How one of several that fit is chosen, by whoever reads it.</param>
/// <param name="Propose">How a map is made for a file that none fits, in the same way; gets the file's name.</param>
public sealed record MapWish(string? Name, string Choose, Func<string, string> Propose)
{
    /// <summary>Chosen by the header, where nobody can say more.</summary>
    public static MapWish ByHeader { get; } = new(null, "keep one of them", _ => "propose one");
}
