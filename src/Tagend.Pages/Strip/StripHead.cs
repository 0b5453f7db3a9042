using Tagend.Blocks;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Specs;

namespace Tagend.Pages.Strip;

/// <summary>What a strip says of itself: whose it is, where to lay it, and how to see that it is true.</summary>
internal sealed class StripHead(BuildSpec spec, StripPlaces places, StripPositions positions, int parts)
{
    private const float Gap = 10;

    private readonly CardWriter _write = new(spec.Unit);

    private string Title => $"{spec.Order}\u00A0 {spec.Piece}";

    private string Which => positions == StripPositions.OnJig ? "ON THE JIG" : "FINISHED";

    private string Issue => $"rev {spec.Revision}, {DateWriter.Iso(spec.Date)}";

    private string Laying => positions == StripPositions.OnJig
        ? "Lay its upper edge along the untwisted loop, the lines POST A and POST B at the outsides of the posts."
        : $"Lay its upper edge along the piece stretched by {_write.Load(Stretch.MeasuringLoad)} over {_write.Setting(spec.Posts.PinDiameter)} pins, A and B at the outsides of the pins.";

    private string Closing =>
        $"A to B must measure {places.Read(spec.FinishedLength)} {_write.UnitSymbol}.".Replace(' ', '\u00A0');

    /// <summary>The top of a sheet.</summary>
    public Block OnSheet(int page, int pages) => new Stack(
    [
        new Row(
            [
                new Column(new Paragraph(Title, TypeScale.Title), ColumnWidth.Natural),
                new Column(new Paragraph($"MARKING STRIP, {Which}, {_write.UnitWord} from A\u00A0\u00A0 {Issue}", TypeScale.Heading), ColumnWidth.Shared()),
                new Column(new Paragraph($"page {page} of {pages}", TypeScale.BodyBold), ColumnWidth.Natural),
            ],
            Gap,
            Level.Baseline),
        new Spacer(2),
        new Rule(1),
        new Spacer(4),
        Row.Equal(
            [
                new Stack([CheckBar.Block, new Spacer(4), new Paragraph(CheckBar.Words, TypeScale.CloseBody)]),
                new Paragraph(
                [
                    new Span($"{Laying} {Making} ", TypeScale.CloseBody),
                    new Span(Closing, TypeScale.CloseBody with { Weight = Weight.Bold }),
                ]),
            ],
            gap: 24,
            Level.Top),
    ]);

    /// <summary>The foot of a strip on a roll, in one line.</summary>
    public Block OnRoll(StripTile tile, Fonts fonts)
    {
        var part = tile.Count > 1 ? $"part {tile.Number} of {tile.Count}, " : "";
        var words = Line($"{CheckBar.Words} {Laying} {Closing}", TypeScale.Caption);
        return new Row(
            [
                new Column(Line($"{Title}\u00A0\u00A0 {part}{Which}, {Issue}", TypeScale.BodyBold), ColumnWidth.Natural),
                new Column(CheckBar.Block, ColumnWidth.Of(CheckBar.Width(fonts))),
                new Column(words, ColumnWidth.Natural),
            ],
            Gap,
            Level.Middle);

        static Paragraph Line(string text, TextStyle style) => new(text.Replace(' ', '\u00A0'), style);
    }

    private string Making => parts == 1
        ? ""
        : $"Cut the parts out, those from part 2 on at the line at their left, and glue each on the line of the part before: "
        + $"arrows and diamonds meet, and the bars across joints measure {_write.Setting(MarkingStrip.Across(spec.Unit))}.";
}
