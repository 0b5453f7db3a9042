using Tagend.Measures;
using Tagend.Tags.Text;

namespace Tagend.Tags;

/// <summary>Reads tag texts back, each by the grammar of its version: docs/TAGTEXT.md.</summary>
public static class TagReader
{
    /// <summary>No code holds more of a tag's characters: ISO/IEC 18004:2015, table 7.</summary>
    public const int LongestText = 4_296;

    /// <summary>What every tag's text begins with, one of these.</summary>
    public static IReadOnlyList<string> Beginnings { get; } = [TagSigns.PieceWord, TagSigns.BagWord];

    /// <summary>What the text of a tag of ours begins with.</summary>
    private static readonly string[] Marks = [
        Version1.Grammar.PieceMark + "*",
        Version1.Grammar.BagMark + "*",
        Version2.Grammar.PieceMark + "*",
        Version2.Grammar.BagMark + "*",
    ];

    /// <summary>Reads one scanned text; white space around it does not count.</summary>
    public static TagReading Read(string scanned)
    {
        var text = scanned.Trim();
        if (text.Length > LongestText)
        {
            return new TagReading.Foreign(text[..LongestText], TagWording.LongerThanACode);
        }

        return ReadTyped(text) is { } fault ? new TagReading.Damaged(text, fault) : ReadText(text);
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
            : TagWording.Keyboard(keyboards.Find(k => ReadText(k.Undo(text)) is TagReading.Piece or TagReading.Bag)?.Name);

        static bool IsOurs(string words) => Array.Exists(Marks, mark => words.StartsWith(mark, StringComparison.Ordinal));
    }

    private static TagReading ReadText(string text)
    {
        var isBag = text.StartsWith(TagSigns.BagWord, StringComparison.Ordinal);
        if (!isBag && !text.StartsWith(TagSigns.PieceWord, StringComparison.Ordinal))
        {
            return new TagReading.Foreign(text, TagWording.Foreign);
        }

        var mark = text.Split(TagSigns.Field, 2);
        var version = mark[0][TagSigns.PieceWord.Length..];
        if (mark.Length < 2 || version.Length is 0 or > 3 || !version.All(char.IsAsciiDigit))
        {
            return new TagReading.Foreign(text, TagWording.Foreign);
        }

        return version switch
        {
            Version1.Grammar.Version => isBag
                ? ReadBag(text, Version1.Reader.ReadBag)
                : ReadPiece(text, Version1.Reader.ReadPiece),
            Version2.Grammar.Version => isBag
                ? ReadBag(text, Version2.Reader.ReadBag)
                : ReadPiece(text, Version2.Reader.ReadPiece),
            _ => new TagReading.Later(text, TagWording.Later(version, Version2.Grammar.Version)),
        };
    }

    private static TagReading ReadPiece(string text, Func<string, TagFault, Specs.BuildSpec> read)
    {
        var fault = new TagFault();
        var spec = read(text, fault);
        return fault.Message is { } message ? new TagReading.Damaged(text, message) : new TagReading.Piece(text, spec);
    }

    private static TagReading ReadBag(
        string text,
        Func<string, TagFault, (string Order, ValueList<(string Piece, int Revision)> Contents, ValueList<Specs.BuildSpec> Specs)> read)
    {
        var fault = new TagFault();
        var (order, contents, specs) = read(text, fault);
        return fault.Message is { } message
            ? new TagReading.Damaged(text, message)
            : new TagReading.Bag(text, order, contents.Select(c => new BagEntry(c.Piece, c.Revision)).ToValueList(), specs);
    }
}
