using Tagend.Blocks;
using Tagend.Output;

namespace Tagend.Pages.Labels;

/// <summary>Text that stays on one line: a smaller style is tried before its spans stand one under the other.</summary>
/// <remarks>A dot between spans is left out where they stand apart.</remarks>
/// <param name="MayBreak">Whether it is broken rather than refused where it does not fit.</param>
internal sealed record OneLine(Paragraph Text, bool MayBreak) : Block
{
    public override Placement Place(Fonts fonts, Room room)
    {
        if (room.HoldsWidth(Text.NaturalWidth(fonts)))
        {
            return Text.Place(fonts, room);
        }

        return MayBreak
            ? new Stack([.. Text.Spans.Select(s => new Paragraph([s with { Text = s.Text.Trim('\u00A0', ' ', '·') }]))]).Place(fonts, room)
            : new Misfit($"\"{string.Concat(Text.Spans.Select(s => s.Text))}\" is wider than {room.Width:0.#} pt");
    }
}
