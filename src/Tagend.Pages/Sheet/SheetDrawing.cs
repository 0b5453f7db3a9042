using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Specs;

namespace Tagend.Pages.Sheet;

/// <summary>The pieces of a set under each other, all to one stated scale: which end goes where, what sits on them.</summary>
internal sealed record SheetDrawing(SheetData Data, SheetStyle Style) : Block
{
    private const float EndSquare = 10;
    private const float EndGap = 2.5f;
    private const float HalfServing = 2.6f;
    private const float HalfStrands = 0.8f;
    private const float LoopLength = 8;
    private const float LabelGap = 6;
    private const float Leader = 0.4f;
    private const float OverLabel = 1;
    private const float UnderLabel = 1;
    private const float NockHeight = 5;
    private const float HalfNock = 2.3f;

    private TextStyle Small => Style.Cell;

    private TextStyle Bold => Style.Cell with { Weight = Weight.Bold };

    private float RowHeight => EndSquare + (Style.Size * (0.1f + (0.3f * Style.Air)));

    public override Placement Place(Fonts fonts, Room room)
    {
        var names = Data.Builds.Max(b => fonts.WidthOf(b.Spec.Piece, Bold)) + LabelGap;
        var atA = Data.Builds.Max(b => fonts.WidthOf(EndA(b.Spec), Small));
        var left = names + atA + (2 * EndGap) + EndSquare;
        var scale = 1;
        while (Data.Builds.Any(b => left + (Points.Of(b.Spec.FinishedLength) / scale) + RightOf(fonts, b.Spec) > room.Width))
        {
            if (++scale > 1000)
            {
                return new Misfit($"the names of pieces and ends leave no room for a drawing within {room.Width:0.#} pt");
            }
        }

        var inks = new List<Ink>();
        var y = 0f;
        foreach (var spec in Data.Builds.Select(b => b.Spec))
        {
            var drawn = new Drawn(left, y + (EndSquare / 2), scale);
            inks.Add(new TextInk(0, drawn.Middle + (Bold.CapHeight / 2), spec.Piece, Bold));
            inks.AddRange(EndInks(fonts, spec, drawn));
            inks.AddRange(BarInks(spec, drawn));
            y += RowHeight;
            if (LabelsOf(spec) is { Count: > 0 } labels)
            {
                if (LabelInks(fonts, labels, drawn, room.Width) is not { } labelInks)
                {
                    return new Misfit($"the marks of {spec.Piece} cannot be named side by side within {room.Width:0.#} pt");
                }

                inks.AddRange(labelInks);
                y += Small.LineHeight + NockHeight + UnderLabel;
            }
        }

        var remark = Data.Write.Language.Say(PaperWord.Drawing, ("scale", $"{scale}"))
            + (Data.Builds.Any(b => b.Spec.Marks.Any(m => m.Kind == MarkKind.SpeedNock)) ? $" {Data.Write.Language[PaperWord.SpeedNock]}" : "");
        if (new Paragraph(remark, Small).Place(fonts, new Room(room.Width, Room.Endless)) is not Placed foot)
        {
            return new Misfit($"\"{remark}\" does not fit under the drawing");
        }

        var height = y + foot.Height;
        return room.HoldsHeight(height)
            ? new Placed(room.Width, height, inks, [new PlacedChild(0, y, foot)]).AsFigure()
            : new Misfit($"a drawing of {Data.Builds.Count} pieces takes {height:0.#} pt of height and has {room.Height:0.#} pt");
    }

    private string EndA(BuildSpec spec) => Data.Write.Term(Data.Catalog.Plans[spec.Kind].EndA);

    private string EndB(BuildSpec spec) => Data.Write.Term(Data.Catalog.Plans[spec.Kind].EndB);

    private float RightOf(Fonts fonts, BuildSpec spec) => (2 * EndGap) + EndSquare + fonts.WidthOf(EndB(spec), Small);

    private IEnumerable<Ink> EndInks(Fonts fonts, BuildSpec spec, Drawn drawn)
    {
        var letter = Bold with { Gray = 255 };
        var right = drawn.At(spec.FinishedLength);
        var baseline = drawn.Middle + (Small.CapHeight / 2);
        var squareA = drawn.Left - EndGap - EndSquare;
        yield return new TextInk(squareA - EndGap - fonts.WidthOf(EndA(spec), Small), baseline, EndA(spec), Small);
        foreach (var (name, x) in new[] { ("A", squareA), ("B", right + EndGap) })
        {
            yield return new BoxInk(x, drawn.Middle - (EndSquare / 2), EndSquare, EndSquare, Fill: 0, Radius: 1.5f);
            yield return new TextInk(x + ((EndSquare - fonts.WidthOf(name, letter)) / 2), baseline, name, letter);
        }

        yield return new TextInk(right + (2 * EndGap) + EndSquare, baseline, EndB(spec), Small);
    }

    private static IEnumerable<Ink> BarInks(BuildSpec spec, Drawn drawn)
    {
        var (from, to) = (drawn.Left + LoopLength - 1, drawn.At(spec.FinishedLength) - LoopLength + 1);
        yield return new BoxInk(from, drawn.Middle - HalfStrands, to - from, 2 * HalfStrands, Fill: 0);
        foreach (var serving in spec.Servings)
        {
            var (start, end) = (Math.Max(drawn.At(serving.From), from), Math.Min(drawn.At(serving.To), to));
            if (end > start)
            {
                yield return new BoxInk(start, drawn.Middle - HalfServing, end - start, 2 * HalfServing, Fill: 0);
            }
        }

        foreach (var center in new[] { from + 1 - (LoopLength / 2), to - 1 + (LoopLength / 2) })
        {
            yield return new OvalInk(center, drawn.Middle, (LoopLength - 1) / 2, HalfServing, 1, 255);
        }

        foreach (var separator in spec.Separators)
        {
            yield return new OvalInk(drawn.At(separator.Position), drawn.Middle, 3.2f, 2.4f, 0.9f, 255);
        }

        foreach (var mark in spec.Marks)
        {
            var x = drawn.At(mark.Position);
            yield return mark.Kind == MarkKind.NockPoint
                ? new ShapeInk(
                    [
                        (x, drawn.Middle + HalfServing),
                        (x + HalfNock, drawn.Middle + HalfServing + NockHeight),
                        (x - HalfNock, drawn.Middle + HalfServing + NockHeight),
                    ],
                    Fill: 0)
                : new BoxInk(x - 1.3f, drawn.Middle - 2.8f, 2.6f, 5.6f, 0.6f, 255);
        }
    }

    /// <summary>Separators and the nock point; speed nocks are told by their shape.</summary>
    private List<(string Text, Length Position)> LabelsOf(BuildSpec spec) =>
    [
        .. spec.Separators.Select(s => (s.Name == SheetFields.Peep ? Data.Write.Language[PaperWord.Peep] : Data.Write.Term(s.Name), s.Position))
            .Concat(spec.Marks.Where(m => m.Kind == MarkKind.NockPoint).Select(m => (Data.Write.Language[PaperWord.NockPoint], m.Position)))
            .OrderBy(l => l.Position)
            .Select(l => ($"{l.Item1} {Data.Write.Length(l.Position, Data.Unit)}", l.Position)),
    ];

    private IEnumerable<Ink>? LabelInks(
        Fonts fonts, List<(string Text, Length Position)> labels, Drawn drawn, float width)
    {
        var widths = labels.Select(l => fonts.WidthOf(l.Text, Small)).ToList();
        var places = labels.Select(l => drawn.At(l.Position)).ToList();
        var top = drawn.Middle + HalfServing + NockHeight + OverLabel;
        return LabelSpread.Spread(places, [.. widths.Select(w => w + LabelGap)], width) is not { } centers
            ? null
            : labels.SelectMany((l, i) => new Ink[]
            {
                new LineInk(places[i], drawn.Middle + HalfServing, centers[i], top, Leader),
                new TextInk(centers[i] - (widths[i] / 2), Small.BaselineFrom(top), l.Text, Small),
            });
    }

    /// <summary>Where a piece is drawn. In points.</summary>
    /// <param name="Left">Of end A.</param>
    /// <param name="Middle">Of its line, from the top.</param>
    private sealed record Drawn(float Left, float Middle, int Scale)
    {
        public float At(Length place) => Left + (Points.Of(place) / Scale);
    }
}
