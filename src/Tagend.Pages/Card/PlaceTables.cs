using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Specs;

namespace Tagend.Pages.Card;

/// <summary>Tables of what is laid, split, served and marked, and where. What the hand works by is as large as arm's length asks.</summary>
internal sealed class PlaceTables(BuildSpec spec, Fonts fonts, CardStyle style, CardWriter write)
{
    private readonly IReadOnlyList<CardPlace> _places = CardPlaces.PlacesOf(spec, write);

    private PaperLanguage Words => write.Language;

    /// <summary>Loops by color, where each starts and ends; of a yoke each leg's.</summary>
    public Table Colors()
    {
        var legs = spec.Legs();
        var rows = legs.Count == 0
            ? spec.Layup.Colors.Select(c => (Leg: "", Color: c))
            : legs.SelectMany((leg, i) => leg.Colors.Select(c => (Leg: $"{i + 1}", Color: c)));
        List<(TableColumn Column, Func<(string Leg, ColorShare Color), Block> Cell)> columns =
        [
            (new TableColumn(Words[PaperWord.CardColor], ColumnWidth.Shared()), r => Bench(write.Color(r.Color.Color))),
            (new TableColumn(Words[PaperWord.CardStrandsColumn], ColumnWidth.Natural, Align.Right), r => style.Text($"{r.Color.Strands}")),
            (new TableColumn(Words[PaperWord.CardLoopsColumn], ColumnWidth.Natural, Align.Right), r => Bench(r.Color.LoopCount())),
            (new TableColumn(Words[PaperWord.CardStartEnd], ColumnWidth.Natural, Align.Right), r => Bench($"{r.Color.Post} – {r.Color.EndPost}")),
        ];
        if (legs.Count > 0)
        {
            columns.Insert(0, (new TableColumn(Words[PaperWord.CardLeg], ColumnWidth.Natural), r => Bench(r.Leg)));
        }

        return TableOf(columns, [.. rows]);
    }

    /// <summary>Separators on the jig, and the strands on each side of them.</summary>
    public Table Separators()
    {
        var separators = _places.Where(p => p.Separator is not null).ToList();
        var onJig = Readings(separators, p => write.BareTape(spec.FromPostA(p.Position)));
        return TableOf<(CardPlace Place, int Index)>(
            [
                (new TableColumn(Words[PaperWord.CardOnJig], ColumnWidth.Natural, Align.Right), p => onJig[p.Index]),
                (new TableColumn("", ColumnWidth.Natural), p => style.Bold(p.Place.Key)),
                (new TableColumn(Words[PaperWord.CardWhat], ColumnWidth.Natural), p => style.Text(p.Place.Name)),
                (new TableColumn(Words[PaperWord.CardStrandsColumn], ColumnWidth.Shared()), _ => style.Text(StepTexts.Sides(spec, write))),
            ],
            [.. separators.Select((p, i) => (p, i))]);
    }

    /// <summary>Servings, and under them the marks where this side has them.</summary>
    public Table Servings()
    {
        var rows = spec.Servings.Select((s, i) => new Stretch(CardPlaces.ServingKey(i), write.Role(s.Role), s.From, s.To, s)).ToList();
        if (!style.MarksAreOnBack)
        {
            rows.AddRange(_places.Where(p => p.Mark is not null).Select(p => new Stretch(p.Key, p.Name, p.Position, null, null)));
        }

        return Places(rows, fromB: style.IsSheet);
    }

    /// <summary>All that sits on the finished piece, from both ends.</summary>
    public Table All() => Places(
        [
            .. spec.Servings.Select((s, i) => new Stretch(CardPlaces.ServingKey(i), write.Role(s.Role), s.From, s.To, s)),
            .. _places.Select(p => new Stretch(p.Key, p.Name, p.Position, null, null)),
        ],
        fromB: true);

    private Table Places(IReadOnlyList<Stretch> rows, bool fromB)
    {
        var (from, to) = (Readings(rows, r => write.Bare(r.From)), Readings(rows, r => r.To is { } end ? write.Bare(end) : ""));
        var (bFrom, bTo) = (
            Reading.Column([.. rows.Select(r => write.Bare(spec.FromB(r.To ?? r.From)))], style.Body, fonts),
            Reading.Column([.. rows.Select(r => r.To is null ? "" : write.Bare(spec.FromB(r.From)))], style.Body, fonts));
        List<(TableColumn Column, Func<(Stretch Row, int Index), Block> Cell)> columns =
        [
            (new TableColumn("", ColumnWidth.Natural), r => style.Bold(r.Row.Key)),
            (new TableColumn(Words[PaperWord.CardWhat], ColumnWidth.Natural), r => style.Text(r.Row.Name)),
            (new TableColumn(Words[PaperWord.CardFromA], ColumnWidth.Natural, Align.Right), r => from[r.Index]),
            (new TableColumn(Words[PaperWord.CardTo], ColumnWidth.Natural, Align.Right), r => to[r.Index]),
            (new TableColumn(Words[PaperWord.CardThread], ColumnWidth.Natural), r => style.Text(r.Row.Serving?.Thread ?? "")),
            (new TableColumn(Words[PaperWord.CardColor], ColumnWidth.Shared()), r => style.Text(r.Row.Serving is { } s ? write.Color(s.Color) : "")),
        ];
        if (fromB)
        {
            columns.InsertRange(
                4,
                [
                    (new TableColumn(Words[PaperWord.CardFromB], ColumnWidth.Natural, Align.Right), r => bFrom[r.Index]),
                    (new TableColumn(Words[PaperWord.CardTo], ColumnWidth.Natural, Align.Right), r => bTo[r.Index]),
                ]);
        }

        return TableOf(columns, [.. rows.Select((r, i) => (r, i))]);
    }

    private Table TableOf<T>(IReadOnlyList<(TableColumn Column, Func<T, Block> Cell)> columns, IReadOnlyList<T> rows) => style.Table(
        [.. columns.Select(c => c.Column)],
        rows.Select<T, IReadOnlyList<Block>>(row => [.. columns.Select(c => c.Cell(row))]));

    private IReadOnlyList<Reading> Readings<T>(IReadOnlyList<T> rows, Func<T, string> text) =>
        Reading.Column([.. rows.Select(text)], TypeScale.Bench, fonts);

    private static Paragraph Bench(string text) => new(text, TypeScale.Bench);

    /// <summary>A serving, or a place: it has no end.</summary>
    private sealed record Stretch(string Key, string Name, Length From, Length? To, Serving? Serving);
}
