using Tagend.Blocks;
using Tagend.Output;

namespace Tagend.Pages.Sheet;

/// <summary>Things to tick, in as many equal columns as the longest of them allows.</summary>
internal sealed record TickBoxes(IReadOnlyList<Checkbox> Boxes, SheetStyle Style) : Block
{
    private const int MostColumns = 4;

    public override Placement Place(Fonts fonts, Room room)
    {
        var widest = Boxes.Max(b => b.NaturalWidth(fonts)) + Style.ColumnGap;
        var columns = Math.Clamp((int)((room.Width + Style.ColumnGap) / widest), 1, Math.Min(MostColumns, Boxes.Count));
        var rows = Boxes.Chunk(columns).Select(row => Row.Equal(
            [.. row, .. Enumerable.Repeat<Block>(new Spacer(0), columns - row.Length)], Style.ColumnGap));
        return new Stack([.. rows], Style.BetweenItems).Place(fonts, room);
    }
}
