using Tagend.Problems;
using Tagend.Qr.Read;
using Tagend.Tags;

namespace Tagend.Workshop.Readings;

/// <summary>Reads the codes in the frames of one camera, one frame after the other.</summary>
public sealed class TagFrames
{
    private const string Frame = "the camera's picture";

    private readonly FrameReader _reader = new(TagPictures.Checked);

    /// <summary>The codes in the next frame; none where nothing was read from it.</summary>
    /// <param name="frame">The bytes of a PNG, JPEG or WebP file, to its end.</param>
    /// <exception cref="TagendException">They cannot be read as a picture.</exception>
    public IReadOnlyList<TagScan> Read(Stream frame)
    {
        try
        {
            return [.. _reader.Read(frame, Frame).Select(c => new TagScan(Frame, TagReader.Read(c.Text)))];
        }
        catch (PictureException e)
        {
            throw new TagendException(e.Message, e) { Blame = Blame.WrongValue };
        }
    }
}
