namespace Tagend.Qr.Read;

/// <summary>A text that was read in a picture, and where.</summary>
/// <param name="Text">As the code says it, in the character set it names or is likeliest to be in.</param>
/// <param name="Places">Of the codes with this text: the symbols' corners, in pixels of the upright picture; one or more.</param>
public sealed record ReadCode(string Text, IReadOnlyList<Quadrilateral> Places);
