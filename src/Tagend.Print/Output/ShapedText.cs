using System.Text;

namespace Tagend.Output;

/// <summary>The glyphs of a text in their order, one a character. Lengths are in units of the face.</summary>
/// <param name="Places">Of each glyph's origin, from the start of the text.</param>
/// <param name="Advances">Each glyph's own, before kerning.</param>
/// <param name="Width">To where the next text goes on, kerned.</param>
internal sealed record ShapedText(ushort[] Glyphs, int[] Places, int[] Advances, int Width);

/// <summary>What layout asks of a text.</summary>
/// <param name="Width">In units of the face.</param>
/// <param name="Glyphs">How many.</param>
/// <param name="Missing">The first character the face has no glyph for; null where all can be drawn.</param>
/// <param name="IsTidy">A line can have it as it is: no space at its start, no two in a row, no line end.</param>
internal sealed record TextMeasure(int Width, int Glyphs, Rune? Missing, bool IsTidy);
