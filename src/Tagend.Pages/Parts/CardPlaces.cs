using Tagend.Blocks;
using Tagend.Catalog;
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
            var remark = write.Language.Say(
                PaperWord.CardServingsRemark, ("unit", write.UnitWord), ("direction", write.Direction(spec.Twist.ServingDirection)));
            blocks.Add(CardStyle.Part(write.Language[PaperWord.CardServings], remark, Servings(spec, fonts, style, write)));
        }

        if (PlacesOf(spec, write) is { Count: > 0 } places)
        {
            var remark = write.Language.Say(PaperWord.CardMarksRemark, ("unit", write.UnitWord));
            blocks.Add(CardStyle.Part(write.Language[PaperWord.CardMarks], remark, style.IsTight && places.Count > 1 ? TwoPlaceTables(spec, places, fonts, style, write) : PlaceTable(spec, places, 0, fonts, style, write)));
        }

        return blocks;
    }

    /// <summary>Separators and marks, in order from end A.</summary>
    public static IReadOnlyList<CardPlace> PlacesOf(BuildSpec spec, CardWriter write) =>
    [
        .. spec.Separators.Select(s => new CardPlace(write.Separator(s.Name), s.Position, s, null))
            .Concat(spec.Marks.Select(m => new CardPlace(write.Kind(m.Kind), m.Position, null, m)))
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
                new TableColumn(write.Language[PaperWord.CardServing], ColumnWidth.Natural),
                new TableColumn(write.Language[PaperWord.CardFromA], ColumnWidth.Natural, Align.Right),
                new TableColumn(write.Language[PaperWord.CardTo], ColumnWidth.Natural, Align.Right),
                new TableColumn(write.Language[PaperWord.CardFromB], ColumnWidth.Natural, Align.Right),
                new TableColumn(write.Language[PaperWord.CardTo], ColumnWidth.Natural, Align.Right),
                new TableColumn(write.Language[PaperWord.CardLength], ColumnWidth.Natural, Align.Right),
                new TableColumn(write.Language[PaperWord.CardThread], ColumnWidth.Natural),
                new TableColumn(write.Language[PaperWord.CardColor], ColumnWidth.Shared()),
            ],
            spec.Servings.Select<Serving, IReadOnlyList<Block>>((s, i) =>
            [
                style.Bold(ServingKey(i)),
                style.Text(write.Role(s.Role)),
                fromA[i],
                toA[i],
                fromB[i],
                toB[i],
                length[i],
                style.Text(s.Thread),
                style.Text(write.Color(s.Color)),
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
                new TableColumn(write.Language[PaperWord.CardWhat], ColumnWidth.Shared()),
                new TableColumn(write.Language[PaperWord.CardFromA], ColumnWidth.Natural, Align.Right),
                new TableColumn(write.Language[PaperWord.CardFromB], ColumnWidth.Natural, Align.Right),
                new TableColumn(write.Language[style.IsTight ? PaperWord.CardOnJigShort : PaperWord.CardOnJig], ColumnWidth.Natural, Align.Right),
                new TableColumn(write.Language[style.IsTight ? PaperWord.CardEachSideShort : PaperWord.CardEachSide], ColumnWidth.Natural, Align.Right),
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
