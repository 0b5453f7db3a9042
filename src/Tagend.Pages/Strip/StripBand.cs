using Tagend.Measures;
using Tagend.Output;
using Tagend.Specs;

namespace Tagend.Pages.Strip;

/// <summary>One part of a strip: from its upper edge, where the string lies, down to its foot. In points.</summary>
internal sealed class StripBand(BuildSpec spec, StripPlaces places, StripTile tile, StripStyle style)
{
    private const float HalfStrands = 0.6f;
    private const float Halo = 4.4f;
    private const float SymbolWidth = 8;

    private readonly IReadOnlyList<(StripPlace Place, float X)> _lines =
    [
        .. places.All().Where(p => p.At >= tile.From && p.At <= tile.To).Select(p => (p, Points.Of(p.At - tile.From))),
    ];

    public float Width => Points.Of(tile.To - tile.From);

    /// <summary>Places whose words stand on this part; those at a joint stand on the part after it.</summary>
    public IReadOnlyList<(StripPlace Place, float X)> Named => [.. _lines.Where(l => tile.IsLast || l.Place.At < tile.To)];

    /// <summary>The ruler, which says nothing that the places do not.</summary>
    public IEnumerable<Ink> Scale(Fonts fonts) => StripScale.Inks(tile, spec.Unit, [.. _lines.Select(l => l.X)], fonts);

    public IEnumerable<Ink> Inks(IReadOnlyList<StripLabel> labels, Fonts fonts) =>
    [
        new LineInk(0, StripStyle.EdgeLine / 2, Width, StripStyle.EdgeLine / 2, StripStyle.EdgeLine),
        .. tile.IsFirst ? [new LineInk(0, 0, 0, StripStyle.FootTop, StripStyle.PlaceLine)] : (IEnumerable<Ink>)[],
        .. Strands(),
        .. spec.Servings.SelectMany(s => Served(s, fonts)),
        .. _lines.SelectMany(l => Line(l.Place, l.X, labels.FirstOrDefault(n => n.Place == l.Place))),
        .. labels.SelectMany(l => Words(l, fonts)),
    ];

    private IEnumerable<Ink> Strands()
    {
        const float Middle = (StripStyle.BarTop + StripStyle.BarBottom) / 2;
        yield return new BoxInk(0, Middle - HalfStrands, Width, 2 * HalfStrands, Fill: 0);
    }

    private IEnumerable<Ink> Served(Serving serving, Fonts fonts)
    {
        var from = Points.Of(Length.Max(places.At(serving.From), tile.From) - tile.From);
        var to = Points.Of(Length.Min(places.At(serving.To), tile.To) - tile.From);
        if (to <= from)
        {
            yield break;
        }

        yield return new BoxInk(from, StripStyle.BarTop, to - from, StripStyle.BarBottom - StripStyle.BarTop, Fill: 0);
        var type = StripStyle.CaptionBold with { Gray = 255 };
        var words = places.Serve(serving);
        var width = fonts.WidthOf(words, type);
        var crossing = _lines.Select(l => l.X).Where(x => x > from && x < to).Append(to).Min() - from;
        if (width + 16 < crossing)
        {
            yield return new TextInk(from + 8, StripStyle.BarBottom - 3.4f, words, type);
        }
    }

    private IEnumerable<Ink> Line(StripPlace place, float x, StripLabel? label)
    {
        const float Top = StripStyle.BarTop;
        const float Bottom = StripStyle.BarBottom;
        const float Half = SymbolWidth / 2;
        if (place.Symbol is not (StripSymbol.ServingEdge or StripSymbol.End))
        {
            yield return new BoxInk(x - (Halo / 2), Top, Halo, Bottom - Top, Fill: 255);
        }

        if (place.Symbol == StripSymbol.NockPoint)
        {
            yield return new ShapeInk([(x, Top), (x + Half + 1, Bottom), (x - Half - 1, Bottom)], 1, 255);
        }
        else if (place.Symbol == StripSymbol.Separator)
        {
            yield return new OvalInk(x, (Top + Bottom) / 2, Half + 1.5f, Half, 1, 255);
        }
        else if (place.Symbol == StripSymbol.SpeedNock)
        {
            yield return new BoxInk(x - Half, Top + 2, SymbolWidth, Bottom - Top - 4, 1, 255);
        }

        var bottom = label is null ? StripStyle.LanesTop : StripStyle.LanesTop + ((label.Lane + 1) * style.LaneHeight) - 2;
        yield return new LineInk(x, 0, x, bottom, StripStyle.PlaceLine);
    }

    private IEnumerable<Ink> Words(StripLabel label, Fonts fonts)
    {
        var top = StripStyle.LanesTop + (label.Lane * style.LaneHeight);
        var baseline = top + 1 + style.Figure.CapHeight;
        if (label.Place.Symbol == StripSymbol.End)
        {
            var side = StripLabels.EndSide(style);
            var letter = style.Figure with { Gray = 255 };
            var width = fonts.WidthOf(label.Place.Figure, letter);
            yield return new BoxInk(label.Left, baseline - side + 2.5f, side, side, Fill: 0, Radius: 2);
            yield return new TextInk(label.Left + ((side - width) / 2), baseline, label.Place.Figure, letter);
            yield return new TextInk(label.Left + side + StripLabels.FromLine, baseline, label.Place.Words, style.Words);
            yield break;
        }

        yield return new TextInk(label.Left, baseline, label.Place.Figure, style.Figure);
        yield return new TextInk(label.Left, baseline + style.Words.CapHeight + style.UnderFigure, label.Place.Words, style.Words);
    }
}
