using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Specs;

namespace Tagend.Pages.Strip;

/// <summary>What a strip says of itself: whose it is, where to lay it, and how to see that it is true.</summary>
internal sealed class StripHead(Build build, StripPlaces places, StripPositions positions, int parts, CardWriter write)
{
    private const float Gap = 10;

    private string Title => $"{build.Spec.Order}\u00A0 {build.Spec.Piece}";

    private string Which => write.Language[positions == StripPositions.OnJig ? PaperWord.StripOnJig : PaperWord.StripFinished];

    private string Kind => write.Language.Say(PaperWord.StripTitle, ("which", Which), ("unit", write.UnitWord));

    private string Laying => positions == StripPositions.OnJig
        ? write.Language[PaperWord.StripLayOnJig]
        : write.Language.Say(
            PaperWord.StripLayFinished, ("load", write.Load(Stretch.MeasuringLoad)), ("pin", write.Setting(build.Spec.Posts.PinDiameter)));

    private string Closing =>
        write.Language.Say(PaperWord.StripClosing, ("length", $"{places.Read(places.StripLength)} {write.UnitSymbol}")).Replace(' ', '\u00A0');

    /// <summary>The top of a sheet.</summary>
    public Block OnSheet(int page, int pages) => new Stack(
    [
        new Row(
            [
                new Column(new Paragraph(Title, TypeScale.Title), ColumnWidth.Natural),
                new Column(new Paragraph($"{Kind}\u00A0\u00A0 {write.Issue(build)}", TypeScale.Heading), ColumnWidth.Shared()),
                new Column(new Paragraph(write.Language.Say(PaperWord.PageOf, ("page", $"{page}"), ("pages", $"{pages}")), TypeScale.BodyBold), ColumnWidth.Natural),
            ],
            Gap,
            Level.Baseline),
        new Spacer(2),
        new Rule(1),
        new Spacer(4),
        Row.Equal(
            [
                new Stack([CheckBar.Block, new Spacer(4), new Paragraph(write.Language[PaperWord.CheckBars], TypeScale.CloseBody)]),
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
        var part = tile.Count > 1
            ? write.Language.Say(PaperWord.StripPart, ("part", $"{tile.Number}"), ("parts", $"{tile.Count}")) + ", "
            : "";
        var words = Line($"{write.Language[PaperWord.CheckBars]} {Laying} {Closing}", TypeScale.Caption);
        return new Row(
            [
                new Column(Line($"{Title}\u00A0\u00A0 {part}{Which}, {write.Issue(build)}", TypeScale.BodyBold), ColumnWidth.Natural),
                new Column(CheckBar.Block, ColumnWidth.Of(CheckBar.Width(fonts))),
                new Column(words, ColumnWidth.Natural),
            ],
            Gap,
            Level.Middle);

        static Paragraph Line(string text, TextStyle style) => new(text.Replace(' ', '\u00A0'), style);
    }

    private string Making => parts == 1
        ? ""
        : write.Language.Say(PaperWord.StripJoining, ("length", write.Setting(MarkingStrip.Across(build.Spec.Unit))));
}
