using Tagend.Blocks;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Specs;

namespace Tagend.Pages.Labels;

/// <summary>The pieces in a bag, a line each: name, finished length, and colors where they are wanted, under it where they find no room.</summary>
internal sealed record BagPieces(BuildSet Set, bool WithColors, LabelStyle Style, CardWriter Write) : Block
{
    /// <summary>Between the columns, in points.</summary>
    private const float Gap = 6;

    /// <summary>Between a length and its unit, in points.</summary>
    private const float UnitGap = 2.5f;

    public override Placement Place(Fonts fonts, Room room)
    {
        var lengths = Reading.Column(
            [.. Set.Builds.Select(b => Write.Bare(b.Spec.FinishedLength))], Style.BodyBold, fonts);
        var length = lengths.Max(l => l.NaturalWidth(fonts));
        var widest = Set.Builds.Max(b => fonts.WidthOf(b.Spec.Piece, Style.BodyBold));
        var rest = room.Width - Gap - length - UnitGap - fonts.WidthOf(Write.UnitSymbol, Style.Body);
        var name = Math.Max(0, Math.Min(widest, rest));
        return new Stack([.. Set.Builds.Select(LineOf)], Style.Gap / 2).Place(fonts, room);

        Block LineOf(Build build, int index)
        {
            var colors = WithColors ? LoopTag.Colors(build.Spec, Write) : "";
            var widest = colors.Split(' ').Max(c => fonts.WidthOf($"· {c}", Style.Body));
            var isBeside = widest <= rest - name;
            var measured = new Row(
                [
                    new Column(lengths[index], ColumnWidth.Of(length)),
                    new Column(Style.Line(Write.UnitSymbol + (isBeside && WithColors ? $" · {colors}" : "")), ColumnWidth.Shared()),
                ],
                UnitGap,
                Level.Baseline);
            var line = new Row(
                [
                    new Column(new Paragraph(build.Spec.Piece, Style.BodyBold), ColumnWidth.Of(name)),
                    new Column(measured, ColumnWidth.Shared()),
                ],
                Gap,
                Level.Baseline);
            return isBeside ? line : new Stack([line, new Paragraph(colors, Style.Body)]);
        }
    }
}
