using Tagend.Blocks;
using Tagend.Output;
using Tagend.Tests.Output;
using Xunit;

namespace Tagend.Tests.Blocks;

/// <summary>Lays out blocks with the shipped fonts and gives what a test looks at.</summary>
internal static class Laid
{
    public static TextStyle Type { get; } = new(Weight.Regular, 10);

    public static Fonts Fonts => TestFonts.Shipped;

    public static Placed Out(Block block, float width, float height = 1000) =>
        Assert.IsType<Placed>(block.Place(Fonts, new Room(width, height)));

    public static IReadOnlyList<string> Misfits(Block block, float width, float height) =>
        Assert.IsType<Misfit>(block.Place(Fonts, new Room(width, height))).Reasons;

    public static IReadOnlyList<TextInk> Texts(Placed placed) => [.. placed.InksAt(0, 0).OfType<TextInk>()];

    public static IReadOnlyList<string> Lines(Block block, float width) => [.. Texts(Out(block, width)).Select(t => t.Text)];

    public static float Width(string text) => Fonts.WidthOf(text, Type);
}
