using Tagend.Blocks;
using Tagend.Output;

namespace Tagend.Pages.Sheet;

/// <summary>Boxes to write into by hand: a header over the columns, a name before each row.</summary>
internal sealed record FormGrid(IReadOnlyList<string> Header, IReadOnlyList<string> Rows, SheetStyle Style) : Block
{
    private const float Line = 0.6f;
    private const float Padding = 4;

    /// <summary>Share of the width that the names take.</summary>
    private const float NameShare = 0.32f;

    public override Placement Place(Fonts fonts, Room room)
    {
        var names = room.Width * NameShare;
        var box = (room.Width - names) / (Header.Count - 1);
        var head = Style.Label.LineHeight + Padding;
        var height = head + (Rows.Count * Style.FormRow);
        if (!room.HoldsHeight(height))
        {
            return new Misfit($"a form of {Rows.Count} rows takes {height:0.#} pt of height and has {room.Height:0.#} pt");
        }

        if (TooWide(fonts, names, box) is { } misfit)
        {
            return misfit;
        }

        var inks = new List<Ink>();
        inks.AddRange(Header.Skip(1).Select((h, i) =>
            new TextInk(names + (i * box) + Padding, Style.Label.Size, h, Style.Label)));
        for (var i = 0; i <= Rows.Count; i++)
        {
            var y = head + (i * Style.FormRow);
            inks.Add(new LineInk(0, y, room.Width, y, Line));
            if (i < Rows.Count)
            {
                inks.Add(new TextInk(0, y + (Style.FormRow / 2) + (Style.Cell.Size * 0.36f), Rows[i], Style.Cell));
            }
        }

        for (var i = 0; i < Header.Count; i++)
        {
            var x = Math.Min(names + (i * box), room.Width - (Line / 2));
            inks.Add(new LineInk(x, head, x, height, Line));
        }

        return new Placed(room.Width, height, inks);
    }

    private Misfit? TooWide(Fonts fonts, float names, float box)
    {
        var wide = Rows.Where(r => fonts.WidthOf(r, Style.Cell) > names)
            .Concat(Header.Skip(1).Where(h => fonts.WidthOf(h, Style.Label) > box - Padding))
            .FirstOrDefault();
        return wide is null ? null : new Misfit($"\"{wide}\" is too wide for its column of boxes; say it shorter");
    }
}
