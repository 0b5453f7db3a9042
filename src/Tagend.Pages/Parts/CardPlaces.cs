using Tagend.Blocks;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Specs;

namespace Tagend.Pages.Parts;

/// <summary>Tables of what sits where on the finished piece.</summary>
internal static class CardPlaces
{
    /// <summary>Least room between columns of places, in points: a name of two words stays on one line.</summary>
    private const float PlaceGap = 3.5f;

    /// <summary>Number of a serving in table and drawing.</summary>
    public static string ServingKey(int index) => $"{index + 1}";

    /// <summary>Letter of a separator or mark in table and drawing.</summary>
    public static string PlaceKey(int index) => $"{(char)('a' + index)}";

    public static IReadOnlyList<Block> Of(BuildSpec spec, Fonts fonts, CardStyle style, CardWriter write)
    {
        var blocks = new List<Block>();
        if (spec.Servings.Count > 0)
        {
            var remark = $"{write.UnitWord}, on the finished piece; wound {CardWriter.Direction(spec.Twist.ServingDirection)} seen from A";
            blocks.Add(CardStyle.Part("SERVINGS", remark, Servings(spec, fonts, style, write)));
        }

        if (PlacesOf(spec) is { Count: > 0 } places)
        {
            var remark = $"{write.UnitWord}, on the finished piece";
            blocks.Add(CardStyle.Part("SEPARATORS AND MARKS", remark, style.IsTight && places.Count > 1 ? TwoPlaceTables(spec, places, fonts, style, write) : PlaceTable(spec, places, 0, fonts, style, write)));
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

    private static Table Servings(BuildSpec spec, Fonts fonts, CardStyle style, CardWriter write)
    {
        var fromA = Column(s => s.From, style.BodyBold);
        var toA = Column(s => s.To, style.BodyBold);
        var fromB = Column(s => spec.FromB(s.To), style.Body);
        var toB = Column(s => spec.FromB(s.From), style.Body);
        var length = Column(s => s.Length, style.Body);
        return style.Table(
            [
                new TableColumn("", ColumnWidth.Natural),
                new TableColumn("Serving", ColumnWidth.Natural),
                new TableColumn("From A", ColumnWidth.Natural, Align.Right),
                new TableColumn("to", ColumnWidth.Natural, Align.Right),
                new TableColumn("From B", ColumnWidth.Natural, Align.Right),
                new TableColumn("to", ColumnWidth.Natural, Align.Right),
                new TableColumn("Length", ColumnWidth.Natural, Align.Right),
                new TableColumn("Thread", ColumnWidth.Natural),
                new TableColumn("Color", ColumnWidth.Shared()),
            ],
            spec.Servings.Select<Serving, IReadOnlyList<Block>>((s, i) =>
            [
                style.Bold(ServingKey(i)),
                style.Text(CardWriter.Role(s.Role)),
                fromA[i],
                toA[i],
                fromB[i],
                toB[i],
                length[i],
                style.Text(s.Thread),
                style.Text(s.Color.Length > 0 ? s.Color : "any"),
            ]));

        IReadOnlyList<Reading> Column(Func<Serving, Length> length, TextStyle type) =>
            Reading.Column([.. spec.Servings.Select(s => write.Bare(length(s)))], type, fonts);
    }

    private static Row TwoPlaceTables(
        BuildSpec spec, IReadOnlyList<CardPlace> places, Fonts fonts, CardStyle style, CardWriter write)
    {
        var half = (places.Count + 1) / 2;
        return Row.Equal(
            [
                PlaceTable(spec, [.. places.Take(half)], 0, fonts, style, write),
                PlaceTable(spec, [.. places.Skip(half)], half, fonts, style, write),
            ],
            gap: 12);
    }

    private static Table PlaceTable(
        BuildSpec spec, IReadOnlyList<CardPlace> places, int firstKey, Fonts fonts, CardStyle style, CardWriter write)
    {
        var fromA = Column(p => write.Bare(p.Position), style.BodyBold);
        var fromB = Column(p => write.Bare(spec.FromB(p.Position)), style.Body);
        var onJig = Column(p => p.Separator is null ? "" : write.BareTape(spec.FromPostA(p.Position)), style.BodyBold);
        var table = style.Table(
            [
                new TableColumn("", ColumnWidth.Natural),
                new TableColumn("What", ColumnWidth.Shared()),
                new TableColumn("From A", ColumnWidth.Natural, Align.Right),
                new TableColumn("From B", ColumnWidth.Natural, Align.Right),
                new TableColumn(style.IsTight ? "From post" : "On the jig, from post A", ColumnWidth.Natural, Align.Right),
                new TableColumn(style.IsTight ? "Sides" : "Strands each side", ColumnWidth.Natural, Align.Right),
            ],
            places.Select<CardPlace, IReadOnlyList<Block>>((p, i) =>
            [
                style.Bold(PlaceKey(firstKey + i)),
                style.Text(p.Name),
                fromA[i],
                fromB[i],
                onJig[i],
                style.Text(p.Separator is { } s ? $"{s.StrandsEachSide} | {s.StrandsEachSide}" : ""),
            ]));
        return table with { Gap = PlaceGap };

        IReadOnlyList<Reading> Column(Func<CardPlace, string> text, TextStyle type) =>
            Reading.Column([.. places.Select(text)], type, fonts);
    }
}

/// <summary>A separator or a mark.</summary>
/// <param name="Position">From end A, on the finished piece.</param>
internal sealed record CardPlace(string Name, Length Position, Separator? Separator, Mark? Mark);
