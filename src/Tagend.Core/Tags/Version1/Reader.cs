using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Specs;
using Tagend.Tags.Text;

namespace Tagend.Tags.Version1;

/// <summary>Reads tag texts, version 1: frozen. Grammar: docs/TAGTEXT.md.</summary>
internal static class Reader
{
    /// <summary>A bag: its order, its pieces with their revisions, and their specs unless it had no room for them.</summary>
    public static (string Order, ValueList<(string Piece, int Revision)> Contents, ValueList<BuildSpec> Specs) ReadBag(
        string text, TagFault fault)
    {
        var texts = text.Split(TagSigns.Text);
        var fields = TagFields.Open(texts[0], fault);
        var order = fields.Name("an order number");
        var contents = fields.Items('C', c => (c.Lower("a piece"), c.Whole("a revision")));
        fields.End();
        var specs = texts.Skip(1).Select(t => ReadPiece(t, fault)).ToValueList();
        var carried = specs.Select(s => (s.Piece, s.Revision));
        if (specs.Count > 0 && (specs.Any(s => s.Order != order) || !carried.SequenceEqual(contents)))
        {
            fault.Report(TagFaultWording.BagMismatch);
        }

        return (order, contents, specs);
    }

    /// <summary>A piece's whole spec.</summary>
    public static BuildSpec ReadPiece(string text, TagFault fault)
    {
        var fields = TagFields.Open(text, fault);
        var order = fields.Name("an order number");
        var piece = fields.Lower("a piece");
        var kind = fields.Lower("a kind");
        var revision = fields.Whole("a revision");
        var date = fields.Date();
        var unit = fields.Code(Grammar.UnitWords, "a unit");
        var lengths = fields.Parts('L');
        var (finished, tolerance) = (lengths.Length(unit), lengths.Length(unit));
        var weight = fields.Parts('W').OptionalForce(unit);
        var material = fields.Parts('M');
        var bundle = new Bundle(material.Lower("a material"), material.Whole("strands"), material.Length(unit));
        var twist = fields.Parts('T');
        var turns = twist.Whole("turns");
        var takeUp = new TakeUp(twist.Code(Grammar.ModelLetters, "a model"), twist.Length(unit), twist.Length(unit));
        var settle = twist.Length(unit);
        var hand = twist.Code(Grammar.DirectionLetters, "a direction");
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
        var marks = fields.Items('N', m => new Mark(m.Letter(Grammar.MarkLetters, "a mark"), m.Length(unit)));
        var breaking = fields.Parts('B').Force(unit);
        var load = fields.Parts('X');
        var stretch = new Stretch(load.Force(unit), load.Whole("minutes"), load.Length(unit));
        var groove = fields.Parts('G').OptionalLength(unit);
        var mass = Mass.FromMilligrams(fields.Parts('Q').Whole("a mass"));
        foreach (var part in new[] { lengths, material, twist, jig, load, fields })
        {
            part.End();
        }

        var spec = new BuildSpec
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
            Twist = new Twist(turns, hand, hand == Hand.S ? Hand.Z : Hand.S, takeUp),
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
        TagRanges.Check(spec, fault, isOfVersion1: true);
        return spec;
    }

    private static Serving ReadServing(
        TagFields parts, LengthUnit unit, ValueList<(string Thread, Length Diameter, string Color)> spools, TagFault fault)
    {
        var role = parts.Letter(Grammar.RoleLetters, "a serving");
        var (from, to) = (parts.Length(unit), parts.Length(unit));
        var number = parts.Whole("a thread of field Y");
        if (number < 1 || number > spools.Count)
        {
            fault.Report(TagFaultWording.BadField($"{number}", "a thread of field Y"));
            return new Serving(role, from, to, "", Length.Zero, "");
        }

        var (thread, diameter, color) = spools[number - 1];
        return new Serving(role, from, to, thread, diameter, color);
    }
}
