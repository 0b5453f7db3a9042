using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Output;
using Tagend.Specs;

namespace Tagend.Pages;

/// <summary>Tables of what sits where on the finished piece.</summary>
internal static class CardPlaces
{
    /// <summary>Number of a serving in table and drawing.</summary>
    public static string ServingKey(int index) => $"{index + 1}";

    /// <summary>Letter of a separator or mark in table and drawing.</summary>
    public static string PlaceKey(int index) => $"{(char)('a' + index)}";

    public static IReadOnlyList<Block> Of(BuildSpec spec, ShopCatalog catalog, CardStyle style, CardWriter write)
    {
        var blocks = new List<Block>();
        if (spec.Servings.Count > 0)
        {
            var against = $"wound {CardWriter.Direction(spec.Twist.ServingDirection)} from A; {write.UnitSymbol}";
            blocks.Add(new Stack([CardStyle.Heading("SERVINGS", against), new Spacer(2), Servings(spec, catalog, style, write)]));
        }

        if (PlacesOf(spec) is { Count: > 0 } places)
        {
            blocks.Add(new Stack(
                [CardStyle.Heading("SEPARATORS AND MARKS", write.UnitSymbol), new Spacer(2), Places(spec, places, style, write)]));
        }

        return blocks;
    }

    /// <summary>Separators and marks, in order from end A.</summary>
    public static IReadOnlyList<CardPlace> PlacesOf(BuildSpec spec) =>
    [
        .. spec.Separators.Select(s => new CardPlace(s.Name, s.Position, s, null))
            .Concat(spec.Marks.Select(m => new CardPlace(CardWriter.Kind(m.Kind), m.Position, null, m)))
            .OrderBy(p => p.Position),
    ];

    private static Table Servings(BuildSpec spec, ShopCatalog catalog, CardStyle style, CardWriter write) => style.Table(
        [
            new TableColumn("", ColumnWidth.Natural),
            new TableColumn("Serving", ColumnWidth.Natural),
            new TableColumn("From A", ColumnWidth.Natural, Align.Right),
            new TableColumn("to", ColumnWidth.Natural, Align.Right),
            new TableColumn("From B", ColumnWidth.Natural, Align.Right),
            new TableColumn("to", ColumnWidth.Natural, Align.Right),
            new TableColumn("Length", ColumnWidth.Natural, Align.Right),
            new TableColumn("Thread", ColumnWidth.Shared()),
        ],
        spec.Servings.Select<Serving, IReadOnlyList<Block>>((s, i) =>
        [
            CardStyle.Bold(ServingKey(i)),
            CardStyle.Text(CardWriter.Role(s.Role)),
            new Reading(write.Bare(s.From), TypeScale.BodyBold),
            new Reading(write.Bare(s.To), TypeScale.BodyBold),
            new Reading(write.Bare(spec.FromB(s.To)), TypeScale.Body),
            new Reading(write.Bare(spec.FromB(s.From)), TypeScale.Body),
            new Reading(write.Bare(s.Length), TypeScale.Body),
            CardStyle.Text($"{s.Thread} {s.Color}".TrimEnd()),
        ]));

    private static Table Places(BuildSpec spec, IReadOnlyList<CardPlace> places, CardStyle style, CardWriter write) => style.Table(
        [
            new TableColumn("", ColumnWidth.Natural),
            new TableColumn("What", ColumnWidth.Shared()),
            new TableColumn("From A", ColumnWidth.Natural, Align.Right),
            new TableColumn("From B", ColumnWidth.Natural, Align.Right),
            new TableColumn("On the jig, from A", ColumnWidth.Natural, Align.Right),
            new TableColumn("Strands each side", ColumnWidth.Natural, Align.Right),
        ],
        places.Select<CardPlace, IReadOnlyList<Block>>((p, i) =>
        [
            CardStyle.Bold(PlaceKey(i)),
            CardStyle.Text(p.Name),
            new Reading(write.Bare(p.Position), TypeScale.BodyBold),
            new Reading(write.Bare(spec.FromB(p.Position)), TypeScale.Body),
            p.Separator is null ? CardStyle.Text("") : new Reading(LengthOnJig(spec, p, write), TypeScale.BodyBold),
            CardStyle.Text(p.Separator is { } s ? $"{s.StrandsEachSide} | {s.StrandsEachSide}" : ""),
        ]));

    private static string LengthOnJig(BuildSpec spec, CardPlace place, CardWriter write) =>
        Measures.LengthWriter.Tape(spec.OnJig(place.Position), write.Unit)[..^write.UnitSymbol.Length].TrimEnd();
}

/// <summary>A separator or a mark.</summary>
/// <param name="Position">From end A, on the finished piece.</param>
internal sealed record CardPlace(string Name, Measures.Length Position, Separator? Separator, Mark? Mark);
