using System.Text;
using Tagend.Measures;
using Tagend.Problems;
using Tagend.Qr.Read;
using Tagend.Specs;
using Tagend.Tags;

namespace Tagend.Workshop.Readings;

/// <summary>A code and where it was found.</summary>
/// <param name="Source">A picture's path, <c>text</c>, or <c>standard input</c>.</param>
/// <param name="Reading">What it says; null where a picture has no code.</param>
public sealed record TagScan(string Source, TagReading? Reading)
{
    /// <summary>In place of a file: a scanner's lines.</summary>
    public const string StandardInput = "-";

    private const string Scanner = "standard input";

    /// <summary>Where in the picture the text was read: the corners of each code that has it, in pixels; none where there is no picture.</summary>
    public IReadOnlyList<Quadrilateral> Places { get; init; } = [];

    /// <summary>No text of a QR code is longer (ISO/IEC 18004:2015, table 7: 7,089 digits); what is longer is garbage.</summary>
    private const int LongestLine = 7_089;

    /// <summary>Whether a scanner sent it: what it sends between tags is passed over.</summary>
    public bool IsFromScanner => Source == Scanner;

    /// <summary>The spec of the piece, or of the pieces of a bag whose code carries them; none where nothing was read.</summary>
    public ValueList<BuildSpec> Specs => Reading switch
    {
        TagReading.Piece piece => [piece.Spec],
        TagReading.Bag bag => bag.Specs,
        _ => [],
    };

    /// <summary>The pieces that a tag names, those of a bag too whose code does not carry their specs.</summary>
    public IEnumerable<PieceIssue> Issues => Reading is TagReading.Bag bag
        ? bag.Contents.Select(c => new PieceIssue(bag.Order, c.Piece, c.Revision))
        : Specs.Select(PieceIssue.Of);

    /// <summary>What was wrong and what to do; null where a tag was read.</summary>
    public string? Message => Reading switch
    {
        null => "no code was read from this picture: come closer, straighten the tag, and avoid shadows and glare",
        TagReading.Damaged damaged => damaged.Message,
        TagReading.Later later => later.Message,
        TagReading.Foreign foreign => $"{foreign.Message}; it says \"{ShownText.Of(foreign.Text)}\"",
        _ => null,
    };

    /// <summary>The codes in one source, as they come: a picture's file, a tag's text, or <c>-</c> for a scanner's lines.</summary>
    /// <param name="scanner">What a scanner types.</param>
    /// <exception cref="Problems.TagendException">The picture cannot be read.</exception>
    public static IEnumerable<TagScan> Read(string source, TextReader scanner)
    {
        if (source == StandardInput)
        {
            return Lines(scanner).Select(line => new TagScan(Scanner, TagReader.Read(line)));
        }

        if (!File.Exists(source) && source.Contains('*', StringComparison.Ordinal))
        {
            return [new TagScan("text", TagReader.Read(source))];
        }

        var codes = TagPictures.Read(source);
        return codes.Count == 0 ? [new TagScan(source, null)] : codes.Select(c => new TagScan(source, TagReader.Read(c.Text)) { Places = c.Places });
    }

    /// <summary>The codes in a picture that is no file.</summary>
    /// <param name="picture">A PNG, JPEG or WebP file's bytes, to its end.</param>
    /// <param name="name">What the message of an exception calls it.</param>
    /// <returns>One without a reading where the picture has no code.</returns>
    /// <exception cref="Problems.TagendException">The picture cannot be read.</exception>
    public static IReadOnlyList<TagScan> OfPicture(Stream picture, string name)
    {
        try
        {
            IReadOnlyList<TagScan> codes = [.. TagPictures.Reader.Read(picture, name).Select(c => new TagScan(name, TagReader.Read(c.Text)))];
            return codes.Count > 0 ? codes : [new TagScan(name, null)];
        }
        catch (PictureException e)
        {
            throw new TagendException(e.Message, e) { Blame = Problems.Blame.WrongValue };
        }
    }

    /// <summary>Lines with something in them, ended by a line end or a tab, without what cannot be typed.</summary>
    private static IEnumerable<string> Lines(TextReader input)
    {
        var line = new StringBuilder();
        for (var next = input.Read(); next >= 0; next = input.Read())
        {
            if ((char)next is '\r' or '\n' or '\t')
            {
                if (Taken() is { } text)
                {
                    yield return text;
                }
            }
            else if (!char.IsControl((char)next) && line.Length < LongestLine)
            {
                line.Append((char)next);
            }
        }

        if (Taken() is { } last)
        {
            yield return last;
        }

        string? Taken()
        {
            var text = line.ToString();
            line.Clear();
            return string.IsNullOrWhiteSpace(text) ? null : text;
        }
    }
}
