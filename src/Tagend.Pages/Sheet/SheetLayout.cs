using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Problems;

namespace Tagend.Pages.Sheet;

/// <summary>Pours a sheet's text over pages, under the shop's letterhead and over a numbered foot.</summary>
internal sealed class SheetLayout(Fonts fonts, Paper paper, SheetStyle style, Shop shop, Picture? logo)
{
    private const float Side = 38;
    private const float Top = 28;
    private const float Bottom = 28;
    private const float HeadGap = 10;
    private const float FootGap = 8;
    private const float Rule = 1;

    /// <summary>Room for a stamp where the shop has no name.</summary>
    private const float StampHeight = 40;

    private const float LogoWidth = 150;
    private const float LogoHeight = 36;

    private float Width => Points.Of(paper.Width) - (2 * Side);

    private float FootTop => Points.Of(paper.Height) - Bottom - style.Foot.LineHeight;

    /// <param name="marks">What must be seen before all else; each a line under the letterhead.</param>
    public Composed Of(SheetText text, IEnumerable<string> marks, Place sheet)
    {
        if (new Stack([Letterhead(), .. marks.Select(m => new Paragraph(m, style.Strong))], Gap: 4).Place(fonts, new Room(Width, Room.Endless)) is not Placed head)
        {
            return Refused(sheet, ["the shop's name, phone and web address do not fit beside each other"]);
        }

        var first = Top + head.Height + HeadGap;
        var flowed = Flow.Pour(text.Items, fonts, page => new Room(Width, FootTop - FootGap - (page == 0 ? first : Top)));
        if (flowed.Reasons.Count > 0)
        {
            return Refused(sheet, flowed.Reasons.Select(r => $"{r}; on {paper.Title}"));
        }

        var pages = flowed.Pages.Select((placed, i) => new Page(
            Points.Of(paper.Width),
            Points.Of(paper.Height),
            [
                .. i == 0 ? head.InksAt(Side, Top) : [],
                .. placed.InksAt(Side, i == 0 ? first : Top),
                .. Foot(text.Foot, i + 1, flowed.Pages.Count),
            ]));
        return new Composed([.. pages], []).IfWritable(fonts, sheet);
    }

    /// <summary>Who the sheet is from; room for a stamp where shop.toml does not say.</summary>
    private Stack Letterhead()
    {
        var reach = string.Join("\n", new[] { shop.Phone, shop.Web }.Where(t => t.Length > 0));
        if (shop.Name.Length + reach.Length == 0 && logo is null)
        {
            return new Stack([new Spacer(StampHeight), new Rule(Rule)]);
        }

        var columns = new List<Column>
        {
            new(new Paragraph(shop.Name, style.ShopName), ColumnWidth.Shared()),
            new(new Paragraph(reach, style.Text, Align.Right), ColumnWidth.Natural),
        };
        if (logo is not null)
        {
            columns.Insert(0, new Column(new PictureBlock(logo, LogoWidth, LogoHeight) { InWords = shop.Name }, ColumnWidth.Natural));
        }

        return new Stack(
            [new Row(columns, Gap: HeadGap, Level: logo is null ? Level.Bottom : Level.Middle), new Rule(Rule, Color: style.Accent)],
            Gap: 4);
    }

    private IEnumerable<Ink> Foot(string text, int page, int pages)
    {
        var filled = text
            .Replace(SheetFields.PageMark, $"{page}", StringComparison.Ordinal)
            .Replace(SheetFields.PagesMark, $"{pages}", StringComparison.Ordinal);
        yield return new PartStart(PartKind.Artifact);
        yield return new LineInk(Side, FootTop - (FootGap / 2), Side + Width, FootTop - (FootGap / 2), Rule / 2);
        yield return new TextInk(Side, FootTop + style.Foot.Size, filled, style.Foot);
        yield return new TextInk(
            Side + Width - fonts.WidthOf(shop.Name, style.Foot), FootTop + style.Foot.Size, shop.Name, style.Foot);
        yield return PartEnd.Ink;
    }

    private static Composed Refused(Place sheet, IEnumerable<string> reasons) =>
        new([], [.. reasons.Select(r => new Problem(sheet, null, r))]);
}
