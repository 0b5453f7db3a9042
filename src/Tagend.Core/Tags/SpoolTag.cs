using System.Globalization;
using Tagend.Measures;
using Tagend.Specs;
using Tagend.Tags.Text;

namespace Tagend.Tags;

/// <summary>The text on a spool's tag, version 1: docs/TAGTEXT.md.</summary>
public static class SpoolTag
{
    /// <summary>What every one begins with, behind the words for people.</summary>
    internal const string Word = "SPOOL TS";

    internal const string Mark = Word + Version;

    private const string Version = "1";

    private static readonly LetterCode<StockKind> Kinds = new((StockKind.Strand, "STRAND"), (StockKind.Thread, "THREAD"));

    /// <summary>All that is known of a spool when it comes, in the QR alphanumeric set.</summary>
    public static string Write(ReceivedSpool spool) => TagSigns.Words + TagCheck.Append(string.Join(
        TagSigns.Field,
        [
            Mark,
            spool.Number.ToString(CultureInfo.InvariantCulture),
            Kinds[spool.Kind],
            TagName.Escape(spool.Name),
            .. spool.Color.Length == 0 ? (IEnumerable<string>)[] : [$"C{TagName.Escape(spool.Color)}"],
            $"Z{TagName.Escape(spool.Lot)}",
            $"L{Math.Round(spool.Length.Millimeters).ToString(CultureInfo.InvariantCulture)}",
            spool.Received.ToString(TagSigns.DateFormat, CultureInfo.InvariantCulture),
        ]));

    /// <param name="text">As it was scanned.</param>
    /// <param name="marked">The same without the words for people.</param>
    internal static TagReading Read(string text, string marked)
    {
        var version = marked[Word.Length..].Split(TagSigns.Field)[0];
        if (version != Version)
        {
            return version.Length is 1 or 2 or 3 && version.All(char.IsAsciiDigit)
                ? new TagReading.Later(text, TagWording.Later(version, Version))
                : new TagReading.Foreign(text, TagWording.Foreign);
        }

        var fault = new TagFault();
        var fields = TagFields.Open(marked, fault);
        var (number, kind, name) = (fields.Whole("the spool's number"), fields.Code(Kinds, "STRAND or THREAD"), fields.Lower("a material or thread"));
        var color = fields.Has('C') ? fields.Parts('C').Lower("a color") : "";
        var lot = fields.Parts('Z').Name("a lot");
        var length = Length.FromMillimeters(fields.Parts('L').Whole("a length in millimeters"));
        var received = fields.Date();
        fields.End();
        return fault.Message is { } message
            ? new TagReading.Damaged(text, message)
            : new TagReading.Spool(text, new ReceivedSpool(number, kind, name, color, lot, length, received));
    }
}
