using Tagend.Measures;
using Tagend.Tags.Text;

namespace Tagend.Tags;

/// <summary>Reads tag texts back, each by the grammar of its version: docs/TAGTEXT.md.</summary>
public static class TagReader
{
    /// <summary>No code holds more of a tag's characters: ISO/IEC 18004:2015, table 7.</summary>
    public const int LongestText = 4_296;

    /// <summary>What every tag's text begins with, one of these.</summary>
    public static IReadOnlyList<string> Beginnings { get; } = [TagSigns.Words, TagSigns.PieceWord, TagSigns.BagWord];

    /// <summary>What the text of a tag of ours begins with, behind the words for people.</summary>
    private static readonly string[] Marks = [
        Version1.Grammar.PieceMark + "*",
        Version1.Grammar.BagMark + "*",
        Version2.Grammar.PieceMark + "*",
        Version2.Grammar.BagMark + "*",
        SpoolTag.Mark + "*",
    ];

    /// <summary>Reads one scanned text; white space around it does not count.</summary>
    public static TagReading Read(string scanned)
    {
        var text = scanned.Trim();
        if (text.Length > LongestText)
        {
            return new TagReading.Foreign(text[..LongestText], TagWording.LongerThanACode);
        }

        if (ReadTyped(text) is not { } fault)
        {
            return ReadText(text);
        }

        // With Caps Lock letters alone are others, and the check tells whether all of them are right again.
        return fault == TagWording.CapsLock && ReadText(text.ToUpperInvariant()) is (TagReading.Piece or TagReading.Bag or TagReading.Spool) and var read
            ? read
            : new TagReading.Damaged(text, fault);
    }

    /// <summary>What is wrong with a text that was typed on another keyboard than the scanner takes it for; else null.</summary>
    private static string? ReadTyped(string text)
    {
        if (IsOurs(text))
        {
            return null;
        }

        if (IsOurs(text.ToUpperInvariant()))
        {
            return TagWording.CapsLock;
        }

        var keyboards = ScannerKeyboard.Layouts.Where(k => IsOurs(k.Undo(text))).ToList();
        return keyboards.Count == 0 ? null
            : TagWording.Keyboard([.. keyboards.Where(k => ReadText(k.Undo(text)) is TagReading.Piece or TagReading.Bag or TagReading.Spool).Select(k => k.Name)]);

        static bool IsOurs(string words) =>
            Array.Exists(Marks, mark => WithoutWords(words).StartsWith(mark, StringComparison.Ordinal));
    }

    private static string WithoutWords(string text) =>
        text.StartsWith(TagSigns.Words, StringComparison.Ordinal) ? text[TagSigns.Words.Length..] : text;

    private static TagReading ReadText(string text)
    {
        var words = WithoutWords(text);
        if (words.StartsWith(SpoolTag.Word, StringComparison.Ordinal))
        {
            return SpoolTag.Read(text, words);
        }

        var isBag = words.StartsWith(TagSigns.BagWord, StringComparison.Ordinal);
        if (!isBag && !words.StartsWith(TagSigns.PieceWord, StringComparison.Ordinal))
        {
            return new TagReading.Foreign(text, TagWording.Foreign);
        }

        var mark = words.Split(TagSigns.Field, 2);
        var version = mark[0][TagSigns.PieceWord.Length..];
        if (mark.Length < 2 || version.Length is 0 or > 3 || !version.All(char.IsAsciiDigit))
        {
            return new TagReading.Foreign(text, TagWording.Foreign);
        }

        var fault = new TagFault();
        return version switch
        {
            Version1.Grammar.Version => isBag
                ? Bag(Version1.Reader.ReadBag(words, fault))
                : Piece(Version1.Reader.ReadPiece(words, fault)),
            Version2.Grammar.Version => isBag
                ? Bag(Version2.Reader.ReadBag(words, fault))
                : Piece(Version2.Reader.ReadPiece(words, fault)),
            _ => new TagReading.Later(text, TagWording.Later(version, Version2.Grammar.Version)),
        };

        TagReading Piece(Specs.BuildSpec spec) =>
            fault.Message is { } message ? new TagReading.Damaged(text, message) : new TagReading.Piece(text, spec);

        TagReading Bag((string Order, ValueList<(string Piece, int Revision)> Contents, ValueList<Specs.BuildSpec> Specs) bag) =>
            fault.Message is { } message
                ? new TagReading.Damaged(text, message)
                : new TagReading.Bag(text, bag.Order, bag.Contents.Select(c => new BagEntry(c.Piece, c.Revision)).ToValueList(), bag.Specs);
    }
}
