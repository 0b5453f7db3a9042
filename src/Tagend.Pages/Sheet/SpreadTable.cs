using Tagend.Blocks;
using Tagend.Output;

namespace Tagend.Pages.Sheet;

/// <summary>A table of natural columns, spread over the width it has.</summary>
internal sealed record SpreadTable(Table Table) : Block
{
    public override Placement Place(Fonts fonts, Room room) => Spread(fonts, room).Place(fonts, room);

    public override PageSplit Split(Fonts fonts, Room room) => Spread(fonts, room).Split(fonts, room);

    private Table Spread(Fonts fonts, Room room)
    {
        var left = room.Width - Table.NaturalWidth(fonts);
        return left > 0 && Table.Columns.Count > 1
            ? Table with { Gap = Table.Gap + (left / (Table.Columns.Count - 1)) }
            : Table;
    }
}
