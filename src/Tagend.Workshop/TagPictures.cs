using Tagend.Problems;
using Tagend.Qr.Read;
using Tagend.Tags;

namespace Tagend.Workshop;

/// <summary>Reads the codes in pictures of tags. A tag's own check may stand in for what error correction cannot prove.</summary>
public static class TagPictures
{
    /// <summary>Texts of tags, by their own check.</summary>
    internal static CheckedTexts Checked { get; } = new(TagReader.Beginnings, text => TagReader.Read(text) is TagReading.Piece or TagReading.Bag);

    /// <summary>The reader, for pictures that are no file.</summary>
    public static PictureReader Reader { get; } = new(Checked);

    /// <summary>The texts of all codes in a picture's file, tags or not, in reading order; empty if there are none.</summary>
    /// <exception cref="TagendException">The file cannot be read as a picture.</exception>
    public static IReadOnlyList<ReadCode> Read(string path)
    {
        try
        {
            return Reader.Read(path);
        }
        catch (PictureException e)
        {
            throw new TagendException(e.Message, e);
        }
    }
}
