using Tagend.Blocks;
using Tagend.Output;

namespace Tagend.Pages.Labels;

/// <summary>Text that stays on one line: a smaller style is tried before it is broken.</summary>
/// <param name="MayBreak">Whether it is broken rather than refused where it does not fit.</param>
internal sealed record OneLine(Paragraph Text, bool MayBreak) : Block
{
    public override Placement Place(Fonts fonts, Room room)
    {
        var width = Text.NaturalWidth(fonts);
        return MayBreak || room.HoldsWidth(width)
            ? Text.Place(fonts, room)
            : new Misfit($"\"{string.Concat(Text.Spans.Select(s => s.Text))}\" is wider than {room.Width:0.#} pt");
    }
}
