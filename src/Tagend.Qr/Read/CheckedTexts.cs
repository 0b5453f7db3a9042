namespace Tagend.Qr.Read;

/// <summary>Texts that carry a check of their own, such as a CRC: a reading of one may spend all of its symbol's error correction.</summary>
/// <param name="Beginnings">What such a text begins with, two characters or more each.</param>
/// <param name="Holds">Whether a text's own check holds; chance must pass it less often than once in a billion.</param>
public sealed record CheckedTexts(IReadOnlyList<string> Beginnings, Func<string, bool> Holds)
{
    /// <summary>No text has a check that is known.</summary>
    public static CheckedTexts None { get; } = new([], _ => false);

    internal bool Include(string text) => Beginnings.Any(b => text.StartsWith(b, StringComparison.Ordinal)) && Holds(text);
}
