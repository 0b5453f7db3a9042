using Tagend.Specs;

namespace Tagend.Tags;

/// <summary>Writes tag texts in the newest version: docs/TAGTEXT.md.</summary>
public static class TagWriter
{
    /// <summary>The text that goes with a piece: its whole spec, in the QR alphanumeric set.</summary>
    public static string Write(BuildSpec spec) => Version2.Writer.Write(spec);

    /// <summary>The text that goes with a bag: the set's pieces and their revisions, then each piece's whole text.</summary>
    public static string Write(BuildSet set) => Version2.Writer.Write(set);

    /// <summary>The short text of a bag, where the pieces' texts do not fit: pieces and revisions alone.</summary>
    public static string WriteContents(BuildSet set) => Version2.Writer.WriteContents(set);
}
