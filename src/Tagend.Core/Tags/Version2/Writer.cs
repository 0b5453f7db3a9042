using System.Globalization;
using System.Text;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Specs;
using Tagend.Tags.Text;

namespace Tagend.Tags.Version2;

/// <summary>Writes tag texts, version 2: frozen. Grammar: docs/TAGTEXT.md.</summary>
internal static class Writer
{
    /// <summary>The text of a piece: its whole spec, in the QR alphanumeric set.</summary>
    public static string Write(BuildSpec spec) => TagSigns.Words + WritePiece(spec);

    /// <summary>The text of a bag: the set's pieces and their revisions, then each piece's whole text without the words for people.</summary>
    public static string Write(BuildSet set)
    {
        var text = new StringBuilder(WriteContents(set));
        foreach (var build in set.Builds)
        {
            text.Append(TagSigns.Text).Append(WritePiece(build.Spec));
        }

        return text.ToString();
    }

    /// <summary>The short text of a bag, where the pieces' texts do not fit: pieces and revisions alone.</summary>
    public static string WriteContents(BuildSet set) => TagSigns.Words + TagCheck.Append(string.Join(
        TagSigns.Field,
        Grammar.BagMark,
        TagName.Escape(set.Order),
        "C" + Items(set.Builds, b => $"{TagName.Escape(b.Spec.Piece)}/{Whole(b.Spec.Revision)}")));

    private static string WritePiece(BuildSpec spec)
    {
        var unit = spec.Unit;
        var spools = Spools(spec);
        string?[] fields =
        [
            Grammar.PieceMark,
            TagName.Escape(spec.Order),
            TagName.Escape(spec.Piece),
            TagName.Escape(spec.Kind),
            spec.Revision.ToString(CultureInfo.InvariantCulture),
            spec.Date.ToString(TagSigns.DateFormat, CultureInfo.InvariantCulture),
            Grammar.UnitWords[unit],
            Field('L', spec.FinishedLength, spec.Tolerance),
            spec.DrawWeight is { } weight ? Field('W', TagNumber.Write(weight, unit)) : null,
            Field('M', TagName.Escape(spec.Bundle.Material), Whole(spec.Bundle.Strands), Write(spec.Bundle.Diameter)),
            Field(
                'T',
                Whole(spec.Twist.Turns),
                Grammar.ModelLetters[spec.Twist.TakeUp.Used],
                Write(spec.Twist.TakeUp.Rule),
                Write(spec.Twist.TakeUp.Helix),
                Write(spec.Settle),
                Grammar.HandLetters[spec.Twist.Hand] + (spec.Twist.TurnsTightenServings ? Grammar.HandLetters[spec.Twist.Hand] : "") + WriteFitted(spec.Twist.TakeUp.Fitted)),
            Field('J', spec.Posts.IsPostGiven ? spec.Posts.PostDiameter : "", spec.Posts.PinDiameter, spec.Posts.Outside, spec.Posts.TapeStep, spec.Layup.Tail),
            Field('C', Items(spec.Layup.Colors, c => $"{TagName.Escape(c.Color)}/{Whole(c.Strands)}")),
            List('Y', Items(spools, s => $"{TagName.Escape(s.Thread)}/{Write(s.Diameter)}{Color(s.Color)}")),
            List('S', Items(spec.Servings, WriteServing)),
            List('P', Items(spec.Separators, s => $"{TagName.Escape(s.Name)}/{Write(s.Position)}")),
            List('N', Items(spec.Marks, m => $"{Grammar.MarkLetters[m.Kind]}{Write(m.Position)}")),
            Field('B', TagNumber.Write(spec.Strength.Breaking, unit)) + (spec.Strength.Floor is null && spec.DrawWeight is not null ? $"/{Grammar.NoFloor}" : ""),
            Field('X', TagNumber.Write(spec.Stretch.Load, unit), Whole(spec.Stretch.Minutes), spec.Stretch.Reading is { } reading ? Write(reading) : ""),
            spec.NockGroove is { } groove ? Field('G', groove) : null,
            spec.Mass is { } mass ? Field('Q', Whole(mass.Milligrams)) : null,
            spec.EndLoops is { } loops ? WriteLoops(loops) : null,
            spec.Yoke is { } yoke ? Field('K', yoke.Split, Whole(yoke.LegTurns)) : null,
            List('Z', Items(spec.Lots, TagName.Escape)),
        ];
        return TagCheck.Append(string.Join(TagSigns.Field, fields.OfType<string>()));

        string Write(Length length) => TagNumber.Write(length, unit);

        string Field(char letter, params object[] parts) =>
            letter + string.Join(TagSigns.Part, parts.Select(p => p is Length length ? Write(length) : p));

        // Left out where it has nothing to say.
        string? List(char letter, string items) => items.Length == 0 ? null : letter + items;

        string WriteLoops(EndLoops loops)
        {
            var b = loops.B == loops.A ? "" : Write(loops.B);
            return loops.Serving is { } serving
                ? Field('O', loops.A, b, Whole(spools.IndexOf(Spool(serving)) + 1))
                : b.Length > 0 ? Field('O', loops.A, b) : Field('O', loops.A);
        }

        string WriteFitted(FittedAmount? fitted) => fitted is null
            ? ""
            : $"/{Write(fitted.Amount)}/{Write(fitted.Error)}/{Whole(fitted.Builds)}";

        string WriteServing(Serving serving) =>
            $"{Grammar.RoleLetters[serving.Role]}{Write(serving.From)}/{Write(serving.To)}/{Whole(spools.IndexOf(Spool(serving)) + 1)}";
    }

    /// <summary>Each thread in use once, that of the end loops with them.</summary>
    private static List<(string Thread, Length Diameter, string Color)> Spools(BuildSpec spec)
    {
        var spools = spec.Servings.Select(Spool).Distinct().ToList();
        if (spec.EndLoops?.Serving is { } loop && !spools.Contains(Spool(loop)))
        {
            spools.Add(Spool(loop));
        }

        return spools;
    }

    private static (string Thread, Length Diameter, string Color) Spool(LoopServing loop) => (loop.Thread, loop.ThreadDiameter, loop.Color);

    private static (string Thread, Length Diameter, string Color) Spool(Serving serving) =>
        (serving.Thread, serving.ThreadDiameter, serving.Color);

    private static string Color(string color) => color.Length == 0 ? "" : $"/{TagName.Escape(color)}";

    private static string Whole(long number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Items<T>(IEnumerable<T> items, Func<T, string> write) =>
        string.Join(TagSigns.Item, items.Select(write));
}
