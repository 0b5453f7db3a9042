using Tagend.Blocks;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Specs;

namespace Tagend.Pages.Card;

/// <summary>A label of the drawing: what it says, the place it points to, and where it stands. In points.</summary>
internal sealed record PieceLabel(string Name, string Position, float Place, float Center, float Width);

/// <summary>Labels of what sits on a piece, side by side. Null where they find no room.</summary>
internal static class PieceLabels
{
    /// <summary>Thickness of the line from a label to its place, in points.</summary>
    public const float Leader = 0.4f;

    private const float KeyWidth = 10;
    private const float KeyGap = 3;
    private const float NameGap = 5;

    /// <summary>Numbers of servings, as in their table.</summary>
    public static IReadOnlyList<PieceLabel>? Keys(BuildSpec spec, Fonts fonts, PieceScale scale) => Spread(
        [.. spec.Servings.Select((s, i) => (CardPlaces.ServingKey(i), "", scale.At(s.From + (s.Length / 2))))],
        text => Math.Max(KeyWidth, text + 5),
        KeyGap,
        fonts,
        scale.Width);

    /// <summary>Letters, names and positions of separators and marks.</summary>
    public static IReadOnlyList<PieceLabel>? Names(
        IReadOnlyList<CardPlace> places, Fonts fonts, PieceScale scale, CardWriter write) => Spread(
        [.. places.Select(p => ($"{p.Key} {p.Name}", write.Bare(p.Position), scale.At(p.Position)))],
        text => text,
        NameGap,
        fonts,
        scale.Width);

    /// <summary>Letters of separators and marks, as in their table.</summary>
    public static IReadOnlyList<PieceLabel>? Letters(IReadOnlyList<CardPlace> places, Fonts fonts, PieceScale scale) => Spread(
        [.. places.Select(p => (p.Key, "", scale.At(p.Position)))],
        text => text,
        NameGap,
        fonts,
        scale.Width);

    private static IReadOnlyList<PieceLabel>? Spread(
        IReadOnlyList<(string Name, string Position, float Place)> labels,
        Func<float, float> widthOf,
        float gap,
        Fonts fonts,
        float width)
    {
        var widths = labels.Select(l => widthOf(Math.Max(
            fonts.WidthOf(l.Name, TypeScale.Heading with { Tracking = 0 }), fonts.WidthOf(l.Position, TypeScale.Caption)))).ToList();
        var centers = LabelSpread.Spread([.. labels.Select(l => l.Place)], [.. widths.Select(w => w + gap)], width);
        return centers is null
            ? null
            : [.. labels.Select((l, i) => new PieceLabel(l.Name, l.Position, l.Place, centers[i], widths[i]))];
    }
}
