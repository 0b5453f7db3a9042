using System.Text;
using Scriban.Runtime;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Specs;

namespace Tagend.Pages.Sheet;

/// <summary>The fields a customer sheet can name, and their values: the one list of both.</summary>
internal static class SheetFields
{
    /// <summary>The list of pieces; the fields of one are named after whatever a loop calls it.</summary>
    public const string Pieces = "pieces";

    /// <summary>How the fields of a piece are listed.</summary>
    public const string Piece = "piece";

    /// <summary>Name of the separator that is a peep.</summary>
    public const string Peep = "peep";

    /// <summary>Stands for the page's number until the pages are laid out: a private use character.</summary>
    public const string PageMark = "\uE000";

    /// <summary>Stands for the number of pages until they are laid out.</summary>
    public const string PagesMark = "\uE001";

    private static readonly Field<SheetData>[] OfSheet =
    [
        new("accessories", d => new ScriptArray(d.Builds.SelectMany(b => b.Slip.Accessories).Distinct().Select(a => (object)Text(a)))),
        new("bow", d => FirstText(d, b => b.Slip.Bow)),
        new("count", d => d.Builds.Count),
        new("customer", d => FirstText(d, b => b.Slip.Customer)),
        new("date", d => Text(d.Write.Date(d.First.Date))),
        new("draw_weight", d => Text(DrawWeight(d))),
        new("due", d => FirstText(d, b => b.Slip.Due)),
        new("first_shots", d => d.Builds.Max(b => d.Catalog.Plans[b.Spec.Kind].FirstShots)),
        new("has_peep", d => d.Builds.Any(b => PeepOf(b.Spec) is not null)),
        new("measuring_load", d => Text(d.Unit == LengthUnit.Inch
            ? FormattableString.Invariant($"{Stretch.MeasuringLoad.Pounds:0}\u00A0lbf")
            : FormattableString.Invariant($"{Stretch.MeasuringLoad.Newtons:0}\u00A0N"))),
        new("order", d => Text(d.Order)),
        new("page", _ => PageMark),
        new("pages", _ => PagesMark),
        new("pin", d => Text(d.Write.Length(d.Catalog.Shop.PinDiameter, d.Unit))),
        new("returns", d => Text(d.Write.Language.Returns)),
        new("shop_name", d => Text(d.Catalog.Shop.Name)),
        new("shop_phone", d => Text(d.Catalog.Shop.Phone.Replace(' ', '\u00A0'))),
        new("shop_web", d => Text(d.Catalog.Shop.Web)),
        new("unit", d => Text(d.Write.Unit(d.Unit))),
        new("warranty", d => Text(d.Write.Language.Warranty)),
    ];

    private static readonly Field<PieceData>[] OfPiece =
    [
        new("amount_per_half_turn", p => Seen(p.Spec.TurnSensitivity / 2, p)),
        new("amount_per_three_turns", p => Seen(p.Spec.TurnSensitivity * 3, p)),
        new("amount_per_turn", p => Seen(p.Spec.TurnSensitivity, p)),
        new("colors", p => Text(string.Join(", ", p.Spec.Layup.Colors.Select(c => $"{p.Data.Write.Term(c.Color)}\u00A0{c.Strands}")))),
        new("end_a", p => Term(p.Plan.EndA, p)),
        new("end_b", p => Term(p.Plan.EndB, p)),
        new("finished_length", p => Length(p.Spec.FinishedLength, p)),
        new("kind", p => Term(p.Plan.Title, p)),
        new("material", p => Term(p.Data.Catalog.Materials[p.Spec.Bundle.Material].Title, p)),
        new("name", p => Text(p.Spec.Piece)),
        new("nock_point", p => p.Spec.Marks.FirstOrDefault(m => m.Kind == MarkKind.NockPoint) is { } mark ? Length(mark.Position, p) : ""),
        new("peep", p => PeepOf(p.Spec) is { } peep ? Length(peep.Position, p) : ""),
        new("strands", p => p.Spec.Bundle.Strands),
        new("tolerance", p => Length(p.Spec.Tolerance, p)),
    ];

    /// <summary>Every name that may stand in a template, as it is listed in messages: <c>bow</c>, <c>piece.colors</c>.</summary>
    public static IReadOnlyList<string> Names { get; } =
        [.. OfSheet.Select(f => f.Name).Append(Pieces).Order(), .. OfPiece.Select(f => $"{Piece}.{f.Name}")];

    /// <summary>The values for one sheet, ready to stand in Markdown.</summary>
    public static ScriptObject Of(SheetData data)
    {
        var fields = new ScriptObject(StringComparer.Ordinal);
        foreach (var field in OfSheet)
        {
            fields[field.Name] = field.Value(data);
        }

        fields[Pieces] = new ScriptArray(data.Builds.Select(b => (object)OfOne(new PieceData(b.Spec, data))));
        return fields;
    }

    private static ScriptObject OfOne(PieceData piece)
    {
        var fields = new ScriptObject(StringComparer.Ordinal);
        foreach (var field in OfPiece)
        {
            fields[field.Name] = field.Value(piece);
        }

        return fields;
    }

    private static string Length(Length length, PieceData piece) => Text(piece.Data.Write.Length(length, piece.Data.Unit));

    private static string Seen(Length length, PieceData piece) => Text(piece.Data.Write.Seen(length, piece.Data.Unit));

    private static string Term(string text, PieceData piece) => Text(piece.Data.Write.Term(text));

    private static Separator? PeepOf(BuildSpec spec) => spec.Separators.FirstOrDefault(s => s.Name == Peep);

    private static string DrawWeight(SheetData data)
    {
        var weights = data.Builds.Select(b => b.Spec.DrawWeight).OfType<Force>().ToList();
        return weights.Count == 0 ? "" : SheetWriter.DrawWeight(weights.Max(), data.Unit);
    }

    private static string FirstText(SheetData data, Func<Build, string> text) =>
        Text(data.Builds.Select(text).FirstOrDefault(t => t.Length > 0) ?? "");

    /// <summary>A value as Markdown that shows just this text, on one line: a customer's name cannot draw a table.</summary>
    /// <remarks>Any ASCII punctuation may be escaped with a backslash: CommonMark 0.31, 2.4.</remarks>
    private static string Text(string value)
    {
        var text = new StringBuilder();
        foreach (var character in value.ReplaceLineEndings(" ").Trim())
        {
            if (char.IsAscii(character) && (char.IsPunctuation(character) || char.IsSymbol(character)))
            {
                text.Append('\\');
            }

            text.Append(character);
        }

        return text.ToString();
    }

    private sealed record Field<T>(string Name, Func<T, object> Value);

    private sealed record PieceData(BuildSpec Spec, SheetData Data)
    {
        public PiecePlan Plan => Data.Catalog.Plans[Spec.Kind];
    }
}

/// <summary>What one sheet is filled from: the pieces of an order for one kind of bow.</summary>
/// <param name="Builds">One at least.</param>
internal sealed record SheetData(string Order, IReadOnlyList<Build> Builds, ShopCatalog Catalog, SheetWriter Write)
{
    public BuildSpec First => Builds[0].Spec;

    /// <summary>Of all lengths: the customer's where the order names it.</summary>
    public LengthUnit Unit => Builds[0].Slip.Units ?? First.Unit;
}
