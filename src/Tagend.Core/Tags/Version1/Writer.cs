using System.Globalization;
using System.Text;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Specs;
using Tagend.Tags.Text;

namespace Tagend.Tags.Version1;

/// <summary>Writes tag texts, version 1: frozen. Grammar: docs/TAGTEXT.md.</summary>
internal static class Writer
{
    /// <summary>The text that goes with a piece: its whole spec, in the QR alphanumeric set.</summary>
    public static string Write(BuildSpec spec)
    {
        var unit = spec.Unit;
        var spools = spec.Servings.Select(Spool).Distinct().ToList();
        string[] fields =
        [
            Grammar.PieceMark,
            TagName.Escape(spec.Order),
            TagName.Escape(spec.Piece),
            TagName.Escape(spec.Kind),
            spec.Revision.ToString(CultureInfo.InvariantCulture),
            spec.Date.ToString(TagSigns.DateFormat, CultureInfo.InvariantCulture),
            Grammar.UnitWords[unit],
            Field('L', spec.FinishedLength, spec.Tolerance),
            Field('W', spec.DrawWeight is { } weight ? TagNumber.Write(weight, unit) : ""),
            Field('M', TagName.Escape(spec.Bundle.Material), Whole(spec.Bundle.Strands), Write(spec.Bundle.Diameter)),
            Field(
                'T',
                Whole(spec.Twist.Turns),
                Grammar.ModelLetters[spec.Twist.TakeUp.Used],
                Write(spec.Twist.TakeUp.Rule),
                Write(spec.Twist.TakeUp.Helix),
                Write(spec.Settle),
                Grammar.DirectionLetters[spec.Twist.Direction] + WriteFitted(spec.Twist.TakeUp.Fitted)),
            Field('J', spec.Posts.PostDiameter, spec.Posts.PinDiameter, spec.Posts.Outside, spec.Posts.TapeStep, spec.Layup.Tail),
            Field('C', Items(spec.Layup.Colors, c => $"{TagName.Escape(c.Color)}/{Whole(c.Strands)}")),
            Field('Y', Items(spools, s => $"{TagName.Escape(s.Thread)}/{Write(s.Diameter)}{Color(s.Color)}")),
            Field('S', Items(spec.Servings, WriteServing)),
            Field('P', Items(spec.Separators, s => $"{TagName.Escape(s.Name)}/{Write(s.Position)}")),
            Field('N', Items(spec.Marks, m => $"{Grammar.MarkLetters[m.Kind]}{Write(m.Position)}")),
            Field('B', TagNumber.Write(spec.Strength.Breaking, unit)),
            Field('X', TagNumber.Write(spec.Stretch.Load, unit), Whole(spec.Stretch.Minutes), Write(spec.Stretch.Reading)),
            Field('G', spec.NockGroove is { } groove ? Write(groove) : ""),
            Field('Q', Whole(spec.Mass.Milligrams)),
        ];
        return TagCheck.Append(string.Join(TagSigns.Field, fields));

        string Write(Length length) => TagNumber.Write(length, unit);

        string Field(char letter, params object[] parts) =>
            letter + string.Join(TagSigns.Part, parts.Select(p => p is Length length ? Write(length) : p));

        string WriteFitted(FittedAmount? fitted) => fitted is null
            ? ""
            : $"/{Write(fitted.Amount)}/{Write(fitted.Error)}/{Whole(fitted.Builds)}";

        string WriteServing(Serving serving) =>
            $"{Grammar.RoleLetters[serving.Role]}{Write(serving.From)}/{Write(serving.To)}/{Whole(spools.IndexOf(Spool(serving)) + 1)}";
    }

    /// <summary>The text that goes with a bag: the set's pieces and their revisions, then each piece's whole text.</summary>
    public static string Write(BuildSet set)
    {
        var text = new StringBuilder(WriteContents(set));
        foreach (var build in set.Builds)
        {
            text.Append(TagSigns.Text).Append(Write(build.Spec));
        }

        return text.ToString();
    }

    /// <summary>The short text of a bag, where the pieces' texts do not fit: pieces and revisions alone.</summary>
    public static string WriteContents(BuildSet set) => TagCheck.Append(string.Join(
        TagSigns.Field,
        Grammar.BagMark,
        TagName.Escape(set.Order),
        "C" + Items(set.Builds, b => $"{TagName.Escape(b.Spec.Piece)}/{Whole(b.Spec.Revision)}")));

    private static (string Thread, Length Diameter, string Color) Spool(Serving serving) =>
        (serving.Thread, serving.ThreadDiameter, serving.Color);

    private static string Color(string color) => color.Length == 0 ? "" : $"/{TagName.Escape(color)}";

    private static string Whole(long number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Items<T>(IEnumerable<T> items, Func<T, string> write) =>
        string.Join(TagSigns.Item, items.Select(write));
}
