using Tagend.Blocks;
using Tagend.Output;

namespace Tagend.Pages.Labels;

/// <summary>Text that stays on one line: a smaller style is tried before it is parted.</summary>
/// <param name="MayPart">Rather part it than not fit.</param>
internal sealed record OneLine(Paragraph Text, bool MayPart) : Block
{
    public override Placement Place(Fonts fonts, Room room)
    {
        var width = Text.NaturalWidth(fonts);
        return MayPart || room.HoldsWidth(width)
            ? Text.Place(fonts, room)
            : new Misfit($"\"{string.Concat(Text.Spans.Select(s => s.Text))}\" is wider than {room.Width:0.#} pt");
    }
}
