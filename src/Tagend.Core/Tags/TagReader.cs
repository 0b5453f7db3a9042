using Tagend.Measures;
using Tagend.Specs;

namespace Tagend.Tags;

/// <summary>Reads tag texts back. Grammar: docs/TAGTEXT.md.</summary>
public static class TagReader
{
    /// <summary>No code holds more of a tag's characters: ISO/IEC 18004:2015, table 7.</summary>
    public const int LongestText = 4_296;

    /// <summary>What is shorter is no piece, and its places cannot be shown on a jig.</summary>
    private static readonly Length LeastLength = Length.FromMillimeters(10);

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
        const string Ours = TagGrammar.PieceMark + "*";
        const string OurBags = TagGrammar.BagMark + "*";
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

        static bool IsOurs(string words) =>
            words.StartsWith(Ours, StringComparison.Ordinal) || words.StartsWith(OurBags, StringComparison.Ordinal);
    }

    private static TagReading ReadText(string text)
    {
        var isBag = text.StartsWith(TagGrammar.BagWord, StringComparison.Ordinal);
        if (!isBag && !text.StartsWith(TagGrammar.PieceWord, StringComparison.Ordinal))
        {
            return new TagReading.Foreign(text, TagWording.Foreign);
        }

        var mark = text.Split(TagGrammar.FieldSeparator, 2);
        var version = mark[0][TagGrammar.PieceWord.Length..];
        if (mark.Length < 2 || version.Length is 0 or > 3 || !version.All(char.IsAsciiDigit))
        {
            return new TagReading.Foreign(text, TagWording.Foreign);
        }

        if (version != TagGrammar.Version)
        {
            return new TagReading.Later(text, TagWording.Later(version));
        }

        var fault = new TagFault();
        TagReading reading = isBag ? ReadBag(text, fault) : new TagReading.Piece(text, ReadPiece(text, fault));
        return fault.Message is { } message ? new TagReading.Damaged(text, message) : reading;
    }

    private static TagReading.Bag ReadBag(string text, TagFault fault)
    {
        var texts = text.Split(TagGrammar.TextSeparator);
        var fields = Open(texts[0], fault);
        var order = fields.Name("an order number");
        var contents = fields.Items('C', c => new BagEntry(c.Lower("a piece"), c.Whole("a revision")));
        fields.End();
        var specs = texts.Skip(1).Select(t => ReadPiece(t, fault)).ToValueList();
        var carried = specs.Select(s => new BagEntry(s.Piece, s.Revision));
        if (specs.Count > 0 && (specs.Any(s => s.Order != order) || !carried.SequenceEqual(contents)))
        {
            fault.Report(TagWording.BagMismatch);
        }

        return new TagReading.Bag(text, order, contents, specs);
    }

    private static BuildSpec ReadPiece(string text, TagFault fault)
    {
        var fields = Open(text, fault);
        var order = fields.Name("an order number");
        var piece = fields.Lower("a piece");
        var kind = fields.Lower("a kind");
        var revision = fields.Whole("a revision");
        var date = fields.Date();
        var unit = fields.Code(TagGrammar.UnitWords, "a unit");
        var lengths = fields.Parts('L');
        var (finished, tolerance) = (lengths.Length(unit), lengths.Length(unit));
        var weight = fields.Parts('W').OptionalForce(unit);
        var material = fields.Parts('M');
        var bundle = new Bundle(material.Lower("a material"), material.Whole("strands"), material.Length(unit));
        var twist = fields.Parts('T');
        var turns = twist.Whole("turns");
        var takeUp = new TakeUp(twist.Code(TagGrammar.ModelLetters, "a model"), twist.Length(unit), twist.Length(unit));
        var settle = twist.Length(unit);
        var direction = twist.Code(TagGrammar.DirectionLetters, "a direction");
        if (takeUp.Used == TakeUpModel.Fitted)
        {
            takeUp = takeUp with { Fitted = new FittedAmount(twist.Length(unit), twist.Length(unit), twist.Whole("builds")) };
        }

        var jig = fields.Parts('J');
        var posts = new PostSetting(jig.Length(unit), jig.Length(unit), jig.Length(unit), jig.Length(unit));
        var tail = jig.Length(unit);
        var colors = fields.Items('C', c => (c.Lower("a color"), c.Whole("strands")));
        var spools = fields.Items('Y', t => (t.Lower("a thread"), t.Length(unit), t.IsAtEnd ? "" : t.Lower("a color")));
        var servings = fields.Items('S', s => ReadServing(s, unit, spools, fault));
        var separators = fields.Items('P', s => new Separator(s.Lower("a separator"), s.Length(unit), bundle.Strands / 2));
        var marks = fields.Items('N', m => new Mark(m.Letter(TagGrammar.MarkLetters, "a mark"), m.Length(unit)));
        var breaking = fields.Parts('B').Force(unit);
        var load = fields.Parts('X');
        var stretch = new Stretch(load.Force(unit), load.Whole("minutes"), load.Length(unit));
        var groove = fields.Parts('G').OptionalLength(unit);
        var mass = Mass.FromMilligrams(fields.Parts('Q').Whole("a mass"));
        if (finished < LeastLength || posts.TapeStep <= Length.Zero)
        {
            fault.Report(TagWording.NoPiece);
        }

        foreach (var part in new[] { lengths, material, twist, jig, load, fields })
        {
            part.End();
        }

        return new BuildSpec
        {
            Order = order,
            Piece = piece,
            Kind = kind,
            Revision = revision,
            Date = date,
            Unit = unit,
            FinishedLength = finished,
            Tolerance = tolerance,
            DrawWeight = weight,
            Bundle = bundle,
            Twist = new Twist(turns, direction, takeUp),
            Settle = settle,
            Posts = posts,
            Layup = Layup.Of(colors, tail),
            Separators = separators,
            Servings = servings,
            Marks = marks,
            Strength = new Strength(breaking, weight * Strength.SafetyFactor),
            Stretch = stretch,
            NockGroove = groove,
            Mass = mass,
        };
    }

    private static Serving ReadServing(
        TagFields parts, LengthUnit unit, ValueList<(string Thread, Length Diameter, string Color)> spools, TagFault fault)
    {
        var role = parts.Letter(TagGrammar.RoleLetters, "a serving");
        var (from, to) = (parts.Length(unit), parts.Length(unit));
        var number = parts.Whole("a thread of field Y");
        if (number < 1 || number > spools.Count)
        {
            fault.Report(TagWording.BadField($"{number}", "a thread of field Y"));
            return new Serving(role, from, to, "", Length.Zero, "");
        }

        var (thread, diameter, color) = spools[number - 1];
        return new Serving(role, from, to, thread, diameter, color);
    }

    /// <summary>The fields behind the mark of a text whose check fits.</summary>
    private static TagFields Open(string text, TagFault fault)
    {
        var body = TagCheck.Strip(text);
        if (body is null)
        {
            fault.Report(TagWording.BadCheck);
        }

        var behindMark = (body ?? text).IndexOf(TagGrammar.FieldSeparator, StringComparison.Ordinal) + 1;
        return new TagFields((body ?? text)[behindMark..], TagGrammar.FieldSeparator, fault);
    }
}
