namespace Tagend.Output;

/// <summary>The glyphs of a text in their order, one a character.</summary>
/// <param name="Places">Of each glyph's origin, from the start of the text; in units of the face, as the width.</param>
internal sealed record ShapedText(ushort[] Glyphs, int[] Places, int Width);
